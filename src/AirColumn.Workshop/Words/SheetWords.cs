using System.Globalization;
using AirColumn.Workshop.Sheets;
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
    public const string BendsDrawn =
        " Bends are drawn in one plane, to either side in turn; turn yours as you like.";
    public const string HeatMarks = " Parts to heat lie between marks.";
    public const string Kind = "Build sheet";
    public const string Or = "or";
    public const string Source = "Source";
    public const string CutListCaption = "Every pipe, from the lips";
    public const string BoreCaption = "The parts of the drawing";
    public const string ChartCaption = "The peaks of the chart";
    public const string TrimCaptionMillimetres = "Each cut in millimetres and the note to expect";
    public const string TrimCaptionInches = "Each cut in inches and the note to expect";
    public const string SureCaption = "The five largest sources of error";
    public const string StepsNote = "The pictures are not to scale; the lips are to the left.";
    public static readonly string[] ChartHead = ["peak", "frequency", "nearest note", "level", "Q"];
    public const string FrequencyAxis = "frequency in Hz, lines at multiples of the note";
    public const string LevelAxis = "|Z| relative to an endless tube, dB";
    public const string Bore = "The bore, from the lips";
    public const string BoreNote = "With the open pipe at its first cut.";
    public const string CutList = "Cut list";
    public const string AsGiven = "as given";
    public const string FitUp = "Putting it together";
    public const string DryFirst =
        "Put everything together dry, play and trim. Glue it only when it is in tune.";
    public const string Chart = "Where it resonates";
    public const string ChartNote =
        "At the computed final length. The first four peaks carry the nearest note and how many cents they lie from it.";
    public const string Trim = "Trimming";
    public const string TrimNote =
        "Make the first cut and play. While the note is steady and flat, cut off a little less each time. The table says what to expect.";
    public const string TrimAtTheLips =
        "The bell or bend formed from this pipe stays as it is: trim the pipe at the end where the lips go, before you finish that end.";
    public const string Sure = "How sure";
    public const string WhatIf = "What if";
    public const string Finishing = "Finishing";
    public const string Cautions = "Cautions";
    public const string Note = "Note";
    public static readonly string[] BoreHead = ["no.", "part", "inside", "length"];
    public static readonly string[] CutHead = ["cut", "pipe", "cut first", "computed final length"];
    public static readonly string[] TrimHead =
    [
        "cut off in all",
        "pipe then",
        "played note, expected",
        "cents from the note",
    ];
    public static readonly string[] SureHead =
    [
        "source of error",
        "may be off by",
        "moves the note by (standard deviation)",
        "share",
    ];

    public static string Title(string tube, Pitch note) => $"{(tube.Length > 0 ? tube : "Tube")} on {note}";

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
            $"Expect the played note {Math.Abs(played.Correction.MeanCents):0.#} cents {(played.Correction.MeanCents < 0 ? "below" : "above")} the first resonance, ±{played.PlusMinusCents:0.#} (19 times out of 20)."
        );

    public static string Kerf(BuiltTube millimetre, BuiltTube sixteenth, LengthUnits units)
    {
        var metric = Text(
            $"{Wording.Millimetres(millimetre.Cut)} the first resonance lies {millimetre.Cents:+0.0;-0.0;0.0} cents from the note"
        );
        var inches = $"{InchFraction.Describe(sixteenth.Cut)} ";
        return "Cut beside the mark, on the waste side: the saw's kerf is not included. At "
            + units switch
            {
                LengthUnits.Millimetres => $"{metric}.",
                LengthUnits.Inches => inches
                    + Text($"the first resonance lies {sixteenth.Cents:+0.0;-0.0;0.0} cents from the note."),
                _ => $"{metric}, at {inches}" + Text($"{sixteenth.Cents:+0.0;-0.0;0.0}."),
            };
    }

    public static string Hertz(Frequency frequency) => Text($"{frequency.Hertz:0.00} Hz");

    public static string FromTheNote(double cents, double plusMinus) =>
        Text($"{cents:+0.0;-0.0;0.0} ±{plusMinus:0}");

    public static string SureTo(double cents) =>
        Text(
            $"The first resonance should be within ±{cents:0.#} cents (19 times out of 20), not counting the player. It depends most on:"
        );

    public static string Makes(double cents) => Text($"{cents:0.0} cents");

    public static string Share(double share) => Text($"{100 * share:0} %");

    /// <summary>The lengths of which either may be sawn.</summary>
    public static IReadOnlyList<string> Choices(string either) => either.Split($" {Or} ");

    public static string FirstCut(TubePart pipe, string letter) =>
        $"Cut {Named.The(pipe)} ({letter}) first to";

    public static string ThenTrim(string final) => $"Then play and trim. Computed final length: {final}.";

    public static string Section(int number, string part, string inside, string length) =>
        Text($"{number}: {part}, {inside} inside, {length} long");

    public static string Inside(string diameter) => $"{diameter} inside";

    public static string Left(string gap) => $"{gap} left";

    public static string Degrees(double degrees) => Text($"{degrees:0.#}°");

    public static string PictureOfCut(string letter) => $"Picture: sawing cut {letter}";

    public static string PictureOfJoint(string part, string letter) =>
        letter.Length == 0 ? $"Picture: {part} put on" : $"Picture: cut {letter} and the {part}";

    public static string PictureOfHeat(string letter) =>
        $"Picture: cut {letter}, the part to heat between marks";

    public static string Peak(ImpedancePeak peak) =>
        Text(
            $"Peak {peak.Number}: {peak.Hertz:0.00} Hz, {PeakNote(peak)}, {peak.Decibels:0.0} dB, Q {peak.QualityFactor:0}"
        );

    public static string PeakNote(ImpedancePeak peak) =>
        Text($"{peak.Note} {peak.Cents:+0.0;-0.0;0.0} cents");

    public static string Level(ImpedancePeak peak) => Text($"{peak.Decibels:0.0} dB");

    public static string Quality(ImpedancePeak peak) => Text($"{peak.QualityFactor:0}");

    public static string PeakNumber(ImpedancePeak peak) => Text($"{peak.Number}");

    public static string PeakHertz(ImpedancePeak peak) => Text($"{peak.Hertz:0.00} Hz");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
