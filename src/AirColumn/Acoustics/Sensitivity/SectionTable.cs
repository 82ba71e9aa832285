using AirColumn.Acoustics.Elements;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>The walls at the Gauss points of equal steps, and how each parameter moves them.</summary>
internal sealed class SectionTable
{
    public SectionTable(
        SectionElement element,
        Link<SectionElement>[] links,
        GasSlopes[] slopes,
        double from,
        double length,
        int steps
    )
    {
        Steps = steps;
        Nodes = new SectionNode[steps * GaussCollocation.Points];
        Slopes = new NodeSlopes[Nodes.Length * links.Length];
        var (gas, whole) = (element.Gas, element.Section.LengthMetres);
        var step = length / steps;
        for (var n = 0; n < Nodes.Length; n++)
        {
            var x =
                from
                + step * (n / GaussCollocation.Points + GaussCollocation.Places[n % GaussCollocation.Points]);
            var wall = element.Section.WallAt(x);
            var (radius, factor) = (wall.Radius, element.SeriesFactor(wall));
            var area = Math.PI * radius * radius;
            Nodes[n] = new SectionNode(
                radius,
                step * gas.Density * factor / area,
                step * area / (gas.Density * gas.SpeedOfSound * gas.SpeedOfSound)
            );
            for (var l = 0; l < links.Length; l++)
            {
                // The same share of the section.
                var (link, slope) = (links[l], slopes[l]);
                var (dRadius, dFactor) = (link.Weight * radius, link.Weight * factor);
                for (var i = 0; i < link.Parts.Length; i++)
                {
                    var (weight, part) = (link.Weights[i], link.Parts[i]!);
                    var there = part.Section.WallAt(x / whole * part.Section.LengthMetres);
                    dRadius += weight * there.Radius;
                    dFactor += weight * part.SeriesFactor(there);
                }

                var wider = dRadius / radius;
                Slopes[l * Nodes.Length + n] = new NodeSlopes(
                    slope.Length + slope.Density + dFactor / factor - 2 * wider,
                    wider + slope.Viscous,
                    slope.Length - slope.Density - 2 * slope.SpeedOfSound + 2 * wider,
                    wider + slope.Thermal
                );
            }
        }
    }

    public int Steps { get; }

    public SectionNode[] Nodes { get; }

    /// <summary>[link·nodes + node].</summary>
    public NodeSlopes[] Slopes { get; }
}

/// <summary>A Gauss point.</summary>
/// <param name="Radius">m.</param>
/// <param name="Series">Z' without losses over jω, times the step.</param>
/// <param name="Shunt">Y' likewise.</param>
internal readonly record struct SectionNode(double Radius, double Series, double Shunt);

/// <summary>Logarithmic derivatives at a Gauss point.</summary>
/// <param name="Series">Of the step times Z' without losses.</param>
/// <param name="Viscous">Of the viscous argument.</param>
/// <param name="Shunt">Of the step times Y' without losses.</param>
/// <param name="Thermal">Of the thermal argument.</param>
internal readonly record struct NodeSlopes(double Series, double Viscous, double Shunt, double Thermal);

/// <summary>What a parameter does to a section as a whole: logarithmic derivatives, but of γ the derivative.</summary>
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

    public static GasSlopes Of(Link<SectionElement> link) =>
        new(
            Relative(link, part => part.Section.LengthMetres),
            Relative(link, part => part.Gas.Density),
            Relative(link, part => part.Gas.SpeedOfSound),
            Relative(link, part => part.Gas.Viscosity),
            Relative(link, part => part.Gas.PrandtlNumber),
            link.Derivative(part => part.Gas.HeatCapacityRatio)
        );

    private static double Relative(Link<SectionElement> link, Func<SectionElement, double> value) =>
        link.Derivative(value) / value(link.Self);
}
