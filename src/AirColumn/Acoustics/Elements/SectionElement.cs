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
/// Where a tapering section is far shorter than a wavelength and its apex near, the flow is a small difference of the two
/// terms of χ. There ψ is paired with ω = jωρ·U/(πa) itself:
/// <code>
/// ψ' = (a'/a)·ψ − (1 + εv)·ω,  ω' = k²(1 + εt)·ψ − (a'/a)·ω.
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
        if (Section is CylinderSection)
        {
            return WaveFrame((Section.LengthMetres * WaveGenerator(0, k)).Exponential(), omega, k);
        }

        var isCompact = IsCompact(k);
        var propagator = Integrate(k, isCompact);
        return isCompact ? FlowFrame(propagator, omega, k) : WaveFrame(propagator, omega, k);
    }

    // The flow loses about 1/(k²·length·apex distance) of its digits in the wave frame.
    private bool IsCompact(double k)
    {
        var (inlet, outlet) = (Section.WallAt(0), Section.WallAt(Section.LengthMetres));
        var apex = Math.Min(inlet.Radius / Math.Abs(inlet.Slope), outlet.Radius / Math.Abs(outlet.Slope));
        var wavelengths = k * Section.LengthMetres;
        return wavelengths < 0.3 && wavelengths * k * apex < 1e-3;
    }

    private Generator GeneratorAt(double x, double k, bool isCompact) =>
        isCompact ? FlowGenerator(x, k) : WaveGenerator(x, k);

    // The matrix of (ψ, ω/k): dividing by k gives both the size of a pressure times a radius.
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

    private ScaledMatrix Integrate(double k, bool isCompact)
    {
        var total = new ScaledMatrix(TransferMatrix.Identity, 0);
        var length = Section.LengthMetres;
        var x = 0.0;
        // To begin with a wavelength holds several steps, or the commutators do not shrink.
        var h = Math.Min(length, 1.5 / k);
        // In a section short against the wavelength the transfer impedance and admittance are that small, and their error
        // counts against their own size.
        var offDiagonal = Math.Min(1, k * length);
        while (x < length)
        {
            h = Math.Min(h, length - x);
            var (fourth, sixth) = Magnus(x, h, k, isCompact);
            // The error of the fourth-order step times (kh)² or the change of radius squared, the factors by which
            // two more orders shrink it, stands for the error of the sixth.
            var error = (sixth - fourth).SizeAgainst(offDiagonal) * ErrorRatio(x, h, k);
            var allowed = Math.Max(tolerance * h / length, Rounding * sixth.SizeAgainst(offDiagonal));
            var growth = error == 0 ? LargestGrowth : 0.9 * Math.Pow(allowed / error, 1.0 / 6);
            if (error > allowed)
            {
                h *= Math.Clamp(growth, 0.2, 0.9);
                continue;
            }

            total = sixth.Exponential() * total;
            x = length - x - h < Rounding * length ? length : x + h;
            h *= Math.Clamp(growth, 0.5, LargestGrowth);
        }

        return total;
    }

    private double ErrorRatio(double x, double h, double k)
    {
        var before = Section.WallAt(x).Radius;
        var after = Section.WallAt(x + h).Radius;
        var change = Math.Abs(after - before) / Math.Min(after, before);
        return Math.Min(1, Math.Max(k * k * h * h, change * change));
    }

    // Fourth- and sixth-order Magnus exponents over [x, x + h] on three Gauss points (blanes2000).
    private (Generator Fourth, Generator Sixth) Magnus(double x, double h, double k, bool isCompact)
    {
        var middle = x + h / 2;
        var a1 = GeneratorAt(middle - GaussOffset * h, k, isCompact);
        var a2 = GeneratorAt(middle, k, isCompact);
        var a3 = GeneratorAt(middle + GaussOffset * h, k, isCompact);
        var b1 = h * a2;
        var b2 = h * Math.Sqrt(15) / 3 * (a3 - a1);
        var b3 = h * 10 / 3 * (a3 - 2 * a2 + a1);
        var average = b1 + 1.0 / 12 * b3;
        var c1 = Generator.Commutator(b1, b2);
        var c2 = -1.0 / 60 * Generator.Commutator(b1, 2 * b3 + c1);
        var sixth = average + 1.0 / 240 * Generator.Commutator(-20 * b1 - b3 + c1, b2 + c2);
        return (average - 1.0 / 12 * c1, sixth);
    }

    // (p, U) at the inlet from (p, U) at the outlet, given (ψ, χ/k) at the outlet from the inlet.
    private ScaledMatrix WaveFrame(ScaledMatrix propagator, double omega, double k)
    {
        var (inlet, outlet) = (Section.WallAt(0), Section.WallAt(Section.LengthMetres));
        var inertia = new Complex(0, omega * gas.Density / Math.PI);
        return Between(
            new TransferMatrix(1 / inlet.Radius, 0, inlet.Slope / inertia, -inlet.Radius * k / inertia),
            propagator,
            new TransferMatrix(outlet.Radius, 0, outlet.Slope / k, -inertia / (outlet.Radius * k))
        );
    }

    // The same, given (ψ, ω/k).
    private ScaledMatrix FlowFrame(ScaledMatrix propagator, double omega, double k)
    {
        var (inlet, outlet) = (Section.WallAt(0).Radius, Section.WallAt(Section.LengthMetres).Radius);
        var inertia = new Complex(0, omega * gas.Density / Math.PI);
        return Between(
            new TransferMatrix(1 / inlet, 0, 0, inlet * k / inertia),
            propagator,
            new TransferMatrix(outlet, 0, 0, inertia / (outlet * k))
        );
    }

    // The propagator runs from inlet to outlet, a two-port the other way: its inverse, it being unimodular.
    private static ScaledMatrix Between(
        TransferMatrix fromState,
        ScaledMatrix propagator,
        TransferMatrix toState
    )
    {
        var m = propagator.Matrix;
        return propagator with { Matrix = fromState * new TransferMatrix(m.D, -m.B, -m.C, m.A) * toState };
    }
}
