using System.Globalization;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>What would change if something were otherwise, in English.</summary>
internal sealed class WhatIfWords(Sizes sizes)
{
    public const string Bend =
        "A bend makes the air in it move as if the tube were a little shorter there; its length is measured along the centreline.";

    public static string Warmer(double kelvins, double cents) =>
        Text($"In a room {kelvins:0.#} °C ({1.8 * kelvins:0.#} °F) warmer the drone is {Change(cents)}.");

    public static string Breath(double cents) =>
        $"Filled with warm breath that cools along the tube, it is {Change(cents)}. This assumes that 1/e of the difference is left half way down.";

    public string MouthWider(Length by, double cents) =>
        $"A mouth end {sizes.Caliper(by)} wider inside makes it {Change(cents)}.";

    public string PipeWider(Length by, double cents) =>
        $"Pipe {sizes.Caliper(by)} wider inside, cut the same, makes it {Change(cents)}.";

    public static string Bell(double drone, double overblown) =>
        $"Compared with a straight end of the same length, the bell makes the drone {Change(drone)} and the first overblown note {Change(overblown)}"
        + (
            Math.Abs(drone - overblown) < 10
                ? ": it moves both nearly alike, because it is short compared with their waves; the taper of the whole tube makes the interval between them."
                : ": it is long enough to change the interval between them."
        );

    public string QuarterWave(Length rule, Length difference) =>
        $"The quarter-wave rule c/4f says {sizes.Tape(rule)} in all, {sizes.Tape(Length.FromMillimeters(Math.Abs(difference.Millimeters)))} too "
        + $"{(difference < Length.Zero ? "short" : "long")}: it ignores diameters, steps and the open end.";

    private static string Change(double cents) =>
        double.IsNaN(cents) ? "without a resonance to compare"
        : Math.Abs(cents) < 0.05 ? "unchanged"
        : Text($"{Math.Abs(cents):0.0} cents {(cents > 0 ? "sharper" : "flatter")}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
