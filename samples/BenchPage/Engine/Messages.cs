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

    /// <summary>What was heard of the tube: the history file of DroneTube; empty before the first.</summary>
    public string Heard { get; init; } = "";
}

/// <summary>What the page asks the worker.</summary>
/// <param name="State">The bench.</param>
public sealed record Question(BenchState State)
{
    /// <summary>How wide drawings are.</summary>
    public double Width { get; init; } = 340;
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

    /// <summary>The side view, SVG.</summary>
    public string Side { get; init; } = "";

    /// <summary>The length of the whole tube.</summary>
    public string InAll { get; init; } = "";
}

/// <summary>What takes longer: how sure it is, the first cut, warnings, the impedance.</summary>
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

    /// <summary>The impedance chart, SVG.</summary>
    public string Impedance { get; init; } = "";
}

/// <summary>A sentence about a part.</summary>
public sealed record PartNote(int Part, string Text);

/// <summary>A note of the tube.</summary>
public sealed record NoteRow(string Hertz, string Note, double Cents, string Interval);

/// <summary>What the page needs to know before anything is asked.</summary>
public sealed record StartAnswer(
    IReadOnlyList<StockRow> Pipes,
    IReadOnlyList<string> Sockets,
    string FirstCaution,
    IReadOnlyList<CautionRow> Cautions
);

/// <summary>A pipe of the catalogue.</summary>
public sealed record StockRow(string Name, string Inside, string Outside, double InsideMillimetres);

/// <summary>A caution of a step of the work.</summary>
public sealed record CautionRow(string Step, string Title, string Text, string Source);

/// <summary>A page to print.</summary>
public sealed record SheetAnswer(string Error, string Title, string Html);

/// <summary>How messages are written.</summary>
[JsonSerializable(typeof(BenchState))]
[JsonSerializable(typeof(Question))]
[JsonSerializable(typeof(CutAnswer))]
[JsonSerializable(typeof(PlanAnswer))]
[JsonSerializable(typeof(StartAnswer))]
[JsonSerializable(typeof(SheetAnswer))]
internal sealed partial class MessageJson : JsonSerializerContext;
