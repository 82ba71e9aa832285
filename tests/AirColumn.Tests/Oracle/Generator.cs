using System.Numerics;

namespace AirColumn.Tests.Oracle;

/// <summary>
/// A traceless 2×2 matrix [[Diagonal, Upper], [Lower, −Diagonal]]: the generator of a unimodular one. Two-ports of
/// passive reciprocal bores are the exponentials of such, so reciprocity holds by construction.
/// </summary>
internal readonly record struct Generator(Complex Diagonal, Complex Upper, Complex Lower)
{
    // Beyond this the smaller exponential is below the last digit of the larger one.
    private const double ScaleFrom = 20;

    public static Generator operator +(Generator a, Generator b) =>
        new(a.Diagonal + b.Diagonal, a.Upper + b.Upper, a.Lower + b.Lower);

    public static Generator operator -(Generator a, Generator b) =>
        new(a.Diagonal - b.Diagonal, a.Upper - b.Upper, a.Lower - b.Lower);

    public static Generator operator *(double factor, Generator a) =>
        new(factor * a.Diagonal, factor * a.Upper, factor * a.Lower);

    /// <summary>a·b − b·a.</summary>
    public static Generator Commutator(Generator a, Generator b) =>
        new(
            a.Upper * b.Lower - b.Upper * a.Lower,
            2 * (a.Diagonal * b.Upper - b.Diagonal * a.Upper),
            2 * (a.Lower * b.Diagonal - b.Lower * a.Diagonal)
        );

    /// <summary>The largest entry, those off the diagonal divided by their expected size.</summary>
    public double SizeAgainst(double offDiagonal) =>
        Math.Max(Modulus(Diagonal), Math.Max(Modulus(Upper), Modulus(Lower)) / offDiagonal);

    /// <summary>The matrix exponential: cosh(s)·1 + sinh(s)/s·this, with s² = −det.</summary>
    public ScaledMatrix Exponential()
    {
        var square = Diagonal * Diagonal + Upper * Lower;
        var s = Complex.Sqrt(square);
        Complex cosh;
        Complex sinhOverS;
        var logScale = 0.0;
        if (Modulus(square) < 1e-2)
        {
            // Taylor series, where the quotient would lose digits.
            cosh =
                1
                + square
                    * (
                        0.5
                        + square
                            * (1.0 / 24 + square * (1.0 / 720 + square * (1.0 / 40320 + square / 3628800)))
                    );
            sinhOverS =
                1
                + square
                    * (
                        1.0 / 6
                        + square
                            * (
                                1.0 / 120
                                + square * (1.0 / 5040 + square * (1.0 / 362880 + square / 39916800))
                            )
                    );
        }
        else if (s.Real > ScaleFrom)
        {
            logScale = s.Real;
            cosh = Complex.FromPolarCoordinates(0.5, s.Imaginary);
            sinhOverS = cosh / s;
        }
        else
        {
            cosh = Complex.Cosh(s);
            sinhOverS = Complex.Sinh(s) / s;
        }

        return new ScaledMatrix(
            new TransferMatrix(
                cosh + sinhOverS * Diagonal,
                sinhOverS * Upper,
                sinhOverS * Lower,
                cosh - sinhOverS * Diagonal
            ),
            logScale
        );
    }

    private static double Modulus(Complex z) => Math.Abs(z.Real) + Math.Abs(z.Imaginary);
}

/// <summary>
/// A two-port as exp(<paramref name="LogScale"/>)·<paramref name="Matrix"/>, so that strong attenuation in a long
/// narrow bore cannot overflow.
/// </summary>
internal readonly record struct ScaledMatrix(TransferMatrix Matrix, double LogScale)
{
    public static ScaledMatrix operator *(ScaledMatrix left, ScaledMatrix right) =>
        new(left.Matrix * right.Matrix, left.LogScale + right.LogScale);
}
