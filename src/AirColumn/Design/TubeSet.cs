using AirColumn.Acoustics;
using AirColumn.Pitches;

namespace AirColumn.Design;

/// <summary>A set of tubes from the same pipe, one for each note: pan pipes, chimes of drones.</summary>
public static class TubeSet
{
    /// <summary>For each note the length of the section that puts the first resonance on it.</summary>
    /// <param name="column">One of the tubes, of any length, in the air in which the set is played.</param>
    /// <param name="section">Which section is the pipe: 0 is at the blown end.</param>
    /// <param name="tuning">The tuning that gives the notes their frequencies.</param>
    /// <param name="notes">The notes.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends it early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>For each note its tube, or why there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section, or a note lies beyond plane-wave theory.</exception>
    public static IReadOnlyList<TubeOfSet> Over(
        Column column,
        int section,
        Tuning tuning,
        IReadOnlyList<Pitch> notes,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(tuning);
        ArgumentNullException.ThrowIfNull(notes);
        var tubes = new TubeOfSet[notes.Count];
        for (var i = 0; i < tubes.Length; i++)
        {
            var target = tuning.FrequencyOf(notes[i]);
            tubes[i] = new TubeOfSet(
                notes[i],
                SectionLength.Solve(column, section, target, cancellationToken)
            );
            progress?.Report((i + 1.0) / tubes.Length);
        }

        return tubes;
    }
}

/// <summary>A tube of a set.</summary>
/// <param name="Note">Its note.</param>
/// <param name="Length">How long its pipe is, or why there is none.</param>
public sealed record TubeOfSet(Pitch Note, LengthSolution Length);
