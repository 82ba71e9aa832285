using System.Globalization;
using UnitsNet;

namespace AirColumn;

/// <summary>Compares a straight tube with tapered tubes, all on the same note.</summary>
public static class TaperStudy
{
    /// <summary>
    /// Gives a section several far ends of different diameters in turn, each with the length that puts the drone on the note.
    /// </summary>
    /// <param name="column">The tube.</param>
    /// <param name="section">The index of the section: 0 is at the blown end. Its inlet diameter stays.</param>
    /// <param name="drone">The wanted frequency of the drone.</param>
    /// <param name="outlets">The section's diameters at its far end, one for each answer; the diameter of the inlet makes a straight tube.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>For each outlet diameter the length and the resonances.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section, or a diameter or the note is out of range.</exception>
    public static IReadOnlyList<TaperAnswer> Compare(
        Column column,
        int section,
        Frequency drone,
        IReadOnlyList<Length> outlets,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(outlets);
        Require.InRange(section, 0, column.Bore.Sections.Count - 1, "");
        var diameter = ColumnParameter.OutletDiameter(section);
        var answers = new TaperAnswer[outlets.Count];
        for (var i = 0; i < answers.Length; i++)
        {
            answers[i] = Answer(outlets[i], column, diameter, section, drone, cancellationToken);
            progress?.Report((i + 1.0) / answers.Length);
        }

        return answers;
    }

    private static TaperAnswer Answer(
        Length outlet,
        Column column,
        ColumnParameter diameter,
        int section,
        Frequency drone,
        CancellationToken cancellationToken
    )
    {
        var solution = SectionLength.Solve(
            diameter.With(column, outlet.Meters),
            section,
            drone,
            cancellationToken
        );
        var resonances = solution.Column.FirstResonances(2, cancellationToken);
        return new TaperAnswer(
            outlet,
            solution,
            resonances,
            resonances.Count == 2
                ? Cents.Between(resonances[0].Frequency, resonances[1].Frequency)
                : double.NaN
        );
    }
}

/// <summary>One of the tapers compared.</summary>
/// <param name="Outlet">Diameter at the far end of the section.</param>
/// <param name="Solution">The length of the section, or the reason why no length reaches the note.</param>
/// <param name="Resonances">Drone and first overblown note, each with its level and quality factor.</param>
/// <param name="IntervalCents">The interval from the drone to the overblown note; NaN if there is no overblown note.</param>
public sealed record TaperAnswer(
    Length Outlet,
    LengthSolution Solution,
    ResonanceList Resonances,
    double IntervalCents
)
{
    /// <summary>The far diameter, the length, and the interval to the overblown note, in the invariant culture.</summary>
    /// <returns>Diameter, length and interval, as text.</returns>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"outlet {Outlet.Millimeters:0.0} mm: {Solution}"
                + $"{(double.IsNaN(IntervalCents) ? "" : $" Overblown {Wording.CentsOf(IntervalCents)}.")}"
        );
}
