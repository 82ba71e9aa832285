using UnitsNet;

namespace AirColumn;

/// <summary>Solves for the length of sections that puts a resonance of a column on a frequency.</summary>
public static class SectionLength
{
    /// <summary>Stretches or shortens one section, with its diameters unchanged, until the first resonance meets the target.</summary>
    /// <param name="column">The column to begin with; it is not changed.</param>
    /// <param name="sectionIndex">The index of the section: 0 is at the blown end.</param>
    /// <param name="target">
    /// The wanted frequency of the first resonance: above 0, up to <see cref="Column.HighestFrequency"/>.
    /// </param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>
    /// The solution with status and residual: solved means within 1e-6 cent. Lengths from 0.01 mm to 100 m are tried.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section, or the target is out of range.</exception>
    /// <exception cref="ArgumentException">
    /// A hole or branch, which keeps its distance from the blown end, does not fit a length that was tried.
    /// </exception>
    public static LengthSolution Solve(
        Column column,
        int sectionIndex,
        Frequency target,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        RequireSection(column, sectionIndex, nameof(sectionIndex));
        Require.Positive(target.Hertz, "Hz", nameof(target));
        return Solve(column, new LengthQuestion(sectionIndex, target), cancellationToken);
    }

    /// <summary>Stretches or shortens sections in proportion, with their diameters unchanged, until a resonance meets the target.</summary>
    /// <param name="column">The column to begin with; it is not changed.</param>
    /// <param name="question">The sections, the resonance, its frequency and the allowed lengths.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The solution with status and residual: solved means within 1e-6 cent.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// There is no such section, or the target is above <see cref="Column.HighestFrequency"/>, or there are fewer holes than the number that keep
    /// their distance from the far end.
    /// </exception>
    /// <exception cref="ArgumentException">
    /// The shortest length is not below the longest, or a hole or branch, which keeps its distance from the blown end, does not fit a
    /// length that was tried.
    /// </exception>
    public static LengthSolution Solve(
        Column column,
        LengthQuestion question,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(question);
        foreach (var section in question.Sections)
        {
            RequireSection(column, section, nameof(question));
        }

        Require.InRange(
            question.HolesFromFarEnd,
            0,
            column.Bore.Holes.Count,
            "",
            nameof(LengthQuestion.HolesFromFarEnd)
        );
        Require.InRange(question.Target.Hertz, 0, column.HighestFrequency.Hertz, "Hz", "target");
        return question.Shortest < question.Longest
            ? FrontsOfSearch.Keep(
                column,
                from => new LengthSearch(from, question, cancellationToken).Run(),
                solution => solution.Column,
                (solution, same) => solution with { Column = same },
                cancellationToken
            )
            : throw new ArgumentException(
                $"Shortest is {Require.Show(question.Shortest.Millimeters, "mm")} and Longest "
                    + $"{Require.Show(question.Longest.Millimeters, "mm")}; the shortest must be below the longest.",
                nameof(question)
            );
    }

    internal static void RequireSection(Column column, int section, string parameter) =>
        Require.Index(section, column.Bore.Sections.Count, "section", parameter);
}
