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
/// </remarks>
internal sealed class SectionElement(Section section, GasConstants gas, WallLosses losses, double tolerance)
    : Element
{
    private const double GaussOffset = 0.3872983346207417; // √15/10, of the step length

    public Section Section { get; } = section;

    public LossTerms LossesAt(double radius, double omega) => LossTerms.At(radius, omega, gas, losses);

    public override ScaledMatrix At(double omega)
    {
        var k = omega / gas.SpeedOfSound;
        var propagator =
            Section is CylinderSection ? Step(GeneratorAt(0, k), Section.LengthMetres) : Integrate(k);
        return ToPressureAndFlow(propagator, omega, k);
    }

    private static ScaledMatrix Step(Generator generator, double length) =>
        (length * generator).Exponential();

    // The matrix of (ψ, χ/k): dividing χ by k gives both the size of a pressure times a radius.
    private Generator GeneratorAt(double x, double k)
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
        // One step to begin with; a wavelength holds several, or the commutators do not shrink.
        var h = Math.Min(length, 1.5 / k);
        while (x < length)
        {
            h = Math.Min(h, length - x);
            var (fourth, sixth) = Magnus(x, h, k);
            // The error of the fourth-order step times (kh)² and the change of radius squared, the factors by which
            // one more order shrinks it, stands for the error of the sixth.
            var error = (sixth - fourth).Size * ErrorRatio(x, h, k);
            var allowed = tolerance * h / length;
            if (error > allowed && h > 1e-6 * length)
            {
                h *= Math.Clamp(0.9 * Math.Pow(allowed / error, 1.0 / 6), 0.2, 0.9);
                continue;
            }

            total = sixth.Exponential() * total;
            x = length - x - h < 1e-12 * length ? length : x + h;
            h *= error == 0 ? 4 : Math.Clamp(0.9 * Math.Pow(allowed / error, 1.0 / 6), 0.5, 4);
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

    // Fourth- and sixth-order Magnus exponents over [x, x + h] (blanes2000, eqs. 3.7 and 3.10).
    private (Generator Fourth, Generator Sixth) Magnus(double x, double h, double k)
    {
        var middle = x + h / 2;
        var a1 = GeneratorAt(middle - GaussOffset * h, k);
        var a2 = GeneratorAt(middle, k);
        var a3 = GeneratorAt(middle + GaussOffset * h, k);
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
    private ScaledMatrix ToPressureAndFlow(ScaledMatrix propagator, double omega, double k)
    {
        var inlet = Section.WallAt(0);
        var outlet = Section.WallAt(Section.LengthMetres);
        var inertia = new Complex(0, omega * gas.Density / Math.PI);
        var m = propagator.Matrix;
        var backward = new TransferMatrix(m.D, -m.B, -m.C, m.A); // the inverse: m is unimodular
        var fromState = new TransferMatrix(
            1 / inlet.Radius,
            0,
            inlet.Slope / inertia,
            -inlet.Radius * k / inertia
        );
        var toState = new TransferMatrix(outlet.Radius, 0, outlet.Slope / k, -inertia / (outlet.Radius * k));
        return propagator with { Matrix = fromState * backward * toState };
    }
}
