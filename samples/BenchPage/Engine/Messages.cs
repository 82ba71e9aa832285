using System.Text.Json.Serialization;

namespace BenchPage.Engine;

/// <summary>Everything that makes the page show what it shows: kept on the device, in links and for undo. Immutable.</summary>
/// <param name="Parts">The parts file.</param>
/// <param name="Note">The note of the tube.</param>
public sealed record BenchState(string Parts, string Note)
{
    /// <summary>Frequency of A4, Hz.</summary>
    public double Reference { get; init; } = 440;

    /// <summary>Of the air in the tube, °C.</summary>
    public double Temperature { get; init; } = 20;

    /// <summary>Relative, percent.</summary>
    public double Humidity { get; init; } = 50;

    /// <summary>mm, in or both.</summary>
    public string Units { get; init; } = "both";

    /// <summary>The present length of the open pipe.</summary>
    public string CutNow { get; init; } = "";

    /// <summary>How the tube was put together when it was heard: dry or home.</summary>
    public string Joints { get; init; } = "dry";

    /// <summary>What is made: tube, pipes or flute.</summary>
    public string Kind { get; init; } = "tube";

    /// <summary>The set of pan pipes.</summary>
    public PipesState Pipes { get; init; } = new();

    /// <summary>The flute.</summary>
    public FluteState Flute { get; init; } = new();

    /// <summary>What was heard of the tube: the history file of DroneTube; empty before the first.</summary>
    public string Heard { get; init; } = "";

    /// <summary>The same without what does not change the cut.</summary>
    public BenchState ForTheCut() =>
        this with
        {
            Kind = "tube",
            CutNow = "",
            Joints = "dry",
            Heard = "",
            Pipes = new(),
            Flute = new(),
        };
}

/// <summary>A set of pan pipes as it was described.</summary>
public sealed record PipesState
{
    public string Tonic { get; init; } = "G4";
    public string Scale { get; init; } = "major";
    public int Count { get; init; } = 8;
    public string Inside { get; init; } = "13 mm";
    public string Plug { get; init; } = "15 mm";
}

/// <summary>A flute as it was described.</summary>
public sealed record FluteState
{
    public string Tonic { get; init; } = "D4";
    public string Inside { get; init; } = "19 mm";
    public string Outside { get; init; } = "23.4 mm";
    public string Mouth { get; init; } = "9 mm";

    /// <summary>The diameters of the holes from the mouth, apart by semicolons.</summary>
    public string Holes { get; init; } = "8 mm; 9 mm; 9 mm; 7 mm; 9 mm; 9 mm";
}

/// <summary>A pan pipe.</summary>
public sealed record PipeAnswer(string Error, string Note, string Air, string PlusMinus, string Cut);

/// <summary>A flute.</summary>
public sealed record FluteAnswer
{
    public string Error { get; init; } = "";
    public string Sounding { get; init; } = "";
    public IReadOnlyList<HoleRow> Holes { get; init; } = [];
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>The template to wrap round the pipe, a page to print.</summary>
    public string Template { get; init; } = "";
}

/// <summary>A hole of a flute.</summary>
public sealed record HoleRow(
    string Number,
    string Diameter,
    string FromEnd,
    string FromMouth,
    string ToNext,
    string Opened
);

/// <summary>What was heard of a tube, and what to do next.</summary>
public sealed record ListenAnswer
{
    public string Error { get; init; } = "";
    public string Heard { get; init; } = "";

    /// <summary>Half the 95 % range, cents; empty for a reading.</summary>
    public string PlusMinus { get; init; } = "";
    public string Nearest { get; init; } = "";

    /// <summary>From the resonance to the note, cents.</summary>
    public string Difference { get; init; } = "";
    public string Verdict { get; init; } = "";
    public string PipeThen { get; init; } = "";
    public string DryNote { get; init; } = "";
    public string NewPipe { get; init; } = "";
    public string Beyond { get; init; } = "";
    public string Ring { get; init; } = "";
    public IReadOnlyList<TrimRow> Rows { get; init; } = [];
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>All that was heard of the tube, with this.</summary>
    public string History { get; init; } = "";
    public int Count { get; init; }
}

/// <summary>A tube that was rendered.</summary>
public sealed record PreviewAnswer
{
    public string Error { get; init; } = "";
    public string Cut { get; init; } = "";
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>Where the page finds the sound.</summary>
    public string Address { get; init; } = "";
}

/// <summary>A further cut and what it makes of the note.</summary>
public sealed record TrimRow(string Cut, string Pipe, string Note, string Cents);

/// <summary>What the page asks the worker.</summary>
/// <param name="State">The bench.</param>
public sealed record Question(BenchState State)
{
    /// <summary>How wide drawings are.</summary>
    public double Width { get; init; } = 340;

    /// <summary>A cut to try, mm; 0 for the one that is computed.</summary>
    public double Tried { get; init; }
}

/// <summary>What can be said at once: the cut for the note, the notes, the drawing. Where something is wrong, only that.</summary>
public sealed record CutAnswer
{
    /// <summary>Why there is no answer; empty if there is one.</summary>
    public string Error { get; init; } = "";

    /// <summary>The part that the error is about; −1 if none is named.</summary>
    public int ErrorPart { get; init; } = -1;

    /// <summary>What is to be minded at each part.</summary>
    public IReadOnlyList<PartNote> Remarks { get; init; } = [];

    /// <summary>The computed final length of the open pipe.</summary>
    public string Cut { get; init; } = "";

    /// <summary>The name of that pipe.</summary>
    public string Pipe { get; init; } = "";

    /// <summary>Cents for each millimetre less.</summary>
    public double CentsPerMillimetre { get; init; }

    /// <summary>The notes of the tube at that length, the drone first.</summary>
    public IReadOnlyList<NoteRow> Notes { get; init; } = [];

    /// <summary>The notes with finger holes open, one after the other from the open end.</summary>
    public IReadOnlyList<NoteRow> Fingered { get; init; } = [];

    /// <summary>The side view, SVG.</summary>
    public string Side { get; init; } = "";

    /// <summary>From the note to the first resonance, cents.</summary>
    public double FromNote { get; init; }

    /// <summary>The computed final length, mm.</summary>
    public double CutMillimetres { get; init; }
}

/// <summary>What takes longer: how sure it is, the first cut, warnings; the impedance is added to it.</summary>
public sealed record PlanAnswer
{
    public string Error { get; init; } = "";

    /// <summary>The first cut, one text for each unit; either may be sawn.</summary>
    public IReadOnlyList<string> FirstCut { get; init; } = [];

    /// <summary>Half the 95 % range of the first resonance, cents.</summary>
    public double PlusMinusCents { get; init; }

    /// <summary>The same as a length of pipe.</summary>
    public string PlusMinus { get; init; } = "";

    /// <summary>What the player is expected to add.</summary>
    public string Played { get; init; } = "";

    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>The impedance chart, SVG, which comes last; empty before.</summary>
    public string Impedance { get; init; } = "";
}

/// <summary>A sentence about a part.</summary>
public sealed record PartNote(int Part, string Text);

/// <summary>A note of the tube.</summary>
/// <param name="Hertz">Its frequency.</param>
/// <param name="Note">The nearest note.</param>
/// <param name="Cents">From that note.</param>
/// <param name="About">The interval above the drone, or the holes that are open.</param>
public sealed record NoteRow(string Hertz, string Note, double Cents, string About);

/// <summary>What the page needs to know before anything is asked.</summary>
public sealed record StartAnswer(
    IReadOnlyList<StockRow> Pipes,
    IReadOnlyList<string> Sockets,
    IReadOnlyList<string> Scales,
    string FirstCaution,
    IReadOnlyList<CautionRow> Cautions
);

/// <summary>A pipe of the catalogue.</summary>
public sealed record StockRow(string Name, string Inside, string Outside, double InsideMillimetres);

/// <summary>A caution of a step of the work.</summary>
public sealed record CautionRow(string Step, string Title, string Text, string Source);

/// <summary>A page to print.</summary>
public sealed record SheetAnswer(string Error, string Html);

/// <summary>How messages are written.</summary>
[JsonSerializable(typeof(BenchState))]
[JsonSerializable(typeof(Question))]
[JsonSerializable(typeof(CutAnswer))]
[JsonSerializable(typeof(PlanAnswer))]
[JsonSerializable(typeof(StartAnswer))]
[JsonSerializable(typeof(SheetAnswer))]
[JsonSerializable(typeof(ListenAnswer))]
[JsonSerializable(typeof(PreviewAnswer))]
[JsonSerializable(typeof(PipeAnswer))]
[JsonSerializable(typeof(FluteAnswer))]
internal sealed partial class MessageJson : JsonSerializerContext;
