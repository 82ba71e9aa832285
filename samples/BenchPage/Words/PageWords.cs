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
    public const string Fingered = "With holes open";
    public const string OpenHead = "open";
    public const string Drawing = "Side view";
    public const string Resonances = "Where it resonates";
    public const string Warnings = "Mind this";
    public const string Cutting = "Before you cut";
    public const string Or = "or";
    public const string Wrong = "This cannot be built yet";
    public const string Close = "Close";
    public const string Print = "Print";
    public const string BadNewLink = "The linked tube cannot be read; nothing is changed.";
    public const string BadLink = "The kept or linked tube cannot be read; the bench starts anew.";
    public const string BeginWith = "Begin with";
    public const string Tonic = "lowest note";
    public const string Scale = "scale";
    public const string Count = "how many pipes";
    public const string PipeInside = "inside diameter of the pipe";
    public const string PipeOutside = "outside diameter of the pipe";
    public const string PlugDepth = "depth of the plug";
    public const string MouthAdds = "the mouth hole adds, as length of pipe";
    public const string PanPipes = "Pan pipes";
    public const string PanPipesNote =
        "Saw each pipe to its length, push the plug in at the foot, and play. Push it further until the pipe is in tune. How far the air reaches out of the pipe depends on the player. The range shows how much this may change the length.";
    public const string AirHead = "air, from the edge to the plug";
    public const string SawHead = "saw to";
    public const string Flute = "Six-hole flute";
    public const string FluteNote =
        "Drill small, play, and open each hole up to its size: a wider hole is sharper. Take the length that the mouth hole adds from a finished flute of this kind. An error in it shifts all notes together. Cut the pipe long beyond the mouth hole, to have room for the stopper.";
    public const string Holes = "Holes, from the mouth";
    public const string HoleHead = "hole";
    public const string SizeHead = "size";
    public const string FromEndHead = "from the open end";
    public const string FromMouthHead = "from the mouth hole";
    public const string ToNextHead = "to the next";
    public const string OpenedHead = "opened, it plays";
    public const string PlaceHoles = "Place the holes";
    public const string Placing = "Placing the holes…";
    public const string Cancel = "Cancel";
    public const string Stopped = "Stopped.";
    public const string ComputeNow = "Compute now";
    public const string Writing = "Writing the page to print…";
    public const string Template = "Template, full size";
    public const string PlayedTitle = "Cut, played and heard";
    public const string ListenNote =
        "Put the tube together and play the drone steadily for a few seconds, with the device one step from the open end. Or type what a tuner shows. The sound never leaves this device.";
    public const string CutNow = "how long that pipe is now";
    public const string Joints = "joints when it was heard";
    public const string ListenNow = "Listen";
    public const string OpenRecording = "Open a WAV file";
    public const string TunerShows = "a tuner shows, such as D2 -26 cents";
    public const string Advise = "What to trim";
    public const string Listens = "Listening: play now…";
    public const string Working = "Computing what to trim…";
    public const string Recording = "The recording";
    public const string Heard = "Heard";
    public const string Forget = "Forget what was heard";
    public const string LowerIt = "To lower it, choose one of these:";
    public const string CutOffHead = "cut off in all";
    public const string PipeHead = "pipe then";
    public const string ExpectedHead = "note expected";
    public const string FromNoteHead = "cents from the note";
    public const string HearTitle = "Hear two shapes";
    public const string HearNote =
        "Keep one tube as A, change it, keep the other as B, and listen: the drone, then the first overblown note. Both tubes are equally loud. A simple model of lips plays them, higher than people do: judge the colour and the interval.";
    public const string Hear = "Hear A and B";
    public const string Rendering = "Rendering the sounds…";
    public const string NothingKept = "nothing kept yet";
    public const string TryCut = "Try another cut";
    public const string BackToCut = "Back to the computed cut";
    public const string Fault = "Something went wrong in the program: ";

    public static readonly IReadOnlyDictionary<string, string> Beginnings = new Dictionary<string, string>
    {
        ["drone"] = "Drone tube",
        ["horn"] = "Horn",
        ["pipes"] = "Pan pipes",
        ["flute"] = "Flute",
    };

    public static readonly IReadOnlyDictionary<string, string> JointNames = new Dictionary<string, string>
    {
        ["dry"] = "dry: as far as hands push",
        ["home"] = "home: pushed in to the stops",
    };

    /// <summary>Why nothing was recorded.</summary>
    public static readonly IReadOnlyDictionary<string, string> Microphone = new Dictionary<string, string>
    {
        ["NotAllowedError"] =
            "The microphone may not be used: allow it for this page in the browser's settings, or record elsewhere and open the WAV file.",
        ["NotFoundError"] =
            "No microphone was found: connect one, or record elsewhere and open the WAV file.",
        ["other"] =
            "The microphone gave no sound: another program may be using it. Record elsewhere and open the WAV file.",
    };

    public static readonly IReadOnlyDictionary<string, string> Kinds = new Dictionary<string, string>
    {
        ["pipe"] = "pipe",
        ["coupling"] = "coupling or reducer",
        ["elbow"] = "elbow",
        ["bend"] = "bend",
        ["bell"] = "bell",
        ["insert"] = "insert, such as a mouthpiece",
        ["fitting"] = "fitting put over or on",
        ["hole"] = "finger hole",
    };

    /// <summary>What can be printed at full size for a part.</summary>
    public static readonly IReadOnlyDictionary<string, string> PartTemplates = new Dictionary<string, string>
    {
        ["pipe"] = "Saw line, full size",
        ["bend"] = "Bend, full size",
        ["hole"] = "Holes, full size",
    };

    /// <summary>What can be chosen of a hole.</summary>
    public static readonly IReadOnlyDictionary<string, string> Choices = new Dictionary<string, string>
    {
        ["end"] = "from the end towards the open end",
        ["lips"] = "from the end towards the lips",
        ["closed"] = "closed by a finger",
        ["open"] = "open, as a vent",
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
        ["hole"] = "hole",
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
        ["diameter"] = "diameter",
        ["at"] = "middle of the hole, along the pipe",
        ["from"] = "measured",
        ["drone"] = "for the drone",
    };

    public static readonly IReadOnlyDictionary<string, string> UnitNames = new Dictionary<string, string>
    {
        ["both"] = "mm and inches",
        ["mm"] = "mm",
        ["in"] = "inches",
    };

    public static string HeardNote(string hertz, string plusMinus, string nearest) =>
        plusMinus.Length > 0 ? $"{hertz} ± {plusMinus} cents, {nearest}" : $"{hertz}, {nearest}";

    public static string FromResonance(string cents) =>
        $"The note lies {cents} cents from the computed resonance.";

    public static string PipeThen(string length) => $"The pipe is then {length} long.";

    public static string NewPipe(string length) => $"a new pipe of {length} in place of the one to trim";

    public static string Beyond(string length) =>
        $"{length} more at the open end, of the same inside diameter";

    public static string Ring(string length, string inside) =>
        $"a ring {length} long in the open end, {inside} inside";

    public static string Kept(int count) =>
        count == 1
            ? "One measurement of this tube is kept."
            : FormattableString.Invariant($"{count} measurements of this tube are kept.");

    public static string Tried(string cut, string cents) =>
        $"Cut to {cut}, the first resonance is {cents} cents from the note.";

    public static string KeepAs(string letter) => $"Keep this tube as {letter}";

    public static string SoundOf(string letter, string name, string note) => $"{letter}: {name}, {note}";

    public static string HoleSize(int hole) => $"size of hole {hole}";

    public static string Sounding(string length) =>
        $"From the middle of the mouth hole to the open end: {length}.";

    public static string CutFirst(string pipe) => $"Cut the {pipe} first to";

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
