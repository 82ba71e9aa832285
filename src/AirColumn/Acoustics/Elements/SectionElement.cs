using System.Numerics;
using AirColumn.Acoustics.Losses;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Elements;

/// <summary>
/// A smooth piece of bore. The plane-front equations dp/dx = −Z'(x)·U, dU/dx = −Y'(x)·p are solved in variables that
/// leave only what the walls do to be integrated.
/// </summary>
/// <remarks>
/// With ψ = a·p and χ = a'·p − jωρ·U/(πa), which is dψ/dx where there are no losses,
/// <code>
/// ψ' = −εv(a'/a)·ψ + (1 + εv)·χ
/// χ' = [a''/a − k²(1 + εt) − εv(a'/a)²]·ψ + εv(a'/a)·χ
/// </code>
/// where Z' = (jωρ/S)(1 + εv), Y' = (jωS/ρc²)(1 + εt), S = πa². The matrix is traceless, so every exponential of it
/// is unimodular and the two-port reciprocal to rounding. For a cylinder, and for a cone without losses, it is
/// constant and one exponential is exact. Else Magnus steps of sixth order on three Gauss points are taken
/// (source: blanes2000), their length controlled by the difference to the fourth-order step.
/// <para>
/// Where the apex of the taper is a small part of a wavelength away, the flow is a small difference of the two terms of χ.
/// Steps there pair ψ with v = jωρ·U/(πa) itself:
/// <code>
/// ψ' = (a'/a)·ψ − (1 + εv)·v,  v' = k²(1 + εt)·ψ − (a'/a)·v.
/// </code>
/// </para>
/// </remarks>
internal sealed class SectionElement(Section section, GasConstants gas, WallLosses losses, double tolerance)
    : Element
{
    private const double GaussOffset = 0.3872983346207417; // √15/10, of the step length
    private const double Rounding = 1e-15;
    private const double LargestGrowth = 4;

    public Section Section { get; } = section;

    public LossTerms LossesAt(double radius, double omega) => LossTerms.At(radius, omega, gas, losses);

    public override ScaledMatrix At(double omega)
    {
        var k = omega / gas.SpeedOfSound;
        return Section is CylinderSection
            ? TwoPort(
                (Section.LengthMetres * WaveGenerator(0, k)).Exponential(),
                0,
                Section.LengthMetres,
                k,
                false
            )
            : Integrate(k);
    }

    private Generator GeneratorAt(double x, double k, bool nearApex) =>
        nearApex ? FlowGenerator(x, k) : WaveGenerator(x, k);

    // The matrix of (ψ, v/k): dividing by k gives both the size of a pressure times a radius.
    private Generator FlowGenerator(double x, double k)
    {
        var wall = Section.WallAt(x);
        var terms = LossesAt(wall.Radius, k * gas.SpeedOfSound);
        return new Generator(wall.Slope / wall.Radius, -k * (1 + terms.Series), k * (1 + terms.Shunt));
    }

    // The matrix of (ψ, χ/k).
    private Generator WaveGenerator(double x, double k)
    {
        var wall = Section.WallAt(x);
        var terms = LossesAt(wall.Radius, k * gas.SpeedOfSound);
        var slope = wall.Slope / wall.Radius;
        return new Generator(
            -terms.Series * slope,
            k * (1 + terms.Series),
            (wall.Curvature / wall.Radius - terms.Series * slope * slope) / k - k * (1 + terms.Shunt)
        );
    }

    private ScaledMatrix Integrate(double k)
    {
        var total = new ScaledMatrix(TransferMatrix.Identity, 0);
        var length = Section.LengthMetres;
        var x = 0.0;
        // To begin with a wavelength holds several steps, or the commutators do not shrink.
        var h = Math.Min(length, 1.5 / k);
        while (x < length)
        {
            h = Math.Min(h, length - x);
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

            var end = length - x - h < Rounding * length ? length : x + h;
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
        // jωρ/π over k.
        var inertia = new Complex(0, gas.SpeedOfSound * gas.Density / Math.PI);
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
