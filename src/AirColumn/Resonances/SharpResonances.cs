using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Resonances;

/// <summary>A complex resonance, Hz, the extremum of |Z| next to it, Hz, and |Z| there; not a number where it was not found.</summary>
internal readonly record struct SharpResonance(Complex Pole, double Place, double Magnitude)
{
    public static SharpResonance None => new(Complex.NaN, double.NaN, double.NaN);
}

/// <summary>
/// Resonances of one segment, four side by side: by Newton's method on the series of pressure and flow at the blown end themselves, at complex
/// frequencies for the resonance and at real ones for the extremum. Each starts from its mode and heeds no other: whether it is the one that
/// belongs there is for the caller to say.
/// </summary>
internal sealed class SharpResonances
{
    private const int MostRounds = 10;

    // Of the variable, which runs from −1 to 1: Newton's method doubles the digits with each step, so that the next one is rounding.
    private const double LastStep = 1e-8;

    private static readonly int Lanes = Vector256<double>.Count;

    private readonly double[] small; // Re and Im in turn: of what vanishes at the resonance
    private readonly double[] large; // of the other
    private readonly bool isOpen;

    public SharpResonances(WaveSegment segment, bool isOpen)
    {
        (Segment, this.isOpen) = (segment, isOpen);
        var (pressure, flow) = segment.Series();
        (small, large) = isOpen ? (pressure, flow) : (flow, pressure);
    }

    public WaveSegment Segment { get; }

    /// <summary>Looks for one near each mode, Hz.</summary>
    public void Near(ReadOnlySpan<double> modes, Span<SharpResonance> found)
    {
        for (var i = 0; i < modes.Length; i += Lanes)
        {
            var count = Math.Min(Lanes, modes.Length - i);
            Four(modes.Slice(i, count), found.Slice(i, count));
        }
    }

    private void Four(ReadOnlySpan<double> modes, Span<SharpResonance> found)
    {
        Span<double> hertz = stackalloc double[Lanes];
        hertz.Fill(modes[^1]);
        modes.CopyTo(hertz);
        var (scale, shift) = (Segment.Scale, Vector256.Create(Segment.Shift));
        var re = Vector256.Sqrt(Vector256.Create<double>(hertz)) * scale + shift;
        var im = Vector256<double>.Zero;
        var isFound = FindZero(ref re, ref im);
        var root = (re - shift) * (1 / scale);
        var above = im * (1 / scale);
        var (pole, halfWidth) = (root * root - above * above, 2.0 * root * above);
        var place = Vector256.Sqrt(Vector256.Max(pole, Vector256<double>.Zero)) * scale + shift;
        isFound &= FindExtremum(ref place, out var square);
        var ratio = Vector256.Sqrt(square);
        root = (place - shift) * (1 / scale);
        var places = root * root;
        for (var i = 0; i < found.Length; i++)
        {
            var isIn = isFound[i] != 0 && Segment.Holds(pole[i]) && Segment.Holds(places[i]);
            found[i] = isIn
                ? new(
                    new Complex(pole[i], halfWidth[i]),
                    places[i],
                    Segment.Impedance * (isOpen ? ratio[i] : 1 / ratio[i])
                )
                : SharpResonance.None;
        }
    }

    // A zero of the small one, from there; not 0 in the lanes in which it came to rest.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private Vector256<double> FindZero(ref Vector256<double> re, ref Vector256<double> im)
    {
        var last = Vector256.Create(LastStep * LastStep);
        var isLast = Vector256<double>.Zero;
        for (var round = 0; round < MostRounds; round++)
        {
            At(small, re, im, out var f, out var g, out var f1, out var g1);
            // (f + jg)/(f₁ + jg₁).
            var inverse = Vector256<double>.One / (f1 * f1 + g1 * g1);
            var stepRe = (f * f1 + g * g1) * inverse;
            var stepIm = (g * f1 - f * g1) * inverse;
            re -= stepRe;
            im -= stepIm;
            isLast = Vector256.LessThan(stepRe * stepRe + stepIm * stepIm, last);
            if (Vector256.All(isLast.AsInt64(), -1))
            {
                break;
            }
        }

        return Vector256.ConditionalSelect(isLast, Vector256<double>.One, Vector256<double>.Zero);
    }

    // Where |small/large| is least, by Newton's method on the derivative of its logarithm, and what its square is there.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private Vector256<double> FindExtremum(ref Vector256<double> t, out Vector256<double> square)
    {
        var last = Vector256.Create(LastStep);
        var isLast = Vector256<double>.Zero;
        square = isLast;
        for (var round = 0; round < MostRounds; round++)
        {
            Rates(small, t, out var s, out var first, out var second);
            Rates(large, t, out var l, out var largeFirst, out var largeSecond);
            first -= largeFirst;
            second -= largeSecond;
            var step = first / second;
            t -= step;
            // There, to second order in the step.
            square = s / l * (Vector256<double>.One - step * first);
            isLast =
                Vector256.LessThan(Vector256.Abs(step), last)
                & Vector256.GreaterThan(second, Vector256<double>.Zero);
            if (Vector256.All(isLast.AsInt64(), -1))
            {
                break;
            }
        }

        return Vector256.ConditionalSelect(isLast, Vector256<double>.One, Vector256<double>.Zero);
    }

    // A series and its derivative off the axis (Clenshaw's recurrence and its derivative).
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void At(
        double[] series,
        Vector256<double> re,
        Vector256<double> im,
        out Vector256<double> f,
        out Vector256<double> g,
        out Vector256<double> f1,
        out Vector256<double> g1
    )
    {
        ref var c = ref MemoryMarshal.GetArrayDataReference(series);
        var (x, y) = (re + re, im + im);
        var a = Vector256<double>.Zero; // a + jb the one, d + je its derivative
        var b = a;
        var d = a;
        var e = a;
        var aAfter = a;
        var bAfter = a;
        var dAfter = a;
        var eAfter = a;
        for (var k = series.Length / 2 - 1; k > 0; k--)
        {
            var dNext = Vector256.FusedMultiplyAdd(x, d, Vector256.FusedMultiplyAdd(-y, e, a + a - dAfter));
            var eNext = Vector256.FusedMultiplyAdd(x, e, Vector256.FusedMultiplyAdd(y, d, b + b - eAfter));
            var aNext = Vector256.FusedMultiplyAdd(
                x,
                a,
                Vector256.FusedMultiplyAdd(-y, b, Vector256.Create(Unsafe.Add(ref c, 2 * k)) - aAfter)
            );
            var bNext = Vector256.FusedMultiplyAdd(
                x,
                b,
                Vector256.FusedMultiplyAdd(y, a, Vector256.Create(Unsafe.Add(ref c, 2 * k + 1)) - bAfter)
            );
            aAfter = a;
            bAfter = b;
            dAfter = d;
            eAfter = e;
            a = aNext;
            b = bNext;
            d = dNext;
            e = eNext;
        }

        f = re * a - im * b + (Vector256.Create(c) - aAfter);
        g = re * b + im * a + (Vector256.Create(Unsafe.Add(ref c, 1)) - bAfter);
        f1 = re * d - im * e + (a - dAfter);
        g1 = re * e + im * d + (b - eAfter);
    }

    // On it: the squared modulus, and the first two derivatives of the logarithm of the modulus.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Rates(
        double[] series,
        Vector256<double> t,
        out Vector256<double> norm,
        out Vector256<double> first,
        out Vector256<double> second
    )
    {
        At(series, 0, t, out var f, out var f1, out var f2);
        At(series, 1, t, out var g, out var g1, out var g2);
        norm = f * f + g * g;
        var inverse = Vector256<double>.One / norm;
        // Of z'/z and of (z'/z)' = z''/z − (z'/z)² the real parts.
        first = (f * f1 + g * g1) * inverse;
        var turn = (f * g1 - g * f1) * inverse;
        second = (f * f2 + g * g2) * inverse - (first * first - turn * turn);
    }

    // One part of a series with two derivatives.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void At(
        double[] series,
        int part,
        Vector256<double> t,
        out Vector256<double> f,
        out Vector256<double> f1,
        out Vector256<double> f2
    )
    {
        ref var c = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(series), part);
        var twice = t + t;
        var a = Vector256<double>.Zero;
        var d = a;
        var e = a;
        var aAfter = a;
        var dAfter = a;
        var eAfter = a;
        for (var k = series.Length / 2 - 1; k > 0; k--)
        {
            var eNext = Vector256.FusedMultiplyAdd(twice, e, 4.0 * d - eAfter);
            var dNext = Vector256.FusedMultiplyAdd(twice, d, a + a - dAfter);
            var aNext = Vector256.FusedMultiplyAdd(
                twice,
                a,
                Vector256.Create(Unsafe.Add(ref c, 2 * k)) - aAfter
            );
            aAfter = a;
            dAfter = d;
            eAfter = e;
            a = aNext;
            d = dNext;
            e = eNext;
        }

        f = Vector256.FusedMultiplyAdd(t, a, Vector256.Create(c) - aAfter);
        f1 = Vector256.FusedMultiplyAdd(t, d, a - dAfter);
        f2 = Vector256.FusedMultiplyAdd(t, e, d + d - eAfter);
    }
}
