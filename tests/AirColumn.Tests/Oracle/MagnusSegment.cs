using System.Numerics;
using AirColumn.Acoustics.Line;

namespace AirColumn.Tests.Oracle;

/// <summary>
/// A smooth piece of bore in one gas. The equations dp/dx = −Z'(x)·U, dU/dx = −Y'(x)·p are solved in variables that
/// leave only what the walls do to be integrated.
/// </summary>
/// <remarks>
/// With ψ = a·p and χ = a'·p − jωρμ·U/(πa), which is dψ/dx where there are no losses,
/// <code>
/// ψ' = −εv(a'/a)·ψ + (1 + εv)·χ
/// χ' = [a''/a − μk²(1 + εt) − εv(a'/a)²]·ψ + εv(a'/a)·χ
/// </code>
/// where Z' = (jωρ/S)·μ(1 + εv), Y' = (jωS/ρc²)(1 + εt), S = πa², and μ is a constant: what curved
/// fronts make of the inertia half way along, so that εv holds losses and the change of that alone. The matrix is traceless, so every
/// exponential of it is unimodular and the two-port reciprocal to rounding. For a cylinder, and for a cone without
/// losses, it is constant and one exponential is exact. Else Magnus steps of sixth order on three Gauss points are taken
/// (source: blanes2000), their length controlled by the difference to the fourth-order step.
/// <para>
/// Where the apex of the taper is a small part of a wavelength away, the flow is a small difference of the two terms of χ.
/// Steps there pair ψ with v = jωρμ·U/(πa) itself:
/// <code>
/// ψ' = (a'/a)·ψ − (1 + εv)·v,  v' = μk²(1 + εt)·ψ − (a'/a)·v.
/// </code>
/// </para>
/// </remarks>
internal sealed class MagnusSegment
{
    private const double GaussOffset = 0.3872983346207417; // √15/10, of the step length
    private const double Rounding = 1e-15;
    private const double LargestGrowth = 4;

    private readonly BoreSegment segment;
    private readonly double tolerance;
    private readonly double frame; // μ

    public MagnusSegment(BoreSegment segment, double tolerance)
    {
        (this.segment, this.tolerance) = (segment, tolerance);
        frame = segment.SeriesFactor(Section.WallAt(segment.Length / 2));
    }

    private Section Section => segment.Section;

    private GasConstants Gas => segment.Gas;

    /// <summary>The two-port at ω, rad/s.</summary>
    public ScaledMatrix At(double omega) => Between(0, segment.Length, omega);

    /// <summary>The two-port from one place to another, m from the inlet, at ω.</summary>
    public ScaledMatrix Between(double from, double to, double omega)
    {
        var k = omega / Gas.SpeedOfSound;
        if (segment.IsStraight)
        {
            var radius = Section.WallAt(0).Radius;
            var generator = WaveGenerator(0, k, TermsAt(radius, k));
            return TwoPort(((to - from) * generator).Exponential(), from, to, k, false);
        }

        return Integrate(from, to, k);
    }

    private LossTerms TermsAt(double radius, double k) =>
        LossTerms.At(radius, k * Gas.SpeedOfSound, Gas, segment.Medium.Losses);

    private Generator GeneratorAt(double x, double k, bool nearApex)
    {
        var terms = TermsAt(Section.WallAt(x).Radius, k);
        return nearApex ? FlowGenerator(x, k, terms) : WaveGenerator(x, k, terms);
    }

    // The matrix of (ψ, v/k): dividing by k gives both the size of a pressure times a radius.
    private Generator FlowGenerator(double x, double k, in LossTerms terms)
    {
        var wall = Section.WallAt(x);
        return new Generator(
            wall.Slope / wall.Radius,
            -k * (1 + SeriesTerm(terms, wall)),
            frame * k * (1 + terms.Shunt)
        );
    }

    // The matrix of (ψ, χ/k).
    private Generator WaveGenerator(double x, double k, in LossTerms terms)
    {
        var wall = Section.WallAt(x);
        var series = SeriesTerm(terms, wall);
        var slope = wall.Slope / wall.Radius;
        return new Generator(
            -series * slope,
            k * (1 + series),
            (wall.Curvature / wall.Radius - series * slope * slope) / k - frame * k * (1 + terms.Shunt)
        );
    }

    // εv, without cancellation where the slope is that of the frame.
    private Complex SeriesTerm(in LossTerms terms, in Wall wall)
    {
        var factor = segment.SeriesFactor(wall);
        return (factor - frame + factor * terms.Series) / frame;
    }

    private ScaledMatrix Integrate(double from, double to, double k)
    {
        var total = new ScaledMatrix(TransferMatrix.Identity, 0);
        var length = to - from;
        var x = from;
        // To begin with a wavelength holds several steps, or the commutators do not shrink.
        var h = Math.Min(length, 1.5 / k);
        while (x < to)
        {
            h = Math.Min(h, to - x);
            var nearApex = IsNearApex(x, k) || IsNearApex(x + h, k);
            var (fourth, sixth) = Magnus(x, h, k, nearApex);
            // In a step short against the wavelength the entries off the diagonal are that small, and their error counts
            // against their own size. The error of the fourth-order step times (kh)² or the change of radius squared,
            // the factors by which two more orders shrink it, stands for the error of the sixth.
            var offDiagonal = Math.Min(1, k * h);
            var error = (sixth - fourth).SizeAgainst(offDiagonal) * ErrorRatio(x, h, k);
            var allowed = Math.Max(tolerance * h / length, Rounding * sixth.SizeAgainst(offDiagonal));
            var growth = error == 0 ? LargestGrowth : 0.9 * Math.Pow(allowed / error, 1.0 / 6);
            if (error > allowed)
            {
                h *= Math.Clamp(growth, 0.2, 0.9);
                continue;
            }

            var end = to - x - h < Rounding * length ? to : x + h;
            total *= TwoPort(sixth.Exponential(), x, end, k, nearApex);
            x = end;
            h *= Math.Clamp(growth, 0.5, LargestGrowth);
        }

        return total;
    }

    // In the wave frame the flow loses about 1/(k·apex distance)² of its digits.
    private bool IsNearApex(double x, double k)
    {
        var wall = Section.WallAt(Math.Min(x, Section.LengthMetres));
        return Math.Abs(wall.Slope) > 10 * k * wall.Radius;
    }

    private double ErrorRatio(double x, double h, double k)
    {
        var before = Section.WallAt(x).Radius;
        var after = Section.WallAt(x + h).Radius;
        var change = Math.Abs(after - before) / Math.Min(after, before);
        return Math.Min(1, Math.Max(k * k * h * h, change * change));
    }

    // Fourth- and sixth-order Magnus exponents over [x, x + h] on three Gauss points (blanes2000).
    private (Generator Fourth, Generator Sixth) Magnus(double x, double h, double k, bool nearApex)
    {
        var middle = x + h / 2;
        var a1 = GeneratorAt(middle - GaussOffset * h, k, nearApex);
        var a2 = GeneratorAt(middle, k, nearApex);
        var a3 = GeneratorAt(middle + GaussOffset * h, k, nearApex);
        var b1 = h * a2;
        var b2 = h * Math.Sqrt(15) / 3 * (a3 - a1);
        var b3 = h * 10 / 3 * (a3 - 2 * a2 + a1);
        var average = b1 + 1.0 / 12 * b3;
        var c1 = Generator.Commutator(b1, b2);
        var c2 = -1.0 / 60 * Generator.Commutator(b1, 2 * b3 + c1);
        var sixth = average + 1.0 / 240 * Generator.Commutator(-20 * b1 - b3 + c1, b2 + c2);
        return (average - 1.0 / 12 * c1, sixth);
    }

    // (p, U) at x from (p, U) at end, given the state at end from that at x: its inverse, it being unimodular, between
    // the changes of variables.
    private ScaledMatrix TwoPort(ScaledMatrix propagator, double x, double end, double k, bool nearApex)
    {
        var (here, there) = (Section.WallAt(x), Section.WallAt(end));
        var m = propagator.Matrix;
        var inverse = new TransferMatrix(m.D, -m.B, -m.C, m.A);
        // jωρμ/π over k.
        var inertia = new Complex(0, frame * Gas.SpeedOfSound * Gas.Density / Math.PI);
        var matrix = nearApex
            ? new TransferMatrix(1 / here.Radius, 0, 0, here.Radius / inertia)
                * inverse
                * new TransferMatrix(there.Radius, 0, 0, inertia / there.Radius)
            : new TransferMatrix(1 / here.Radius, 0, here.Slope / (k * inertia), -here.Radius / inertia)
                * inverse
                * new TransferMatrix(there.Radius, 0, there.Slope / k, -inertia / there.Radius);
        return propagator with { Matrix = matrix };
    }
}
