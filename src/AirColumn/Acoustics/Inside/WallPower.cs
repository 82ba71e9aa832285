using System.Numerics;
using AirColumn.Acoustics.Elements;
using MathNet.Numerics.Integration;

namespace AirColumn.Acoustics.Inside;

/// <summary>
/// What friction and heat conduction at the wall take from the wave: ½∫(Re Z'·|U|² + Re Y'·|p|²)dx by Gauss quadrature over
/// the field itself, without use of the power that enters or leaves.
/// </summary>
internal static class WallPower
{
    private const int Order = 12;

    // Panels in which |p|² turns by at most two radians and the bore changes by at most a fifth: there twelve points leave
    // nothing but rounding.
    private const double LargestTurn = 1;
    private const double LargestChange = 0.2;

    private static readonly GaussLegendreRule Rule = new(-1, 1, Order);

    /// <summary>Viscous and thermal loss in element <paramref name="i"/>, W for a source of 1.</summary>
    public static (double Viscous, double Thermal) In(ColumnField field, SectionElement element, int i)
    {
        var (viscous, thermal) = (0.0, 0.0);
        var end = field.Joint(i + 1);
        for (var to = element.Section.LengthMetres; to > 0; )
        {
            var from = to - Panel(element, to, field.Omega);
            var (middle, half) = ((to + from) / 2, (to - from) / 2);
            for (var n = 0; n < Order; n++)
            {
                var x = middle + half * Rule.GetAbscissa(n);
                var (p, u) = field.PerSource(field.Before(end, element, x, to));
                var (series, shunt) = Dissipation(element, x, field.Omega);
                var weight = 0.5 * half * Rule.GetWeight(n);
                viscous += weight * series * (u.Real * u.Real + u.Imaginary * u.Imaginary);
                thermal += weight * shunt * (p.Real * p.Real + p.Imaginary * p.Imaginary);
            }

            end = field.Before(end, element, from, to);
            to = from;
        }

        return (viscous, thermal);
    }

    // Re Z' and Re Y'.
    private static (double Series, double Shunt) Dissipation(SectionElement element, double x, double omega)
    {
        var wall = element.Section.WallAt(x);
        var (series, shunt) = element.FactorsAt(wall, omega);
        var (gas, area) = (element.Gas, Math.PI * wall.Radius * wall.Radius);
        return (
            -omega * gas.Density / area * series.Imaginary,
            -omega * area / (gas.Density * gas.SpeedOfSound * gas.SpeedOfSound) * shunt.Imaginary
        );
    }

    private static double Panel(SectionElement element, double x, double omega)
    {
        var wall = element.Section.WallAt(x);
        var (series, shunt) = element.FactorsAt(wall, omega);
        var propagation =
            omega / element.Gas.SpeedOfSound * Math.Sqrt(Complex.Abs(series) * Complex.Abs(shunt));
        var panel = Math.Min(x, LargestTurn / propagation);
        while (
            Change(element, x, x - panel) > LargestChange || Change(element, x, x - panel / 2) > LargestChange
        )
        {
            panel /= 2;
        }

        return panel;
    }

    // Of the radius, or of the inertia where fronts are curved.
    private static double Change(SectionElement element, double x, double y)
    {
        var (here, there) = (element.Section.WallAt(x), element.Section.WallAt(y));
        return Math.Max(
            Relative(here.Radius, there.Radius),
            Relative(element.SeriesFactor(here), element.SeriesFactor(there))
        );

        static double Relative(double a, double b) => Math.Abs(a - b) / Math.Min(a, b);
    }
}
