namespace AirColumn;

/// <summary>A set of tubes from the same pipe, one for each note, such as pan pipes.</summary>
public static class TubeSet
{
    /// <summary>Finds, for each note, the length of a section that puts the first resonance on that note.</summary>
    /// <param name="column">One of the tubes, of any length, in the air in which the set is played.</param>
    /// <param name="section">The index of the section that is the pipe: 0 is at the blown end.</param>
    /// <param name="tuning">The tuning that gives the notes their frequencies.</param>
    /// <param name="notes">The notes.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The tubes, in the order of the notes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section, or a note lies beyond plane-wave theory.</exception>
    public static IReadOnlyList<TunedTube> Over(
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
        SectionLength.RequireSection(column, section, nameof(section));
        for (var i = 0; i < notes.Count; i++)
        {
            Require.InRange(
                tuning.FrequencyOf(notes[i]).Hertz,
                0,
                column.HighestFrequency.Hertz,
                "Hz",
                $"notes[{i}]"
            );
        }

        var tubes = new TunedTube[notes.Count];
        for (var i = 0; i < tubes.Length; i++)
        {
            var target = tuning.FrequencyOf(notes[i]);
            tubes[i] = new TunedTube(
                notes[i],
                SectionLength.Solve(column, section, target, cancellationToken)
            );
            progress?.Report((i + 1.0) / tubes.Length);
        }

        return tubes;
    }
}

/// <summary>A tube of a set, cut for its note.</summary>
/// <param name="Note">The note.</param>
/// <param name="Solution">The length of its pipe, or the reason why no length reaches the note.</param>
public sealed record TunedTube(Pitch Note, LengthSolution Solution)
{
    /// <summary>The note and the length of its pipe, in the invariant culture.</summary>
    /// <returns>Note and length, as text.</returns>
    public override string ToString() => $"{Note}: {Solution}";
}
