using UnitsNet;

namespace AirColumn.Workshop.Instruments;

/// <summary>
/// A pipe of a set of pan pipes: stopped by a plug at the foot, blown across its open end, which the lip covers in part. Immutable.
/// </summary>
/// <remarks>
/// The correction of the blown end, the face correction, depends on the player. Published lengths of pan pipes imply 0.40 to 0.82 of the inside
/// diameter. The middle of that range is taken, and the cut is long enough that a plug can be pushed in until the pipe is in tune.
/// </remarks>
public sealed record PanPipe
{
    // Of the inside diameter.
    private const double LeastCorrection = 0.40;
    private const double MostCorrection = 0.82;

    private PanPipe(Pitch note, Length inside, Length plug, LengthSolution solution)
    {
        (Note, Solution) = (note, solution);
        var unsure = (MostCorrection - LeastCorrection) / 2 * inside.Millimeters;
        PlusMinus = Length.FromMillimeters(unsure);
        Cut = SawLength(solution.Length.Millimeters + unsure + plug.Millimeters);
    }

    /// <summary>Its note.</summary>
    public Pitch Note { get; }

    /// <summary>The result of the search for the length of air.</summary>
    public LengthSolution Solution { get; }

    /// <summary>The distance from the blown end to the plug, for a face correction in the middle of the usual range.</summary>
    public Length Air => Solution.Length;

    /// <summary>The uncertainty of <see cref="Air"/> because players differ: half the width of its range.</summary>
    public Length PlusMinus { get; }

    /// <summary>The length to saw, rounded up to a whole millimetre: the longest length of air, plus the plug.</summary>
    public Length Cut { get; }

    /// <summary>A pipe for a note.</summary>
    /// <param name="note">The note.</param>
    /// <param name="tuning">The tuning that gives the note its frequency.</param>
    /// <param name="air">The air in the pipe.</param>
    /// <param name="inside">Inside diameter: 5 mm to 500 mm.</param>
    /// <param name="plug">The depth to which the plug goes in: 0.1 mm to 10 m.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The pipe.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range, or the note lies beyond plane-wave theory.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public static PanPipe For(
        Pitch note,
        Tuning tuning,
        Air air,
        Length inside,
        Length plug,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(tuning);
        ArgumentNullException.ThrowIfNull(air);
        var diameter = Caliper.Diameter(inside);
        var depth = Caliper.AxialLength(plug);
        var correction = (LeastCorrection + MostCorrection) / 2 * diameter.Millimeters;
        var column = new Column(
            Bore.Build().Cylinder(diameter, Length.FromMillimeters(200)).ClosedEnd(),
            air,
            new ColumnOptions { BlownEnd = BlownEnd.Open(Length.FromMillimeters(correction)) }
        );
        return new PanPipe(
            note,
            diameter,
            depth,
            SectionLength.Solve(column, 0, tuning.FrequencyOf(note), cancellationToken)
        );
    }

    private static Length SawLength(double millimetres) =>
        Rounded.UpToMillimetre(Length.FromMillimeters(millimetres));
}
