using UnitsNet;

namespace AirColumn;

/// <summary>Remedies for a tube that was cut too short: ways to lower its note.</summary>
public static class ShortTube
{
    // A narrower opening than this is hardly one.
    private const double NarrowestOverEnd = 0.3;

    /// <summary>Finds how far an added tube must reach beyond the end of the cut tube that it is pushed over or joined to.</summary>
    /// <param name="column">The tube as it was cut.</param>
    /// <param name="insideDiameter">Inside diameter of the added tube: 0.01 mm to 10 m.</param>
    /// <param name="target">The wanted frequency of the drone.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The length of the addition beyond the end of the cut tube, or the reason why no length works.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter or the target is out of range.</exception>
    public static LengthSolution Sleeve(
        Column column,
        Length insideDiameter,
        Frequency target,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        var bore = column.Bore;
        var longer = new Bore(
            [.. bore.Sections, new CylinderSection(insideDiameter, Length.FromMillimeters(1))],
            bore.FarEnd,
            bore.Holes,
            bore.Branches
        );
        return SectionLength.Solve(column.WithBore(longer), bore.Sections.Count, target, cancellationToken);
    }

    /// <summary>Finds how narrow a ring in the end must be.</summary>
    /// <param name="column">The tube as it was cut.</param>
    /// <param name="ringLength">Length of the ring, shorter than the last section.</param>
    /// <param name="target">The wanted frequency of the drone.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>
    /// The inside diameter of the ring as the only value, from 0.3 to 1 times the diameter of the end; or the reason why no ring works.
    /// </returns>
    /// <exception cref="ArgumentException">The last section is neither a cylinder nor a cone.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The ring is not shorter than the last section, or the target is out of range.</exception>
    public static ShapeSolution NarrowEnd(
        Column column,
        Length ringLength,
        Frequency target,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        var bore = column.Bore;
        var last = bore.Sections[^1];
        Require.InRange(
            ringLength.Millimeters,
            1e-3,
            1000 * last.LengthMetres - 1e-3,
            "mm",
            nameof(ringLength)
        );
        var (kept, end) = (last.LengthMetres - ringLength.Meters, 2 * last.WallAt(last.LengthMetres).Radius);
        if (last is not (CylinderSection or ConeSection))
        {
            throw new ArgumentException(
                $"The last section is a {last.GetType().Name}; a ring can be put into a cylinder or a cone. Describe the end that it goes into as a "
                    + "section of its own.",
                nameof(column)
            );
        }

        // A ring in a taper: the taper ends where the ring begins, as wide as it is there.
        var before = last.WithEnds(last.WallAt(0).Radius, last.WallAt(kept).Radius)
            .WithLength(Length.FromMeters(kept));
        var ring = new CylinderSection(Length.FromMeters(0.9 * end), ringLength);
        var narrowed = new Bore(
            [.. bore.Sections.Take(bore.Sections.Count - 1), before, ring],
            bore.FarEnd,
            bore.Holes,
            bore.Branches
        );
        return ShapeSearch.Solve(
            column.WithBore(narrowed),
            [new DesignVariable(ColumnParameter.Diameter(bore.Sections.Count), NarrowestOverEnd * end, end)],
            [ShapeTarget.Resonance(1, target)],
            cancellationToken: cancellationToken
        );
    }
}
