namespace BenchPage.Words;

/// <summary>The words of the page, in English: to translate it, translate this folder, and that of the workshop's sentences.</summary>
internal static class PageWords
{
    public const string Title = "Workbench";
    public const string Starting = "Starting…";
    public const string TubeName = "name of the tube";
    public const string Parts = "Parts, from the lips";
    public const string AddPart = "Add a part";
    public const string Undo = "Undo";
    public const string Redo = "Redo";
    public const string OpenFile = "Open a file";
    public const string SaveFile = "Save as a file";
    public const string CopyLink = "Copy a link";
    public const string Copied = "The link is copied. It holds the whole tube.";
    public const string PrintSheet = "Build sheet";
    public const string Note = "Note";
    public const string Lower = "a semitone lower";
    public const string Higher = "a semitone higher";
    public const string Temperature = "Temperature, °C";
    public const string Humidity = "Humidity, %";
    public const string Reference = "A4, Hz";
    public const string Units = "Lengths in";
    public const string Room = "Air and tuning";
    public const string MoveUp = "Move towards the lips";
    public const string MoveDown = "Move towards the open end";
    public const string Remove = "Remove";
    public const string Name = "name";
    public const string OpenLength = "to be found";
    public const string Measured = "as measured";
    public const string NoSocket = "none";
    public const string ByCaliper = "by caliper; empty: the catalogue's";
    public const string Computing = "Computing…";
    public const string Answer = "The cut";
    public const string OnTheNote = "On the note";
    public const string Notes = "Its notes";
    public const string NotesHead = "note";
    public const string CentsHead = "cents";
    public const string FrequencyHead = "frequency";
    public const string IntervalHead = "above the drone";
    public const string Drone = "drone";
    public const string Drawing = "Side view";
    public const string Resonances = "Where it resonates";
    public const string Warnings = "Mind this";
    public const string Cutting = "Before you cut";
    public const string Or = "or";
    public const string Wrong = "This cannot be built yet";
    public const string Close = "Close";
    public const string Print = "Print";
    public const string BadLink = "What was kept or linked cannot be read; the bench starts anew.";
    public const string Fault = "Something went wrong in the program: ";

    public static readonly IReadOnlyDictionary<string, string> Kinds = new Dictionary<string, string>
    {
        ["pipe"] = "pipe",
        ["coupling"] = "coupling or reducer",
        ["elbow"] = "elbow",
        ["bend"] = "bend",
        ["bell"] = "bell",
        ["insert"] = "insert, such as a mouthpiece",
        ["fitting"] = "fitting put over or on",
    };

    public static readonly IReadOnlyDictionary<string, string> NewNames = new Dictionary<string, string>
    {
        ["pipe"] = "pipe",
        ["coupling"] = "coupling",
        ["elbow"] = "elbow",
        ["bend"] = "bend",
        ["bell"] = "bell",
        ["insert"] = "mouthpiece",
        ["fitting"] = "fitting",
    };

    public static readonly IReadOnlyDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["stock"] = "kind of pipe",
        ["inside"] = "inside diameter",
        ["outside"] = "outside diameter",
        ["length"] = "length",
        ["inserted"] = "pushed in",
        ["protrudes"] = "stands out",
        ["before"] = "socket towards the lips",
        ["after"] = "socket towards the open end",
        ["gap"] = "left free at each stop",
        ["between"] = "between the stops",
        ["radius"] = "radius of the bend, to the middle of the pipe",
        ["angle"] = "angle, degrees",
        ["straightAfter"] = "straight after the bend",
        ["adds"] = "adds to the length",
        ["entrance"] = "inside at the entrance",
        ["bottom"] = "inside at the bottom",
        ["depth"] = "depth",
    };

    public static readonly IReadOnlyDictionary<string, string> UnitNames = new Dictionary<string, string>
    {
        ["both"] = "mm and inches",
        ["mm"] = "mm",
        ["in"] = "inches",
    };

    public static string CutFirst(string pipe) => $"Cut the {pipe} first to";

    public static string FieldOf(string field, string part) => $"{field} of {part}";

    public static string CentsPer(string millimetre, string sixteenth, string units) =>
        units switch
        {
            "mm" => $"1 mm shorter: {millimetre} cents higher.",
            "in" => $"1/16 in shorter: {sixteenth} cents higher.",
            _ => $"1 mm shorter: {millimetre} cents higher; 1/16 in: {sixteenth}.",
        };

    public static string Sure(string length, string cents) =>
        $"±{length}, or ±{cents} cents, 19 times out of 20";

    public static string Played(string cents) =>
        $"A player is expected to sound {cents} cents from this resonance; so cut long, play, and trim.";
}
