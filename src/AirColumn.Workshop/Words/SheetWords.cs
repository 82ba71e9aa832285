using System.Globalization;
using AirColumn.Design;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>The words of the build sheet, in English. Numbers come in, sentences go out: to translate, translate this folder.</summary>
internal static class SheetWords
{
    public const string SideView = "Side view of the bore";
    public const string ResonanceChart = "Impedance at the lips against frequency";
    public const string Lips = "lips";
    public const string OpenEnd = "open end";
    public const string DrawnToScale = "Drawn to scale.";
    public const string BendsDrawnStraight = " Bends are drawn straight.";
    public const string FrequencyAxis = "frequency, Hz: lines at the multiples of the note";
    public const string LevelAxis = "|Z| over that of an endless tube, dB";
    public const string Bore = "The bore, from the lips";
    public const string BoreNote = "With the open pipe at its first cut.";
    public const string CutList = "Cut list";
    public const string AsGiven = "as given";
    public const string FitUp = "Putting it together";
    public const string DryFirst =
        "Put everything together dry, play and trim; join for good only when it is in tune.";
    public const string Chart = "Where it resonates";
    public const string ChartNote =
        "At the length for the resonance on the note; the first four peaks with the nearest note and how many cents they lie from it.";
    public const string Trim = "Trimming";
    public const string TrimNote =
        "Make the first cut and play. If the note is steady and flat, cut on by what you hear, a little less each time; the table says what to expect.";
    public const string TrimAtTheLips =
        "What is formed from the pipe stays: trim at the end where the lips are, before the mouth end is finished.";
    public const string NotPlastic =
        "Bells and bends by heat are for plastic pipe. A part formed from metal pipe is a trade of its own: buy it, and describe it as a fitting.";
    public const string Sure = "How sure";
    public const string WhatIf = "What changes what";
    public const string Finishing = "Finishing";
    public const string Cautions = "Cautions";
    public const string Mind = "Mind";
    public static readonly string[] BoreHead = ["", "part", "inside", "length"];
    public static readonly string[] CutHead = ["pipe", "cut first", "for the resonance on the note"];
    public static readonly string[] TrimHead =
    [
        "cut off in all",
        "pipe then",
        "played note, expected",
        "from the note",
    ];
    public static readonly string[] SureHead = ["what", "may be off by", "makes", "share"];

    public static string Title(TubeBuild build) => $"Tube on {build.Note}";

    public static string InAll(string length) => $"{length} from lips to open end";

    public static string DrawnHigher(double times) =>
        Text($"Lengths to scale; heights drawn {times:0.#} times larger.");

    public static string FromTo(string from, string to) => $"{from} to {to}";

    public static string Opening(TubeBuild build, PlayedNote played) =>
        Text(
            $"{build.Note} is {build.Tuning.FrequencyOf(build.Note).Hertz:0.00} Hz with A4 = {build.Tuning.Reference.Hertz:0.##} Hz. "
        )
        + (
            build.Air.State is { } air
                ? Text(
                    $"Air {air.Temperature.DegreesCelsius:0.#} °C, {air.Humidity.Percent:0.#} % humidity. "
                )
                : ""
        )
        + Text(
            $"The played note is expected {played.Correction.MeanCents:+0.#;-0.#;0} cents from the first resonance, give or take {played.PlusMinusCents:0.#} (19 times of 20)."
        );

    public static string Kerf(BuiltTube millimetre, BuiltTube sixteenth) =>
        "Cut beside the mark, on the waste side: the saw's kerf is not included. "
        + Text(
            $"At {Wording.Millimetres(millimetre.Cut)} the first resonance lies {millimetre.Cents:+0.0;-0.0;0.0} cents from the note, at {InchFraction.Describe(sixteenth.Cut)} {sixteenth.Cents:+0.0;-0.0;0.0}."
        );

    public static string FirstCuts(string millimetre, string inches) => $"{millimetre} or {inches}";

    public static string Hertz(Frequency frequency) => Text($"{frequency.Hertz:0.00} Hz");

    public static string FromTheNote(double cents, double plusMinus) =>
        Text($"{cents:+0.0;-0.0;0.0} cents, give or take {plusMinus:0}");

    public static string SureTo(double cents) =>
        Text(
            $"The first resonance is sure to {cents:0.#} cents (19 times of 20), before the player. What it depends on most:"
        );

    public static string Makes(double cents) => Text($"{cents:0.0} cents (one standard deviation)");

    public static string Share(double share) => Text($"{100 * share:0} %");

    public static string Caution(Caution caution) => $"{caution.Title}: {caution.Text}";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
