using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Spectra;

/// <summary>
/// Pressure and flow at the blown end over a range of frequencies in which both are smooth, as series: for a fixed wave at the far end
/// they have no poles, whatever resonates. The flow is in units of <see cref="Impedance"/>.
/// </summary>
internal sealed class SpectrumPiece
{
    private const int MostNodes = 192;
    private const int More = 16; // where those were too few
    private const int MostMore = 3; // times that many at once
    private const int Last = 4; // coefficients that tell what is left out
    private const double MostGrowth = 1e3; // of the state over a range
    private const double MostNoise = 1e-12; // of the state, below which coefficients that fall no more are rounding
    private const double Falling = 0.3; // from four coefficients to the next four, of a series that converges

    private readonly double off; // how far pressure or flow may be off, over the smallest size of both together

    private SpectrumPiece(ChebyshevRows rows, double impedance, double off, double leftOut) =>
        (Rows, Impedance, this.off, LeftOut) = (rows, impedance, off, leftOut);

    /// <summary>The last coefficients over the smallest size of the state, where they are above what was allowed; else 0.</summary>
    public double LeftOut { get; }

    /// <summary>Re p, Im p, Re U, Im U.</summary>
    public ChebyshevRows Rows { get; }

    /// <summary>ρc/S at the blown end, Pa·s/m³.</summary>
    public double Impedance { get; }

    /// <summary>Over which.</summary>
    public RootRange Range => Rows.Range;

    /// <summary>
    /// Fits a range, held against the smallest state in it: behind a row of open holes the state grows by orders across a range, and a
    /// series held to its largest value forgets the rest. Null where the range is too long for one series, or the state changes too much.
    /// </summary>
    public static SpectrumPiece? Fit(
        InputWave wave,
        in RootRange range,
        double tolerance,
        double allowed,
        CancellationToken cancellationToken
    )
    {
        var turns = range.Turns(wave.Delay);
        var n = Chebyshev.NodesFor(turns, allowed);
        if (n > MostNodes)
        {
            return null;
        }

        var path = wave.Prepare(new(2 * Math.PI * range.Low, 2 * Math.PI * range.High, tolerance));
        while (true)
        {
            var values = new double[4 * n];
            if (
                !TryValues(path, range, n, wave.Impedance, values, cancellationToken, out var least)
                || MostGrowth * least < 1
            )
            {
                return null;
            }

            var coefficients = new double[4 * n];
            Chebyshev.Transform(values, n, coefficients);
            var tail = Tail(coefficients, n, n);
            // Where the coefficients fall no more, more of them would hold the same rounding.
            var isEnough =
                tail <= allowed * least
                || (tail <= MostNoise * least && tail > Falling * Tail(coefficients, n, n - Last));
            if (isEnough || n + More > MostNodes)
            {
                var rows = new ChebyshevRows(range, coefficients, n, turns, 2 * allowed);
                var off = (Math.Max(4, Math.Sqrt(n)) * tail + 1e-16 * n) / least;
                return new SpectrumPiece(rows, wave.Impedance, off, isEnough ? 0 : tail / least);
            }

            // As many as the fall of the last coefficients asks for.
            var earlier = Math.Max(Last, n - 2 * Last);
            var fall = Math.Log(Tail(coefficients, n, earlier) / tail) / (n - earlier);
            var lacking = Math.Log(tail / (allowed * least)) / Math.Max(fall, 1e-3);
            n += Math.Min(More * Math.Clamp((int)Math.Ceiling(lacking / More), 1, MostMore), MostNodes - n);
        }
    }

    /// <summary>Z at rising frequencies of the range, Hz, and how far any may be off, relative.</summary>
    public double Impedances(
        ReadOnlySpan<double> hertz,
        Span<double> real,
        Span<double> imaginary,
        CancellationToken cancellationToken
    )
    {
        var (i, error) = (0, 0.0);
        while (i < hertz.Length)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var part = Rows.PartOf(hertz[i]);
            var end = i + Math.Max(1, RisingFrequencies.CountBelow(Rows.EndOf(part), hertz[i..]));
            var powers = Rows.Part(part, out var scale, out var shift).Span;
            Evaluate(powers, scale, shift, hertz[i..end], real[i..end], imaginary[i..end]);
            var magnification = Magnification(real[i..end], imaginary[i..end]);
            error = Math.Max(error, (off + 2 * Rows.LeftOut(part)) * magnification);
            i = end;
        }

        return error;
    }

    // With z = Z over the impedance and (p, U) of size 1, |p| = |z|/√(1 + |z|²) and |U| = 1/√(1 + |z|²).
    private double Magnification(ReadOnlySpan<double> real, ReadOnlySpan<double> imaginary)
    {
        ref var re = ref MemoryMarshal.GetReference(real);
        ref var im = ref MemoryMarshal.GetReference(imaginary);
        var (smallest, greatest) = (Vector.Create(double.PositiveInfinity), RealVector.Zero);
        var i = 0;
        for (; i <= real.Length - RealVectors.Count; i += RealVectors.Count)
        {
            var z = new ComplexVector(
                Vector.LoadUnsafe(ref re, (nuint)i),
                Vector.LoadUnsafe(ref im, (nuint)i)
            );
            smallest = Vector.Min(smallest, z.Norm);
            greatest = Vector.Max(greatest, z.Norm);
        }

        var (least, most) = (RealVectors.Smallest(smallest), RealVectors.Largest(greatest));
        for (; i < real.Length; i++)
        {
            var square = real[i] * real[i] + imaginary[i] * imaginary[i];
            least = Math.Min(least, square);
            most = Math.Max(most, square);
        }

        var unit = Impedance * Impedance;
        return Math.Max(Of(least / unit), Of(most / unit));

        static double Of(double square) => Math.Sqrt(1 + square) * (1 + 1 / Math.Sqrt(square));
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Evaluate(
        ReadOnlySpan<double> powers,
        double scale,
        double shift,
        ReadOnlySpan<double> hertz,
        Span<double> real,
        Span<double> imaginary
    )
    {
        ref var c = ref MemoryMarshal.GetReference(powers);
        ref var f = ref MemoryMarshal.GetReference(hertz);
        ref var re = ref MemoryMarshal.GetReference(real);
        ref var im = ref MemoryMarshal.GetReference(imaginary);
        var count = RealVectors.Count;
        var i = 0;
        for (; i + 2 * count <= hertz.Length; i += 2 * count)
        {
            // Two vectors: one alone would wait for its own sums.
            var x = Place(Vector.LoadUnsafe(ref f, (nuint)i), scale, shift);
            var y = Place(Vector.LoadUnsafe(ref f, (nuint)(i + count)), scale, shift);
            Two(ref c, x, y, out var z, out var next);
            z.Re.StoreUnsafe(ref re, (nuint)i);
            z.Im.StoreUnsafe(ref im, (nuint)i);
            next.Re.StoreUnsafe(ref re, (nuint)(i + count));
            next.Im.StoreUnsafe(ref im, (nuint)(i + count));
        }

        Span<double> some = stackalloc double[count];
        for (; i < hertz.Length; i += count)
        {
            var left = Math.Min(count, hertz.Length - i);
            some.Fill(hertz[i + left - 1]);
            hertz.Slice(i, left).CopyTo(some);
            var x = Place(Vector.Create<double>(some), scale, shift);
            Two(ref c, x, x, out var z, out _);
            for (var lane = 0; lane < left; lane++)
            {
                (real[i + lane], imaginary[i + lane]) = (z.Re[lane], z.Im[lane]);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static RealVector Place(RealVector hertz, double scale, double shift) =>
        RealVectors.MultiplyAdd(Vector.SquareRoot(hertz), Vector.Create(scale), Vector.Create(shift));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Two(ref double c, RealVector x, RealVector y, out ComplexVector z, out ComplexVector next)
    {
        const int N = ChebyshevRows.Terms;
        var a = Vector.Create(Unsafe.Add(ref c, N - 1));
        var b = Vector.Create(Unsafe.Add(ref c, 2 * N - 1));
        var d = Vector.Create(Unsafe.Add(ref c, 3 * N - 1));
        var e = Vector.Create(Unsafe.Add(ref c, 4 * N - 1));
        var (a2, b2, d2, e2) = (a, b, d, e);
        for (var k = N - 2; k >= 0; k--)
        {
            var p = Vector.Create(Unsafe.Add(ref c, k));
            var q = Vector.Create(Unsafe.Add(ref c, N + k));
            var r = Vector.Create(Unsafe.Add(ref c, 2 * N + k));
            var s = Vector.Create(Unsafe.Add(ref c, 3 * N + k));
            a = RealVectors.MultiplyAdd(a, x, p);
            b = RealVectors.MultiplyAdd(b, x, q);
            d = RealVectors.MultiplyAdd(d, x, r);
            e = RealVectors.MultiplyAdd(e, x, s);
            a2 = RealVectors.MultiplyAdd(a2, y, p);
            b2 = RealVectors.MultiplyAdd(b2, y, q);
            d2 = RealVectors.MultiplyAdd(d2, y, r);
            e2 = RealVectors.MultiplyAdd(e2, y, s);
        }

        z = Impedance * (new ComplexVector(a, b) / new ComplexVector(d, e));
        next = Impedance * (new ComplexVector(a2, b2) / new ComplexVector(d2, e2));
    }

    // The largest state is 1; false where they are not finite.
    private static bool TryValues(
        WavePath path,
        in RootRange range,
        int n,
        double impedance,
        double[] values,
        CancellationToken cancellationToken,
        out double least
    )
    {
        Span<FrequencyVector> frequencies = new FrequencyVector[WavePath.Block];
        Span<WaveState> states = new WaveState[WavePath.Block];
        var (smallest, greatest) = (Vector.Create(double.PositiveInfinity), RealVector.Zero);
        var step = RealVectors.Count;
        for (var i = 0; i < n; i += step * WavePath.Block)
        {
            var some = Math.Min(WavePath.Block, (n - i) / step);
            for (var v = 0; v < some; v++)
            {
                frequencies[v] = range.NodesFrom(i + v * step, n);
            }

            path.Carry(frequencies[..some], states[..some], cancellationToken);
            for (var v = 0; v < some; v++)
            {
                var (p, u) = (states[v].P, impedance * states[v].U);
                var at = i + v * step;
                p.Re.CopyTo(values, at);
                p.Im.CopyTo(values, n + at);
                u.Re.CopyTo(values, 2 * n + at);
                u.Im.CopyTo(values, 3 * n + at);
                var size = p.Norm + u.Norm;
                smallest = Vector.Min(smallest, size);
                greatest = Vector.Max(greatest, size);
            }
        }

        least = Math.Sqrt(RealVectors.Smallest(smallest));
        var largest = Math.Sqrt(RealVectors.Largest(greatest));
        if (!(double.IsFinite(largest) && least > 0))
        {
            return false;
        }

        foreach (ref var value in values.AsSpan())
        {
            value /= largest;
        }

        least /= largest;
        return true;
    }

    // The largest of some coefficients of all rows.
    private static double Tail(double[] coefficients, int n, int end)
    {
        var tail = 0.0;
        for (var row = 0; row < 4; row++)
        {
            for (var k = end - Last; k < end; k++)
            {
                tail = Math.Max(tail, Math.Abs(coefficients[row * n + k]));
            }
        }

        return tail;
    }
}
