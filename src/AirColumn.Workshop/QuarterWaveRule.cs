using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>
/// The length by the quarter-wave rule L = c/(4f) (common practice), and its error for a tube. The rule ignores diameter, fittings, the open end
/// and losses.
/// </summary>
public sealed record QuarterWaveRule
{
    private QuarterWaveRule(Length totalLength, Length difference, BuiltTube? built)
    {
        (TotalLength, Difference, Built) = (totalLength, difference, built);
    }

    /// <summary>The total length by the rule, with the speed of sound of the plan's air.</summary>
    public Length TotalLength { get; }

    /// <summary>The rule's total length minus the computed one: positive if the rule is too long.</summary>
    public Length Difference { get; }

    /// <summary>
    /// The same parts with the pipe cut for the total length by the rule; null if the parts other than the pipe are already as long as that
    /// total.
    /// </summary>
    public BuiltTube? Built { get; }

    /// <summary>The rule for the note and the parts of a plan.</summary>
    /// <param name="build">The plan.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The rule with its error.</returns>
    /// <exception cref="ArgumentException">The plan has no solution.</exception>
    public static QuarterWaveRule Of(TubeBuild build, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(build);
        if (!build.IsSolved)
        {
            throw new ArgumentException(build.Explanation, nameof(build));
        }

        var total = 1000 * build.Air.SpeedOfSound.MetersPerSecond / (4 * build.Target.Hertz);
        var difference = total - build.Exact.Tube.Bore.Length.Millimeters;
        var cut = Length.FromMillimeters(build.Exact.Cut.Millimeters + difference);
        return new QuarterWaveRule(
            Length.FromMillimeters(total),
            Length.FromMillimeters(difference),
            cut >= build.Assembly.ShortestCut
                ? TubeBuilder.Built(
                    build.Assembly,
                    cut,
                    build.Air,
                    build.Target,
                    build.Exact.Column,
                    cancellationToken
                )
                : null
        );
    }
}
