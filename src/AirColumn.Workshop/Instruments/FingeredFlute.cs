using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Instruments;

/// <summary>A flute of one pipe with six finger holes that plays a major scale. Immutable.</summary>
/// <remarks>
/// Lengths are measured from the middle of the mouth hole, where the air column begins. The correction of the mouth hole depends on hole and
/// player; take it from a finished flute.
/// </remarks>
public sealed class FingeredFlute
{
    // Neighbouring fingers of a grown-up hand reach about that far, and three fingers about twice that: choices, to be tried by hand.
    private const double Reach = 38;

    private FingeredFlute(ShapeSolution solution, Pitch tonic, Length outside)
    {
        (Solution, Tonic, Outside) = (solution, tonic, outside);
        var holes = solution.Column.Bore.Holes;
        var end = solution.Column.Bore.Length.Millimeters;
        Holes =
        [
            .. holes.Select(
                (hole, i) =>
                    new FingerHole(
                        i + 1,
                        hole.Diameter,
                        hole.Position,
                        Length.FromMillimeters(end - hole.Position.Millimeters),
                        i + 1 < holes.Count
                            ? Length.FromMillimeters(
                                holes[i + 1].Position.Millimeters - hole.Position.Millimeters
                            )
                            : null
                    )
            ),
        ];
    }

    /// <summary>The result of the search.</summary>
    public ShapeSolution Solution { get; }

    /// <summary>The note with all holes closed.</summary>
    public Pitch Tonic { get; }

    /// <summary>Outside diameter of the pipe.</summary>
    public Length Outside { get; }

    /// <summary>True if all notes are met.</summary>
    public bool IsSolved => Solution.Status == SolveStatus.Solved;

    /// <summary>The distance from the middle of the mouth hole to the open end.</summary>
    public Length Sounding => Solution.Column.Bore.Length;

    /// <summary>The holes, from the mouth.</summary>
    public IReadOnlyList<FingerHole> Holes { get; }

    /// <summary>The note of each fingering: first with all holes closed, then with one more hole open each time, from the open end.</summary>
    /// <param name="tuning">The tuning.</param>
    /// <returns>One note for each fingering.</returns>
    public IReadOnlyList<PitchReading> Notes(Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(tuning);
        return
        [
            .. Enumerable
                .Range(0, Holes.Count + 1)
                .Select(open => new string('x', Holes.Count - open) + new string('o', open))
                .Select(fingers =>
                    Solution.Column.WithFingering(Fingering.Parse(fingers)).FirstResonances(1)[0]
                )
                .Select(resonance => resonance.Nearest(tuning)),
        ];
    }

    /// <summary>Sentences about distances between holes that may be too far for a hand.</summary>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The sentences; none if there is nothing to remark.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public IReadOnlyList<string> Remarks(LengthUnits units)
    {
        var sizes = new Sizes(Require.Named(units));
        return
        [
            .. Holes
                // Between the hands there is room.
                .Where(hole => hole.ToNext is { } next && hole.Number != 3 && next.Millimeters > Reach)
                .Select(hole =>
                    InstrumentWords.FarApart(
                        hole.Number,
                        sizes.Tape(hole.ToNext!.Value),
                        sizes.Tape(Length.FromMillimeters(Reach))
                    )
                ),
        ];
    }

    /// <summary>A flute for a note.</summary>
    /// <param name="tonic">The note with all holes closed.</param>
    /// <param name="tuning">The tuning.</param>
    /// <param name="air">The air in the flute.</param>
    /// <param name="inside">Inside diameter of the pipe: 5 mm to 500 mm.</param>
    /// <param name="outside">Outside diameter of the pipe.</param>
    /// <param name="mouth">The correction of the mouth hole, as length of bore: 0 to 1 m.</param>
    /// <param name="diameters">The diameters of the six holes, from the mouth.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The flute.</returns>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    /// <exception cref="ArgumentException">
    /// There is no wall, there are not six diameters, or holes of these diameters would overlap.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static FingeredFlute Major(
        Pitch tonic,
        Tuning tuning,
        Air air,
        Length inside,
        Length outside,
        Length mouth,
        IReadOnlyList<Length> diameters,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(air);
        ArgumentNullException.ThrowIfNull(diameters);
        var diameter = Caliper.Diameter(inside);
        var around = Caliper.Outside(outside, diameter, InstrumentWords.Flute);
        var wall = Length.FromMillimeters((around.Millimeters - diameter.Millimeters) / 2);
        var tube = new Column(
            Bore.Build().Cylinder(diameter, Length.FromMillimeters(500)).OpenEnd(wall),
            air,
            new ColumnOptions { BlownEnd = BlownEnd.Open(mouth) }
        );
        return new FingeredFlute(
            FingerHoles.MajorScaleOn(tube, tuning, tonic, diameters, cancellationToken),
            tonic,
            around
        );
    }

    /// <summary>Tonic, number of holes and sounding length, in the invariant culture.</summary>
    /// <returns>Tonic, holes and length, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"flute on {Tonic}, {Holes.Count} holes, {Sounding.Millimeters:0.#} mm");
}

/// <summary>A finger hole.</summary>
/// <param name="Number">The number of the hole: 1 is nearest to the mouth.</param>
/// <param name="Diameter">Its diameter.</param>
/// <param name="FromMouth">The distance from the middle of the mouth hole to the middle of this hole.</param>
/// <param name="FromEnd">The distance from the middle of this hole to the open end.</param>
/// <param name="ToNext">The distance to the middle of the next hole; null for the last.</param>
public sealed record FingerHole(
    int Number,
    Length Diameter,
    Length FromMouth,
    Length FromEnd,
    Length? ToNext
);
