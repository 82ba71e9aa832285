using System.Numerics;
using AirColumn.Acoustics.Spectra;
using AirColumn.Acoustics.Vectors;

namespace AirColumn;

/// <summary>
/// What vanishes at a resonance, the small one, and the other, the large one, as polynomials in u, −1 to 1 over one part of a series; u may
/// be complex.
/// </summary>
/// <param name="powers">[row·terms + power] of Re p, Im p, Re U, Im U.</param>
/// <param name="isOpen">Whether the pressure is the small one.</param>
internal readonly ref struct PartSeries(ReadOnlySpan<double> powers, bool isOpen)
{
    private const int Terms = ChebyshevRows.Terms;

    private readonly ReadOnlySpan<double> powers = powers;
    private readonly int small = isOpen ? 0 : 2 * Terms;
    private readonly int large = isOpen ? 2 * Terms : 0;

    /// <summary>1/λ at some places, λ the logarithmic derivative of large over small.</summary>
    public ComplexVector InverseRate(RealVector u)
    {
        At(small, u, out var s, out var s1);
        At(large, u, out var l, out var l1);
        return l * s / (l1 * s - l * s1);
    }

    /// <summary>The same at one place.</summary>
    public Complex InverseRate(double u)
    {
        var (s, s1) = At(small, u);
        var (l, l1) = At(large, u);
        return l * s / (l1 * s - l * s1);
    }

    /// <summary>|p/U|.</summary>
    public double Ratio(double u) => Complex.Abs(At(0, u).Value) / Complex.Abs(At(2 * Terms, u).Value);

    /// <summary>The second derivative of ln|small/large|.</summary>
    public double Bend(double u)
    {
        var (s, s1, s2) = ToCurvature(small, u);
        var (l, l1, l2) = ToCurvature(large, u);
        var (a, b) = (s1 / s, l1 / l);
        return (s2 / s - a * a - (l2 / l - b * b)).Real;
    }

    /// <summary>The small one and its derivative.</summary>
    public (Complex Value, Complex Slope) Small(Complex u)
    {
        // Horner's scheme by parts: it is most of what a resonance costs.
        var (x, y) = (u.Real, u.Imaginary);
        var (a, b) = (powers[small + Terms - 1], powers[small + 2 * Terms - 1]);
        var (a1, b1) = (0.0, 0.0);
        for (var k = Terms - 2; k >= 0; k--)
        {
            (a1, b1) = (a1 * x - b1 * y + a, a1 * y + b1 * x + b);
            (a, b) = (a * x - b * y + powers[small + k], a * y + b * x + powers[small + Terms + k]);
        }

        return (new Complex(a, b), new Complex(a1, b1));
    }

    private void At(int row, RealVector u, out ComplexVector value, out ComplexVector slope)
    {
        var (a, b) = (Vector.Create(powers[row + Terms - 1]), Vector.Create(powers[row + 2 * Terms - 1]));
        var (a1, b1) = (RealVector.Zero, RealVector.Zero);
        for (var k = Terms - 2; k >= 0; k--)
        {
            a1 = RealVectors.MultiplyAdd(a1, u, a);
            b1 = RealVectors.MultiplyAdd(b1, u, b);
            a = RealVectors.MultiplyAdd(a, u, Vector.Create(powers[row + k]));
            b = RealVectors.MultiplyAdd(b, u, Vector.Create(powers[row + Terms + k]));
        }

        (value, slope) = (new ComplexVector(a, b), new ComplexVector(a1, b1));
    }

    private (Complex Value, Complex Slope) At(int row, double u)
    {
        var (a, b) = (powers[row + Terms - 1], powers[row + 2 * Terms - 1]);
        var (a1, b1) = (0.0, 0.0);
        for (var k = Terms - 2; k >= 0; k--)
        {
            (a1, b1) = (a1 * u + a, b1 * u + b);
            (a, b) = (a * u + powers[row + k], b * u + powers[row + Terms + k]);
        }

        return (new Complex(a, b), new Complex(a1, b1));
    }

    private (Complex Value, Complex Slope, Complex Curvature) ToCurvature(int row, Complex u)
    {
        var (value, slope, half) = (
            new Complex(powers[row + Terms - 1], powers[row + 2 * Terms - 1]),
            Complex.Zero,
            Complex.Zero
        );
        for (var k = Terms - 2; k >= 0; k--)
        {
            half = half * u + slope;
            slope = slope * u + value;
            value = value * u + new Complex(powers[row + k], powers[row + Terms + k]);
        }

        return (value, slope, 2 * half);
    }
}
