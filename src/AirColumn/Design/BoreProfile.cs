using UnitsNet;

namespace AirColumn;

/// <summary>
/// Prior knowledge of the diameters along a bore, before it is measured: a standard deviation for each diameter, and a correlation between
/// neighbours, since a wall is smooth. Immutable.
/// </summary>
/// <remarks>
/// Deviations of the diameters from the believed values are correlated as (1 + √3·d/ℓ)·exp(−√3·d/ℓ) over a distance d, the Matérn covariance
/// of order 3/2 (source: rasmussen2006, eq. 4.17). Such functions have a first derivative everywhere, but no second.
/// </remarks>
public sealed class BoreProfile
{
    private BoreProfile(
        ColumnParameter[] parameters,
        double[] positions,
        double standardDeviation,
        double correlationLength
    )
    {
        (Parameters, Positions) = (parameters, positions);
        (StandardDeviationMetres, CorrelationLengthMetres) = (standardDeviation, correlationLength);
    }

    /// <summary>The diameters, from the blown end.</summary>
    public IReadOnlyList<ColumnParameter> Parameters { get; }

    /// <summary>The place of each diameter, m from the blown end.</summary>
    public IReadOnlyList<double> Positions { get; }

    /// <summary>The standard deviation of each diameter.</summary>
    public Length StandardDeviation => Length.FromMeters(StandardDeviationMetres);

    /// <summary>The distance over which deviations are correlated.</summary>
    public Length CorrelationLength => Length.FromMeters(CorrelationLengthMetres);

    internal double StandardDeviationMetres { get; }

    internal double CorrelationLengthMetres { get; }

    /// <summary>A profile of all diameters of a bore of cones; the two diameters at a joint count as one.</summary>
    /// <param name="bore">Cones, without steps between them.</param>
    /// <param name="standardDeviation">The standard deviation of each diameter, above 0.</param>
    /// <param name="correlationLength">The distance over which deviations are correlated, above 0: a few times the diameter for a drawn pipe.</param>
    /// <returns>The profile.</returns>
    /// <exception cref="ArgumentException">A section is not a cone, or begins with a step.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A length is not above 0.</exception>
    public static BoreProfile OfJoints(Bore bore, Length standardDeviation, Length correlationLength)
    {
        ArgumentNullException.ThrowIfNull(bore);
        Require.Positive(standardDeviation.Meters, "m", nameof(standardDeviation));
        Require.Positive(correlationLength.Meters, "m", nameof(correlationLength));
        var (parameters, positions) = (new List<ColumnParameter>(), new List<double>());
        var x = 0.0;
        for (var i = 0; i < bore.Sections.Count; i++)
        {
            if (
                bore.Sections[i] is not ConeSection
                || (i > 0 && Bore.IsStep(bore.Sections[i - 1], bore.Sections[i]))
            )
            {
                throw new ArgumentException(
                    $"Section {i + 1} is {bore.Sections[i]}{(bore.Sections[i] is ConeSection ? " behind a step" : "")}; a profile of joints needs cones that fit each other. "
                        + "InCones divides a smooth bore into such cones.",
                    nameof(bore)
                );
            }

            parameters.Add(i == 0 ? ColumnParameter.InletDiameter(0) : ColumnParameter.JointDiameter(i - 1));
            positions.Add(x);
            x += bore.Sections[i].LengthMetres;
        }

        parameters.Add(ColumnParameter.OutletDiameter(bore.Sections.Count - 1));
        positions.Add(x);
        return new BoreProfile(
            [.. parameters],
            [.. positions],
            standardDeviation.Meters,
            correlationLength.Meters
        );
    }

    /// <summary>
    /// A bore divided into short cones, equally long within a section. Their joints can then be fitted. A cone should be at most a quarter as
    /// long as the shortest wave measured. Otherwise the shape of the wall between the joints is mistaken for something else.
    /// </summary>
    /// <param name="bore">The bore, without holes, branches and steps.</param>
    /// <param name="longest">The greatest length of a cone, above 0.</param>
    /// <returns>The bore of cones.</returns>
    /// <exception cref="ArgumentException">The bore has a hole, a branch or a step.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The length is not above 0.</exception>
    public static Bore InCones(Bore bore, Length longest)
    {
        ArgumentNullException.ThrowIfNull(bore);
        Require.Positive(longest.Meters, "m", nameof(longest));
        if (bore.Holes.Count + bore.Branches.Count + bore.Steps.Count > 0)
        {
            throw new ArgumentException(
                $"The bore has {bore.Holes.Count} holes, {bore.Branches.Count} branches and {bore.Steps.Count} steps; a profile of cones has none. "
                    + "Fit its dimensions one by one, as tolerances.",
                nameof(bore)
            );
        }

        return new Bore(
            bore.Sections.SelectMany(section =>
            {
                var count = (int)Math.Ceiling(section.LengthMetres / longest.Meters * (1 - 1e-12));
                var step = section.LengthMetres / count;
                return Enumerable
                    .Range(0, count)
                    .Select(i => new ConeSection(Diameter(i), Diameter(i + 1), Length.FromMeters(step)));
                Length Diameter(int i) =>
                    Length.FromMeters(
                        2 * section.WallAt(i == count ? section.LengthMetres : i * step).Radius
                    );
            }),
            bore.FarEnd
        );
    }

    /// <summary>[i, j]: the covariance of their differences, m².</summary>
    internal double[,] Covariance()
    {
        var n = Parameters.Count;
        var covariance = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var d = Math.Sqrt(3) * Math.Abs(Positions[i] - Positions[j]) / CorrelationLengthMetres;
                covariance[i, j] = StandardDeviationMetres * StandardDeviationMetres * (1 + d) * Math.Exp(-d);
            }
        }

        return covariance;
    }

    /// <summary>Number of diameters and their prior, in the invariant culture.</summary>
    /// <returns>Number of diameters and their prior, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"{Parameters.Count} diameters, standard deviation {StandardDeviation.Millimeters:0.###} mm, correlation length {CorrelationLength.Millimeters:0.###} mm"
        );
}
