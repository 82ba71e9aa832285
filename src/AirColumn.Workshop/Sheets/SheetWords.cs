namespace AirColumn.Workshop.Sheets;

/// <summary>The words of the build sheet, in one place, in English.</summary>
internal static class SheetWords
{
    public const string SideView = "Side view of the bore";
    public const string ResonanceChart = "Impedance at the lips against frequency";
    public const string InAll = "from lips to open end";
    public const string Lips = "lips";
    public const string OpenEnd = "open end";
    public const string DrawnToScale = "Drawn to scale.";
    public const string FrequencyAxis = "frequency, Hz: lines at the multiples of the note";
    public const string LevelAxis = "|Z| over ρc/S, dB";
    public const string Bore = "The bore, from the lips";
    public const string CutList = "Cut list";
    public const string FitUp = "Putting it together";
    public const string Chart = "Where it resonates";
    public const string Trim = "Trimming";
    public const string Sure = "How sure";
    public const string WhatIf = "What changes what";
    public const string Finishing = "Finishing";
    public const string Cautions = "Cautions";
    public const string Mind = "Mind";
    public static readonly string[] BoreHead = ["", "part", "inside", "length"];
    public static readonly string[] CutHead =
    [
        "pipe",
        "cut first, mm",
        "cut first, inches",
        "for the resonance on the note",
    ];
    public static readonly string[] TrimHead =
    [
        "cut off in all",
        "pipe then",
        "played note, expected",
        "from the note",
    ];
    public static readonly string[] SureHead = ["what", "may be off by", "makes", "share"];

    public static string DrawnHigher(string times) =>
        $"Lengths to scale; heights drawn {times} times larger.";
}
