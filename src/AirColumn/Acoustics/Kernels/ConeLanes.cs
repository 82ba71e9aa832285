using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Bores;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// A cone with losses at eight frequencies at once, in few steps however short the wavelength is: by the method of
/// constant-coefficient perturbation (source: ixaru1997).
/// </summary>
/// <remarks>
/// With ζ = 1 + εv and φ = a·p/√ζ the equations of <see cref="SectionElement"/> become φ'' + Q·φ = 0,
/// <code>
/// Q = μk²·ζ·(1 + εt) + (a'/a)²·[½(D²ζ + Dζ)/ζ − ¾(Dζ/ζ)²],  D = a·d/da,
/// </code>
/// in which only what the walls do varies along the cone. Q is taken as a polynomial through five points (Lobatto's) of a step,
/// its mean solved exactly, the rest as first and second-order correction. D is taken of the fitted
/// polynomials.
/// </remarks>
internal readonly ref struct ConeLanes
{
    private const int Points = 5;

    // Lobatto points in 0 … 1.
    private static readonly double[] Places =
    [
        0,
        (1 - Math.Sqrt(3.0 / 7)) / 2,
        0.5,
        (1 + Math.Sqrt(3.0 / 7)) / 2,
        1,
    ];

    private static readonly double Inner = Math.Sqrt(3.0 / 7); // of the points in −1 … 1

    private readonly SectionElement element;
    private readonly Vector512<double> inertia; // kμ
    private readonly Vector512<double> waveSquared; // μk²
    private readonly Vector512<double> viscous; // s over radius
    private readonly double lowest;
    private readonly double highest;
    private readonly double rootPrandtl;
    private readonly double tolerance;

    public ConeLanes(SectionElement element, in FrequencyLanes frequencies, double tolerance)
    {
        this.element = element;
        this.tolerance = tolerance;
        var gas = element.Gas;
        var k = frequencies.Omega * (1 / gas.SpeedOfSound);
        inertia = element.Frame * k;
        waveSquared = k * inertia;
        var thickness = Math.Sqrt(gas.Density / gas.Viscosity);
        viscous = frequencies.Root * thickness;
        (lowest, highest) = (
            thickness * Math.Sqrt(frequencies.Lowest),
            thickness * Math.Sqrt(frequencies.Highest)
        );
        rootPrandtl = Math.Sqrt(gas.PrandtlNumber);
    }

    /// <summary>
    /// The least wavenumber, 1/m, for which the flow at either end keeps its digits: it is a difference that loses (a'/ka)² of them.
    /// </summary>
    public static double LowestK(Section section)
    {
        const double MostLost = 4;
        return Math.Abs(section.WallAt(0).Slope) / (MostLost * section.SmallestRadius);
    }

    /// <summary>Waves (p⁻, p⁺)·a at one place, m from the inlet, from those at a place further on; up to a factor.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public LaneMatrix Between(double from, double to)
    {
        var wall = element.Section.WallAt(from);
        var (start, slope) = (wall.Radius, wall.Slope);
        Span<ComplexLanes> q = stackalloc ComplexLanes[Points];
        var total = LaneMatrix.Identity;
        var steps = 1;
        var x = from;
        ComplexLanes zetaHere = default;
        ComplexLanes dHere = default;
        while (x < to)
        {
            var h = (to - x) / steps;
            if (h < 1e-9 * (to - from))
            {
                throw new InvalidOperationException("No step of this cone is short enough.");
            }

            var a0 = start + slope * (x - from);
            if (x == from)
            {
                q[0] = CoefficientAt(a0, slope, out zetaHere, out dHere);
            }

            for (var i = 1; i < Points - 1; i++)
            {
                q[i] = CoefficientAt(a0 + slope * h * Places[i], slope, out _, out _);
            }

            q[Points - 1] = CoefficientAt(a0 + slope * h, slope, out var zetaThere, out var dThere);
            var change = Math.Abs(slope) * h / (a0 + Math.Min(0, slope * h));
            if (!TryStep(q, h, change, tolerance * h / (to - from), out var solution, out var shorter))
            {
                steps *= shorter;
                continue;
            }

            var (here, there) = (
                new ConeEnd(slope / a0, dHere, zetaHere.Root()),
                new ConeEnd(slope / (a0 + slope * h), dThere, zetaThere.Root())
            );
            var waves = solution.ToWaves(h, inertia, here, there);
            steps--;
            if (steps == 0 && x == from)
            {
                return waves;
            }

            total = total * waves;
            x = steps == 0 ? to : x + h;
            // Where this step ends the next begins.
            (q[0], zetaHere, dHere) = (q[Points - 1], zetaThere, dThere);
        }

        return total;
    }

    // Q at a radius, and ζ and Dζ/ζ there.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private ComplexLanes CoefficientAt(
        double radius,
        double slope,
        out ComplexLanes zeta,
        out ComplexLanes relativeD
    )
    {
        var gas = element.Gas;
        var s = viscous * radius;
        ComplexLanes loss;
        ComplexLanes d;
        ComplexLanes turn; // (D² + D)ζ
        ComplexLanes shunt;
        switch (element.Losses)
        {
            case WallLosses.None:
                zeta = ComplexLanes.One;
                relativeD = ComplexLanes.Zero;
                return new ComplexLanes(waveSquared, Vector512<double>.Zero);
            case WallLosses.LargeTube:
                var first = Vector512.Create(2 * Math.Sqrt(0.5)) / s;
                loss = new ComplexLanes(first, -first);
                (d, turn) = (-loss, ComplexLanes.Zero);
                shunt = ((gas.HeatCapacityRatio - 1) / rootPrandtl) * loss;
                break;
            default:
                LossPieces.WithSlopes(
                    s,
                    lowest * radius,
                    highest * radius,
                    rootPrandtl,
                    out loss,
                    out d,
                    out turn,
                    out shunt
                );
                shunt = (gas.HeatCapacityRatio - 1) * shunt;
                break;
        }

        zeta = 1.0 + loss;
        var inverse = zeta.Inverse();
        relativeD = d * inverse;
        var g = slope / radius;
        var bend = 0.5 * (turn * inverse) - 0.75 * (relativeD * relativeD);
        return waveSquared * (zeta * (1.0 + shunt)) + (g * g) * bend;
    }

    // The two solutions at the end of a step; false where that is not accurate enough.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static bool TryStep(
        ReadOnlySpan<ComplexLanes> q,
        double h,
        double change,
        double allowed,
        out ConeSolution solution,
        out int shorter
    )
    {
        solution = default;
        shorter = 1;
        Span<ComplexLanes> c = stackalloc ComplexLanes[Points];
        Project(q, h, c);
        var z = c[0];
        var (linear, highest) = (c[1].Largest(), c[Points - 1].Largest());
        // In a wave shorter than the step a perturbation counts by its share of half a wave.
        var fast = Math.Max(1, Math.Sqrt(z.Largest()));
        // What the polynomial leaves out, and the third order.
        var cubed = linear / fast;
        var rest = 0.2 * highest * change / fast + 0.004 * cubed * cubed * cubed;
        allowed = Math.Max(allowed, 1e-16);
        if (rest > allowed)
        {
            // The rest falls with the seventh power of the step.
            shorter = Math.Clamp((int)Math.Ceiling(Math.Pow(rest / allowed, 1.0 / 6)), 2, 10);
            return false;
        }

        solution = new ConeSolution(c);
        return true;
    }

    // Legendre coefficients of the polynomial through the points, the mean first, times −h²: by Lobatto's rule, whose weights are
    // 1/10, 49/90, 32/45.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Project(ReadOnlySpan<ComplexLanes> q, double h, Span<ComplexLanes> c)
    {
        var scale = -h * h;
        var (ends, inner) = (q[0] + q[4], q[1] + q[3]);
        var (endsApart, innerApart) = (q[4] - q[0], q[3] - q[1]);
        c[0] = scale / 20 * ends + scale * 49 / 180 * inner + scale * 16 / 45 * q[2];
        c[1] = scale * 3 / 20 * endsApart + scale * 49 / 60 * Inner * innerApart;
        c[2] = scale / 4 * ends + scale * 7 / 36 * inner + scale * -8 / 9 * q[2];
        c[3] = scale * 7 / 20 * endsApart + scale * -49 / 60 * Inner * innerApart;
        c[4] = scale / 5 * ends + scale * -7 / 15 * inner + scale * 8 / 15 * q[2];
    }
}
