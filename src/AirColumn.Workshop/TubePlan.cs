using System.Diagnostics.CodeAnalysis;
using AirColumn.Design;
using AirColumn.Gases;
using AirColumn.Pitches;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>How long to cut the pipe of a tube for a note, or why no length fits. Immutable.</summary>
/// <remarks>
/// Everything is about the first resonance of the air column. The played note is not the same: warm breath and the lips
/// move it, so cut long, play and trim.
/// </remarks>
public sealed class TubePlan
{
    internal TubePlan() { }

    /// <summary>The parts.</summary>
    public required TubeParts Parts { get; init; }

    /// <summary>The note.</summary>
    public required Pitch Note { get; init; }

    /// <summary>The tuning that gives the note its frequency.</summary>
    public required Tuning Tuning { get; init; }

    /// <summary>The air in the tube.</summary>
    public required Air Air { get; init; }

    /// <summary>How the search for the length ended.</summary>
    public required SolveStatus Status { get; init; }

    /// <summary>One sentence: what was found, or why no length fits.</summary>
    public required string Explanation { get; init; }

    /// <summary>Sentences naming what is outside a model's range or outside what makers usually build.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>Whether a length fits. Where it is false the lengths are null and there are no overblown notes.</summary>
    [MemberNotNullWhen(true, nameof(Exact), nameof(WholeMillimetre), nameof(WholeSixteenth))]
    [MemberNotNullWhen(true, nameof(Trimming), nameof(QuarterWave))]
    public bool IsSolved => Status == SolveStatus.Solved;

    /// <summary>The frequency of the note.</summary>
    public Frequency Target => Tuning.FrequencyOf(Note);

    /// <summary>The length that puts the first resonance on the note.</summary>
    public TubeCut? Exact { get; init; }

    /// <summary>The pipe cut to the nearest whole millimetre, at least one.</summary>
    public TubeCut? WholeMillimetre { get; init; }

    /// <summary>The pipe cut to the nearest sixteenth of an inch, at least one.</summary>
    public TubeCut? WholeSixteenth { get; init; }

    /// <summary>How much to leave at first.</summary>
    public Trimming? Trimming { get; init; }

    /// <summary>What the quarter-wave rule would have said.</summary>
    public QuarterWaveRule? QuarterWave { get; init; }

    /// <summary>
    /// Resonances 2 to 4 at the exact length; fewer, with a warning, where plane-wave theory ends before.
    /// </summary>
    public IReadOnlyList<OverblownNote> Overblown { get; init; } = [];
}
