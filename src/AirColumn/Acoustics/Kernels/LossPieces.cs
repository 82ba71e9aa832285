using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Losses;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// The boundary-layer functions F and F/(1 − F) of <see cref="BesselRatio"/> at eight arguments at once, from polynomials
/// fitted to it when the program starts: relative error below 1e-13 for any s.
/// </summary>
/// <remarks>
/// Both are functions of one real number, s: radius over boundary-layer thickness. Below s = 2, F and F/(1 − F)·s² are smooth in
/// s²; above it the poles (zeros of J₀ at arg s = 45°) are as far away as s itself, so that pieces of an octave each need the
/// same degree; from 32 on the large-argument series in 1/s has converged for good (DLMF 10.17.5).
/// </remarks>
internal static class LossPieces
{
    private const double FirstEdge = 2;
    private const double LastEdge = 32;

    private static readonly Piece[] Pieces = Fit();

    /// <summary>F/(1 − F) at one argument and F at another.</summary>
    /// <param name="viscous">s of the first.</param>
    /// <param name="lowest">The least of them in any lane.</param>
    /// <param name="highest">The greatest.</param>
    /// <param name="rootPrandtl">The argument of the second over that of the first.</param>
    /// <param name="series">Receives F/(1 − F).</param>
    /// <param name="shunt">Receives F.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void At(
        Vector512<double> viscous,
        double lowest,
        double highest,
        double rootPrandtl,
        out ComplexLanes series,
        out ComplexLanes shunt
    )
    {
        series = Mixed(viscous, Index(lowest), Index(highest), false);
        shunt = Mixed(viscous * rootPrandtl, Index(lowest * rootPrandtl), Index(highest * rootPrandtl), true);
    }

    /// <summary>F/(1 − F) at one argument.</summary>
    public static Complex Series(double s) => Pieces[Index(s)].At(s, false);

    /// <summary>F at one argument.</summary>
    public static Complex Shunt(double s) => Pieces[Index(s)].At(s, true);

    /// <summary>As <see cref="At"/>, with how the first changes with the radius: D = s·d/ds.</summary>
    /// <param name="viscous">s of the first.</param>
    /// <param name="lowest">The least of them in any lane.</param>
    /// <param name="highest">The greatest.</param>
    /// <param name="rootPrandtl">The argument of the second over that of the first.</param>
    /// <param name="series">Receives ε = F/(1 − F).</param>
    /// <param name="slope">Receives Dε.</param>
    /// <param name="bend">Receives D²ε + Dε, which vanishes to first order in 1/s: without the cancellation.</param>
    /// <param name="shunt">Receives F.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void WithSlopes(
        Vector512<double> viscous,
        double lowest,
        double highest,
        double rootPrandtl,
        out ComplexLanes series,
        out ComplexLanes slope,
        out ComplexLanes bend,
        out ComplexLanes shunt
    )
    {
        var thermal = viscous * rootPrandtl;
        shunt = Mixed(thermal, Index(lowest * rootPrandtl), Index(highest * rootPrandtl), true);
        var (first, last) = (Index(lowest), Index(highest));
        Pieces[first].Slopes(viscous, out series, out slope, out bend);
        for (var i = first + 1; i <= last; i++)
        {
            var here = Vector512.GreaterThanOrEqual(viscous, Vector512.Create(Pieces[i].From));
            Pieces[i].Slopes(viscous, out var value, out var valueSlope, out var valueBend);
            series = ComplexLanes.Select(here, value, series);
            slope = ComplexLanes.Select(here, valueSlope, slope);
            bend = ComplexLanes.Select(here, valueBend, bend);
        }
    }

    // Lanes in different pieces: each piece for all, and the right one chosen.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static ComplexLanes Mixed(Vector512<double> s, int first, int last, bool isShunt)
    {
        var value = Pieces[first].At(s, isShunt);
        for (var i = first + 1; i <= last; i++)
        {
            var here = Vector512.GreaterThanOrEqual(s, Vector512.Create(Pieces[i].From));
            value = ComplexLanes.Select(here, Pieces[i].At(s, isShunt), value);
        }

        return value;
    }

    private static int Index(double s)
    {
        var i = Pieces.Length - 1;
        while (i > 0 && s < Pieces[i].From)
        {
            i--;
        }

        return i;
    }

    private static Piece[] Fit()
    {
        var pieces = new List<Piece> { new(0, FirstEdge) };
        for (var from = FirstEdge; from < LastEdge; from *= 2)
        {
            pieces.Add(new Piece(from, 2 * from));
        }

        pieces.Add(new Piece(LastEdge, double.PositiveInfinity));
        return [.. pieces];
    }

    private sealed class Piece
    {
        private const int Nodes = 22;

        private readonly double middle;
        private readonly double scale;
        private readonly double[] slopes;
        private readonly double[] bends;

        public Piece(double from, double to)
        {
            From = from;
            // In s² at the bottom, in 1/s above.
            var (low, high) = from == 0 ? (0, to * to) : (1 / to, 1 / from);
            middle = (low + high) / 2;
            scale = 2 / (high - low);
            Series = Coefficients(s => Power(s, true) * Loss(s).Value);
            Shunt = Coefficients(s => Power(s, false) * BesselRatio.At(s).F);
            if (to < double.PositiveInfinity)
            {
                slopes = Coefficients(s => Power(s, true) * Loss(s).Slope);
                bends = Coefficients(s => Power(s, true) * Loss(s).Bend);
            }
            else
            {
                // There Bessel's equation cancels; but the polynomial has few terms, and is differentiated: ε = x·P, x = 1/s,
                // D = −x·d/dx, D² + D = x²·d²/dx².
                var first = Derivative(Series);
                slopes = Sum(Scale(Series, -1), Scale(TimesX(first), -1));
                bends = TimesX(Sum(Scale(first, 2), TimesX(Derivative(first))));
            }
        }

        public double From { get; }

        /// <summary>Of a polynomial in the scaled variable, Re and Im in turn, the highest power first.</summary>
        public double[] Series { get; }

        public double[] Shunt { get; }

        public Vector512<double> Variable(Vector512<double> s) =>
            From == 0 ? s * s : Vector512<double>.One / s;

        public Vector512<double> Scaled(Vector512<double> x) =>
            (x - Vector512.Create(middle)) * Vector512.Create(scale);

        public Complex At(double s, bool isShunt)
        {
            var x = From == 0 ? s * s : 1 / s;
            var t = (x - middle) * scale;
            var c = isShunt ? Shunt : Series;
            var value = Vector128.Create(c[0], c[1]);
            var factor = Vector128.Create(t);
            for (var k = 2; k < c.Length; k += 2)
            {
                value = Vector128.MultiplyAddEstimate(value, factor, Vector128.Create(c[k], c[k + 1]));
            }

            value *=
                From > 0 ? x
                : isShunt ? 1
                : 1 / x;
            return new Complex(value[0], value[1]);
        }

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public ComplexLanes At(Vector512<double> s, bool isShunt)
        {
            var x = Variable(s);
            var t = Scaled(x);
            var c = isShunt ? Shunt : Series;
            var (re, im) = (Vector512<double>.Zero, Vector512<double>.Zero);
            for (var k = 0; k < c.Length; k += 2)
            {
                re = Vector512.FusedMultiplyAdd(re, t, Vector512.Create(c[k]));
                im = Vector512.FusedMultiplyAdd(im, t, Vector512.Create(c[k + 1]));
            }

            var value = new ComplexLanes(re, im);
            return From > 0 ? x * value
                : isShunt ? value
                : (Vector512<double>.One / x) * value;
        }

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void Slopes(
            Vector512<double> s,
            out ComplexLanes value,
            out ComplexLanes slope,
            out ComplexLanes bend
        )
        {
            var x = Variable(s);
            var t = Scaled(x);
            var factor = From > 0 ? x : Vector512<double>.One / x;
            value = factor * Horner(Series, t);
            slope = factor * Horner(slopes, t);
            bend = factor * Horner(bends, t);
        }

        private static ComplexLanes Horner(double[] c, Vector512<double> t)
        {
            var (re, im) = (Vector512.Create(c[0]), Vector512.Create(c[1]));
            for (var k = 2; k < c.Length; k += 2)
            {
                re = Vector512.FusedMultiplyAdd(re, t, Vector512.Create(c[k]));
                im = Vector512.FusedMultiplyAdd(im, t, Vector512.Create(c[k + 1]));
            }

            return new ComplexLanes(re, im);
        }

        // What makes a function fit for a polynomial: times s above, where all fall off as 1/s; times s² below, where ε grows so.
        private double Power(double s, bool isSeries) =>
            From > 0 ? s
            : isSeries ? s * s
            : 1;

        // ε and its derivatives by Bessel's equation: Dε = 2(1 + ε) − ½j·s²·ε².
        private static (Complex Value, Complex Slope, Complex Bend) Loss(double s)
        {
            var (f, oneMinusF) = BesselRatio.At(s);
            var loss = f / oneMinusF;
            var squared = new Complex(0, s * s);
            var d = 2 * (1 + loss) - squared / 2 * loss * loss;
            var dd = 2 * d - squared * loss * (loss + d);
            return (loss, d, dd + d);
        }

        // Of polynomials in t as they are kept; x = middle + t/scale.
        private double[] Derivative(double[] c)
        {
            var count = c.Length / 2;
            var result = new double[Math.Max(2, c.Length - 2)];
            for (var k = 0; k < count - 1; k++)
            {
                result[2 * k] = (count - 1 - k) * scale * c[2 * k];
                result[2 * k + 1] = (count - 1 - k) * scale * c[2 * k + 1];
            }

            return result;
        }

        private double[] TimesX(double[] c)
        {
            var result = new double[c.Length + 2];
            for (var k = 0; k < c.Length; k++)
            {
                result[k] += c[k] / scale;
                result[k + 2] += c[k] * middle;
            }

            return result;
        }

        private static double[] Scale(double[] c, double factor) =>
            Array.ConvertAll(c, value => factor * value);

        // The constants stand last.
        private static double[] Sum(double[] a, double[] b)
        {
            var result = new double[Math.Max(a.Length, b.Length)];
            for (var k = 1; k <= result.Length; k++)
            {
                result[^k] = (k <= a.Length ? a[^k] : 0) + (k <= b.Length ? b[^k] : 0);
            }

            return result;
        }

        private double[] Coefficients(Func<double, Complex> function)
        {
            var values = new Complex[Nodes];
            for (var i = 0; i < Nodes; i++)
            {
                var x = middle + Math.Cos(Math.PI * (i + 0.5) / Nodes) / scale;
                values[i] = function(From == 0 ? Math.Sqrt(x) : 1 / x);
            }

            var real = ChebyshevFit.Monomials([.. values.Select(z => z.Real)], 1e-16);
            var imaginary = ChebyshevFit.Monomials([.. values.Select(z => z.Imaginary)], 1e-16);
            var count = Math.Max(real.Length, imaginary.Length);
            var c = new double[2 * count];
            for (var k = 0; k < count; k++)
            {
                c[2 * (count - 1 - k)] = k < real.Length ? real[k] : 0;
                c[2 * (count - 1 - k) + 1] = k < imaginary.Length ? imaginary[k] : 0;
            }

            return c;
        }
    }
}
