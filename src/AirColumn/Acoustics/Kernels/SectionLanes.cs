using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// <see cref="SectionElement"/> at eight frequencies at once: the same equations, steps and error control, up to a factor in each
/// lane, between the waves of either end.
/// </summary>
internal readonly struct SectionLanes
{
    private const double GaussOffset = 0.3872983346207417; // √15/10, of the step length
    private const double Rounding = 1e-15;
    private const double LargestGrowth = 4;

    private readonly SectionElement element;
    private readonly Section section;
    private readonly FrequencyLanes frequencies;
    private readonly Vector512<double> k;
    private readonly Vector512<double> inverseK;
    private readonly double lowestK;
    private readonly double highestK;
    private readonly double tolerance;

    public SectionLanes(SectionElement element, in FrequencyLanes frequencies, double tolerance)
    {
        this.element = element;
        this.frequencies = frequencies;
        this.tolerance = tolerance;
        section = element.Section;
        var gas = element.Gas;
        k = frequencies.Omega * (1 / gas.SpeedOfSound);
        inverseK = Vector512<double>.One / k;
        lowestK = frequencies.Lowest / gas.SpeedOfSound;
        highestK = frequencies.Highest / gas.SpeedOfSound;
    }

    /// <summary>Waves (p⁻, p⁺)·a at one place, m from the inlet, from those at a place further on.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public LaneMatrix Between(double from, double to)
    {
        if (section is CylinderSection or BendSection)
        {
            var wall = section.WallAt(0);
            var generator = (to - from) * WaveGenerator(wall, LossesAt(wall.Radius));
            return ToWaves(generator.Exponential(), wall, wall, false);
        }

        return section is ConeSection && lowestK > ConeLanes.LowestK(section)
            ? new ConeLanes(element, frequencies, tolerance).Between(from, to)
            : Integrate(from, to);
    }

    /// <summary>What the wall of a radius, m, adds to series impedance and shunt admittance, as <see cref="Losses.LossTerms"/>.</summary>
    public static (ComplexLanes Series, ComplexLanes Shunt) LossesAt(
        double radius,
        in GasConstants gas,
        WallLosses losses,
        in FrequencyLanes frequencies
    )
    {
        var rootPrandtl = Math.Sqrt(gas.PrandtlNumber);
        var unit = Math.Sqrt(gas.Density / gas.Viscosity);
        var s = frequencies.Root * unit * radius;
        var thickness = unit * radius;
        switch (losses)
        {
            case WallLosses.None:
                return (ComplexLanes.Zero, ComplexLanes.Zero);
            case WallLosses.LargeTube:
                // As LossTerms: 2/(√j·s).
                var first = Vector512.Create(2 * Math.Sqrt(0.5)) / s;
                var series = new ComplexLanes(first, -first);
                return (series, ((gas.HeatCapacityRatio - 1) / rootPrandtl) * series);
            default:
                LossPieces.At(
                    s,
                    thickness * Math.Sqrt(frequencies.Lowest),
                    thickness * Math.Sqrt(frequencies.Highest),
                    rootPrandtl,
                    out var viscousLoss,
                    out var thermalLoss
                );
                return (viscousLoss, (gas.HeatCapacityRatio - 1) * thermalLoss);
        }
    }

    private (ComplexLanes Series, ComplexLanes Shunt) LossesAt(double radius) =>
        LossesAt(radius, element.Gas, element.Losses, frequencies);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private LaneMatrix Integrate(double from, double to)
    {
        var length = to - from;
        var x = from;
        var total = LaneMatrix.Identity;
        var h = Math.Min(length, 1.5 / highestK);
        var start = section.WallAt(from);
        bool? frame = null;
        var result = LaneMatrix.Identity;
        while (x < to)
        {
            h = Math.Min(h, to - x);
            var nearApex = IsNearApex(x) || IsNearApex(x + h);
            var sixth = Magnus(x, h, nearApex, out var off);
            var offDiagonal = Vector512.Min(Vector512<double>.One, k * h);
            var error = off.SizeAgainst(offDiagonal) * ErrorRatio(x, h);
            var allowed = Math.Max(tolerance * h / length, Rounding * sixth.SizeAgainst(offDiagonal));
            var growth = error == 0 ? LargestGrowth : 0.9 * Math.Pow(allowed / error, 1.0 / 6);
            if (error > allowed)
            {
                h *= Math.Clamp(growth, 0.2, 0.9);
                continue;
            }

            var end = to - x - h < Rounding * length ? to : x + h;
            if (frame is { } before && before != nearApex)
            {
                // Another pair of variables from here on.
                var here = section.WallAt(x);
                result = result * ToWaves(total, start, here, before);
                (start, total) = (here, LaneMatrix.Identity);
            }

            frame = nearApex;
            total = sixth.Exponential() * total;
            x = end;
            h *= Math.Clamp(growth, 0.5, LargestGrowth);
        }

        return result * ToWaves(total, start, section.WallAt(to), frame ?? false);
    }

    private bool IsNearApex(double x)
    {
        var wall = section.WallAt(Math.Min(x, section.LengthMetres));
        return Math.Abs(wall.Slope) > 10 * lowestK * wall.Radius;
    }

    private double ErrorRatio(double x, double h)
    {
        var before = section.WallAt(x).Radius;
        var after = section.WallAt(x + h).Radius;
        var change = Math.Abs(after - before) / Math.Min(after, before);
        return Math.Min(1, Math.Max(highestK * highestK * h * h, change * change));
    }

    // As in SectionElement (blanes2000): the exponent of sixth order, and how far that of fourth order is from it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private GeneratorLanes Magnus(double x, double h, bool nearApex, out GeneratorLanes off)
    {
        var middle = x + h / 2;
        var a1 = GeneratorAt(middle - GaussOffset * h, nearApex);
        var a2 = GeneratorAt(middle, nearApex);
        var a3 = GeneratorAt(middle + GaussOffset * h, nearApex);
        var slope = h * Math.Sqrt(15) / 3;
        var bend = h * 10 / 3;
        var b1 = h * a2;
        var b2 = GeneratorLanes.Sum(slope, a3, -slope, a1);
        var b3 = GeneratorLanes.Sum(bend, a3, bend, a1, -2 * bend, a2);
        var c1 = GeneratorLanes.Commutator(b1, b2);
        var c2 = GeneratorLanes.Commutator(b1, GeneratorLanes.Sum(2, b3, 1, c1));
        var last = GeneratorLanes.Commutator(
            GeneratorLanes.Sum(-20, b1, -1, b3, 1, c1),
            GeneratorLanes.Sum(1, b2, -1.0 / 60, c2)
        );
        off = GeneratorLanes.Sum(1.0 / 240, last, 1.0 / 12, c1);
        return GeneratorLanes.Sum(1, b1, 1.0 / 12, b3, 1.0 / 240, last);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private GeneratorLanes GeneratorAt(double x, bool nearApex)
    {
        var wall = section.WallAt(x);
        var terms = LossesAt(wall.Radius);
        return nearApex ? FlowGenerator(wall, terms) : WaveGenerator(wall, terms);
    }

    private GeneratorLanes FlowGenerator(in Wall wall, in (ComplexLanes Series, ComplexLanes Shunt) terms) =>
        new(
            new ComplexLanes(Vector512.Create(wall.Slope / wall.Radius), Vector512<double>.Zero),
            -(k * (1.0 + SeriesTerm(wall, terms.Series))),
            (element.Frame * k) * (1.0 + terms.Shunt)
        );

    private GeneratorLanes WaveGenerator(in Wall wall, in (ComplexLanes Series, ComplexLanes Shunt) terms)
    {
        var series = SeriesTerm(wall, terms.Series);
        var slope = wall.Slope / wall.Radius;
        var turn = (wall.Curvature / wall.Radius) + ((-slope * slope) * series);
        return new GeneratorLanes(
            -slope * series,
            k * (1.0 + series),
            (inverseK * turn) - ((element.Frame * k) * (1.0 + terms.Shunt))
        );
    }

    private ComplexLanes SeriesTerm(in Wall wall, ComplexLanes loss)
    {
        var factor = element.SeriesFactor(wall);
        return ((factor - element.Frame) / element.Frame) + ((factor / element.Frame) * loss);
    }

    // Waves at x from those at the end, given the propagator of (ψ, χ/k) or (ψ, v/k) from x to the end, which is unimodular but
    // for the scale: a·p = ψ, a·Zr·U = j/μ·(χ/k − a'/(ak)·ψ) = −j/μ·v/k, with Zr = ρc/S.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private LaneMatrix ToWaves(in LaneMatrix propagator, in Wall here, in Wall there, bool nearApex)
    {
        var (a, b, c, d) = (propagator.D, -propagator.B, -propagator.C, propagator.A);
        var mu = element.Frame;
        if (!nearApex)
        {
            // From (ψ, χ/k) to (ψ, v/k), v/k = a'/(ak)·ψ − χ/k, on both sides.
            var g0 = inverseK * (here.Slope / here.Radius);
            var g1 = inverseK * (there.Slope / there.Radius);
            // (ψ, χ/k) at the end = (ψ, g1·ψ − v).
            var (upper, lower) = (a + g1 * b, c + g1 * d);
            // v here = g0·ψ − χ/k.
            (a, b, c, d) = (upper, -b, g0 * upper - lower, d - g0 * b);
        }

        // v/k to w = a·Zr·U = −j/μ·v/k: B is multiplied by 1/(−j/μ) = jμ, C by −j/μ.
        return new LaneMatrix(a, mu * b.TimesJ(), (-1 / mu) * c.TimesJ(), d).OfWaves();
    }
}
