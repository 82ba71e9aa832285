using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Propagation;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>Logarithmic derivatives at a Gauss point.</summary>
/// <param name="Series">Of the step times Z' without losses.</param>
/// <param name="Viscous">Of the viscous argument.</param>
/// <param name="Shunt">Of the step times Y' without losses.</param>
/// <param name="Thermal">Of the thermal argument.</param>
internal readonly record struct NodeSlopes(double Series, double Viscous, double Shunt, double Thermal)
{
    /// <summary>What a parameter does at a point, at the same share of the segment.</summary>
    public static NodeSlopes Of(Link<BoreSegment> link, in GasSlopes slope, in CollocationNode node)
    {
        var self = link.Self;
        var wall = self.Section.WallAt(node.X);
        var (radius, factor) = (wall.Radius, self.SeriesFactor(wall));
        var (dRadius, dFactor) = (link.Weight * radius, link.Weight * factor);
        for (var i = 0; i < link.Parts.Length; i++)
        {
            var (weight, part) = (link.Weights[i], link.Parts[i]!);
            var there = part.Section.WallAt(node.X / self.Length * part.Length);
            dRadius += weight * there.Radius;
            dFactor += weight * part.SeriesFactor(there);
        }

        var wider = dRadius / radius;
        return new NodeSlopes(
            slope.Length + slope.Density + dFactor / factor - 2 * wider,
            wider + slope.Viscous,
            slope.Length - slope.Density - 2 * slope.SpeedOfSound + 2 * wider,
            wider + slope.Thermal
        );
    }
}

/// <summary>What a parameter does to a segment as a whole: logarithmic derivatives, but of γ the derivative.</summary>
internal readonly record struct GasSlopes(
    double Length,
    double Density,
    double SpeedOfSound,
    double Viscosity,
    double PrandtlNumber,
    double HeatCapacityRatio
)
{
    /// <summary>Of the viscous argument, the radius staying.</summary>
    public double Viscous => (Density - Viscosity) / 2;

    /// <summary>Of the thermal argument, likewise.</summary>
    public double Thermal => Viscous + PrandtlNumber / 2;

    /// <summary>At any point, where walls and length stay.</summary>
    public NodeSlopes Everywhere => new(Density, Viscous, -Density - 2 * SpeedOfSound, Thermal);

    public static GasSlopes Of(Link<BoreSegment> link) =>
        new(
            Relative(link, part => part.Length),
            Relative(link, part => part.Gas.Density),
            Relative(link, part => part.Gas.SpeedOfSound),
            Relative(link, part => part.Gas.Viscosity),
            Relative(link, part => part.Gas.PrandtlNumber),
            link.Derivative(part => part.Gas.HeatCapacityRatio)
        );

    private static double Relative(Link<BoreSegment> link, Func<BoreSegment, double> value) =>
        link.Derivative(value) / value(link.Self);
}
