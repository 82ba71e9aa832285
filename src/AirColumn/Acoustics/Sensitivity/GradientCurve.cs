using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Spectra;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// Z and its gradient over rising frequencies: one by one, or, where there are more of them than Chebyshev nodes in √f are
/// needed, through those.
/// </summary>
/// <remarks>Pressure, flow and q = U·δp − p·δU are smooth in √f whatever resonates; Z and δZ = q/U² are made of them after.</remarks>
internal sealed class GradientCurve
{
    private const int FewestNodes = 16;
    private const int MostNodes = 128;
    private const int More = 16; // nodes, where those were too few
    private const double MostRatio = 32; // of frequencies
    private const double MostTurns = 13; // radians of the waves, over which one series goes

    // Of q, which turns twice as fast as the waves; less where it comes from differences.
    private const double AllowedOfWaves = 1e-11;
    private const double AllowedOfDifferences = 1e-7;

    private readonly InputWave wave;
    private readonly StateSensitivity sensitivity;
    private readonly double tolerance;
    private readonly double allowed;
    private readonly int count;
    private readonly double[] hertz;
    private readonly int rows; // p, U and each q
    private readonly CancellationToken cancellationToken;
    private readonly ComplexVector[] q;

    /// <summary>Computes it.</summary>
    /// <param name="wave">The column's waves.</param>
    /// <param name="sensitivity">What its parameters do.</param>
    /// <param name="tolerance">How far the two-port of a segment may be off, relative.</param>
    /// <param name="parameters">The number of items.</param>
    /// <param name="isExact">Whether q comes from the waves themselves rather than from differences.</param>
    /// <param name="hertz">Rising.</param>
    /// <param name="progress">Is told the share of the frequencies that is done.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public GradientCurve(
        InputWave wave,
        StateSensitivity sensitivity,
        double tolerance,
        int parameters,
        bool isExact,
        ReadOnlySpan<double> hertz,
        IProgress<double>? progress,
        CancellationToken cancellationToken
    )
    {
        this.cancellationToken = cancellationToken;
        (this.wave, this.sensitivity, this.tolerance) = (wave, sensitivity, tolerance);
        this.hertz = hertz.ToArray();
        count = hertz.Length;
        allowed = isExact ? AllowedOfWaves : AllowedOfDifferences;
        q = new ComplexVector[parameters];
        rows = parameters + 2;
        (Real, Imaginary) = (new double[count], new double[count]);
        GradientReal = GC.AllocateUninitializedArray<double>(count * parameters);
        GradientImaginary = GC.AllocateUninitializedArray<double>(count * parameters);
        Run(progress);
    }

    public double[] Real { get; }

    public double[] Imaginary { get; }

    /// <summary>[parameter·frequencies + frequency].</summary>
    public double[] GradientReal { get; }

    public double[] GradientImaginary { get; }

    /// <summary>See <see cref="ImpedanceGradient.InterpolationError"/>.</summary>
    public double Error { get; private set; }

    private void Run(IProgress<double>? progress)
    {
        var i = 0;
        while (i < count)
        {
            var end = EndOfSmooth(i);
            var band = new Band(2 * Math.PI * hertz[i], 2 * Math.PI * hertz[end - 1], tolerance);
            var path = sensitivity.Prepare(band, cancellationToken);
            if (!wave.IsSmooth || end - i <= FewestNodes || !TryInterpolate(path, i, end))
            {
                for (var n = i; n < end; n += RealVectors.Count)
                {
                    Direct(path, n, Math.Min(RealVectors.Count, end - n));
                }
            }

            i = end;
            progress?.Report((double)i / count);
        }
    }

    // Up to a corner of a model, or as far as one series serves.
    private int EndOfSmooth(int from)
    {
        // At low frequency the flow into a closed end is small, and counts against its own size.
        var high = Math.Min(hertz[^1], MostRatio * hertz[from]);
        foreach (var corner in wave.Corners)
        {
            high = corner > hertz[from] ? Math.Min(high, corner) : high;
        }

        while (high > hertz[from] && new RootRange(hertz[from], high).Turns(wave.Delay) > MostTurns)
        {
            high = new RootRange(hertz[from], high).Middle;
        }

        var end = from + 1;
        while (end < count && hertz[end] <= high)
        {
            end++;
        }

        return end;
    }

    private void Direct(SensitivityPath path, int from, int some)
    {
        var state = path.At(FrequencyVector.OfHertz(hertz.AsSpan(from, some)), q, cancellationToken);
        var inverse = state.U.Inverse();
        Write(state.P * inverse, Real, Imaginary, from, some);
        inverse *= inverse;
        for (var n = 0; n < q.Length; n++)
        {
            Write(q[n] * inverse, GradientReal, GradientImaginary, n * count + from, some);
        }
    }

    private static void Write(in ComplexVector value, double[] real, double[] imaginary, int from, int some)
    {
        if (some == RealVectors.Count)
        {
            value.Re.CopyTo(real, from);
            value.Im.CopyTo(imaginary, from);
            return;
        }

        for (var i = 0; i < some; i++)
        {
            (real[from + i], imaginary[from + i]) = (value.Re[i], value.Im[i]);
        }
    }

    private bool TryInterpolate(SensitivityPath path, int from, int end)
    {
        var range = new RootRange(hertz[from], hertz[end - 1]);
        // q turns twice as fast as the waves.
        var turns = 2 * range.Turns(wave.Delay);
        var n = Math.Max(FewestNodes, Chebyshev.NodesFor(turns, allowed));
        for (; n <= MostNodes && n < end - from; n += More)
        {
            var values = new double[2 * rows * n];
            if (!TryValues(path, range, n, values))
            {
                return false;
            }

            var coefficients = new double[values.Length];
            Chebyshev.Transform(values, n, coefficients);
            var (worst, flowRest) = Rest(coefficients, n);
            if (worst <= allowed)
            {
                Evaluate(
                    new ChebyshevRows(range, coefficients, n, turns, 0.1 * allowed),
                    from,
                    end,
                    flowRest,
                    4 * worst
                );
                return true;
            }
        }

        return false;
    }

    // Of the last coefficients over the largest of each complex row; and of the flow itself.
    private (double Worst, double Flow) Rest(double[] coefficients, int n)
    {
        var (worst, flow) = (0.0, 0.0);
        for (var row = 0; row < rows; row++)
        {
            var (largest, tail) = (0.0, 0.0);
            for (var part = 2 * row; part < 2 * row + 2; part++)
            {
                for (var k = 0; k < n; k++)
                {
                    var size = Math.Abs(coefficients[part * n + k]);
                    largest = Math.Max(largest, size);
                    tail = k >= n - 4 ? Math.Max(tail, size) : tail;
                }
            }

            worst = largest == 0 ? worst : Math.Max(worst, tail / largest);
            flow = row == 1 ? 4 * tail : flow;
        }

        return (worst, flow);
    }

    // [(2·row + part)·n + node]; false where scales differ.
    private bool TryValues(SensitivityPath path, in RootRange range, int n, double[] values)
    {
        for (var from = 0; from < n; from += RealVectors.Count)
        {
            var state = path.At(range.NodesFrom(from, n), q, cancellationToken);
            if (state.Log != RealVector.Zero)
            {
                return false;
            }

            Store(state.P, 0);
            Store(state.U, 1);
            for (var row = 2; row < rows; row++)
            {
                Store(q[row - 2], row);
            }

            void Store(in ComplexVector value, int row)
            {
                value.Re.CopyTo(values, 2 * row * n + from);
                value.Im.CopyTo(values, (2 * row + 1) * n + from);
            }
        }

        return true;
    }

    private void Evaluate(ChebyshevRows series, int from, int end, double flowRest, double rest)
    {
        var i = from;
        while (i < end)
        {
            var part = series.PartOf(hertz[i]);
            var next = i + 1;
            while (next < end && series.PartOf(hertz[next]) == part)
            {
                next++;
            }

            EvaluatePart(series, part, i, next, flowRest, rest + series.LeftOut(part));
            i = next;
        }
    }

    private void EvaluatePart(ChebyshevRows series, int part, int from, int end, double flowRest, double rest)
    {
        var powers = series.Part(part, out var scale, out var shift).Span;
        Span<double> some = stackalloc double[RealVectors.Count];
        for (var i = from; i < end; i += some.Length)
        {
            var left = Math.Min(some.Length, end - i);
            some.Fill(hertz[i + left - 1]);
            hertz.AsSpan(i, left).CopyTo(some);
            var x = RealVectors.MultiplyAdd(
                Vector.SquareRoot(Vector.Create<double>(some)),
                Vector.Create(scale),
                Vector.Create(shift)
            );
            var inverse = At(powers, 1, x).Inverse();
            Error = Math.Max(Error, rest + 2 * flowRest * inverse.Largest());
            Write(At(powers, 0, x) * inverse, Real, Imaginary, i, left);
            inverse *= inverse;
            for (var row = 2; row < rows; row++)
            {
                Write(
                    At(powers, row, x) * inverse,
                    GradientReal,
                    GradientImaginary,
                    (row - 2) * count + i,
                    left
                );
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ComplexVector At(ReadOnlySpan<double> powers, int row, RealVector x)
    {
        const int N = ChebyshevRows.Terms;
        ref var c = ref Unsafe.Add(ref MemoryMarshal.GetReference(powers), 2 * row * N);
        var (re, im) = (Vector.Create(Unsafe.Add(ref c, N - 1)), Vector.Create(Unsafe.Add(ref c, 2 * N - 1)));
        for (var k = N - 2; k >= 0; k--)
        {
            re = RealVectors.MultiplyAdd(re, x, Vector.Create(Unsafe.Add(ref c, k)));
            im = RealVectors.MultiplyAdd(im, x, Vector.Create(Unsafe.Add(ref c, N + k)));
        }

        return new ComplexVector(re, im);
    }
}
