using System.Globalization;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>What is to be done with a tube that was heard, in English.</summary>
internal static class TrimWords
{
    /// <param name="cut">The most that is safe to cut off: rounded down in either unit.</param>
    /// <param name="cents">From the note to the drone after that cut.</param>
    /// <param name="plusMinus">Half the 95 % range of that.</param>
    /// <param name="units">The units in which lengths are written.</param>
    public static string CutTo(Length cut, double cents, double plusMinus, LengthUnits units)
    {
        var millimetres = Text($"{Math.Floor(10 * cut.Millimeters) / 10:0.#} mm");
        var inches = InchFraction.AtMost(cut) is { Sixteenths: > 0 } whole
            ? whole.ToString()
            : "less than 1/16 in";
        var most = units switch
        {
            LengthUnits.Millimetres => millimetres,
            LengthUnits.Inches => inches,
            _ => $"{millimetres} ({inches})",
        };
        return Text($"Cut off no more than {most}, then play. Expect {About(cents)}, ±{plusMinus:0}.");
    }

    public static string Uncut(double cents, double plusMinus) =>
        Text(
            $"Uncut, expect {About(cents)}, ±{plusMinus:0}: the tube may be sharp already. Play it before any cut."
        );

    public static string NoCut =>
        "However much you cut off, the note stays flat, or the tube stops resonating first: this is not the pipe to trim for this note.";

    public static string MayBeSharp(double cents, double plusMinus) =>
        Text(
            $"On average over the notes heard, the drone is {Pitch(cents)}, ±{plusMinus:0.0} (19 times out of 20): it may be sharp already. Cut no more unless further takes show that it is flat."
        );

    public static string IsSharp(double cents, double plusMinus) =>
        Text(
            $"On average over the notes heard, the drone is {Pitch(cents)}, ±{plusMinus:0.0} (19 times out of 20). Cut no more."
        );

    private static string About(double cents) =>
        Math.Round(Math.Abs(cents)) is var whole && whole == 0
            ? "the note itself"
            : Text($"about {whole:0} {(whole == 1 ? "cent" : "cents")} {(cents < 0 ? "flat" : "sharp")}");

    private static string Pitch(double cents) =>
        Text($"{Math.Abs(cents):0.0} cents {(cents < 0 ? "flat" : "sharp")}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
