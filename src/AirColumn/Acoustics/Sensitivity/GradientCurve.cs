using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// Z and its gradient over rising frequencies: eight at a time, or, where there are more of them than Chebyshev nodes in √f are
/// needed, through those.
/// </summary>
/// <remarks>Pressure, flow and q = U·δp − p·δU are smooth in √f whatever resonates; Z and δZ = q/U² are made of them after.</remarks>
internal sealed class GradientCurve
{
    private const int FewestNodes = 16;
    private const int MostNodes = 128;
    private const int More = 16; // nodes, where those were too few

    private const int ResonancesPerSeries = 4;
    private const int Block = 4; // vectors
    private const double BlockTurn = 1.6; // radians of q to either side of the middle
    private const int FewestOfBlock = 64; // frequencies, for which it is worth while to make them

    // Of q, which turns twice as fast as the waves; less where it comes from differences.
    private const double Allowed = 1e-11;
    private const double AllowedOfDifferences = 1e-7;

    private readonly Column column;
    private readonly StateSensitivity sensitivity;
    private readonly int count;
    private readonly double[] hertz;
    private readonly int rows; // p, U and each q
    private readonly ComplexLanes[] q;
    private readonly double[] series = new double[MostNodes];
    private readonly double[] shorter;
    private double[] values = []; // at the nodes of a segment, then its coefficients; used again for the next

    public GradientCurve(Column column, IReadOnlyList<ColumnParameter> parameters, ReadOnlySpan<double> hertz)
    {
        this.column = column;
        this.hertz = hertz.ToArray();
        count = hertz.Length;
        sensitivity = StateSensitivity.Of(column, parameters);
        q = new ComplexLanes[parameters.Count];
        rows = parameters.Count + 2;
        shorter = new double[2 * rows * ShortSeries.Terms];
        (Real, Imaginary) = (new double[count], new double[count]);
        GradientReal = GC.AllocateUninitializedArray<double>(count * parameters.Count);
        GradientImaginary = GC.AllocateUninitializedArray<double>(count * parameters.Count);
        Run();
    }

    public double[] Real { get; }

    public double[] Imaginary { get; }

    /// <summary>[parameter·frequencies + frequency].</summary>
    public double[] GradientReal { get; }

    public double[] GradientImaginary { get; }

    /// <summary>See <see cref="ImpedanceGradient.InterpolationError"/>.</summary>
    public double Error { get; private set; }

    private void Run()
    {
        var i = 0;
        while (i < count)
        {
            var end = i + 1;
            var isSmooth = false;
            if (column.Waves.Segments.SmoothAround(hertz[i], ResonancesPerSeries) is var (_, high))
            {
                while (end < count && hertz[end] < high)
                {
                    end++;
                }

                // No wider than what is asked for.
                isSmooth = end - i > FewestNodes && Interpolate(i, end, hertz[i], hertz[end - 1]);
            }

            for (; !isSmooth && i < end; i += ComplexLanes.Count)
            {
                Direct(i, Math.Min(ComplexLanes.Count, end - i));
            }

            i = end;
        }
    }

    private void Direct(int from, int some)
    {
        Span<double> omega = stackalloc double[ComplexLanes.Count];
        for (var i = 0; i < omega.Length; i++)
        {
            omega[i] = 2 * Math.PI * hertz[from + Math.Min(i, some - 1)];
        }

        var (p, u, _) = sensitivity.At(new FrequencyLanes(Vector512.Create<double>(omega)), q);
        var inverse = u.Inverse();
        Write(p * inverse, Real, Imaginary, from, some);
        inverse *= inverse;
        for (var n = 0; n < q.Length; n++)
        {
            Write(q[n] * inverse, GradientReal, GradientImaginary, n * count + from, some);
        }
    }

    private static void Write(in ComplexLanes value, double[] real, double[] imaginary, int from, int some)
    {
        if (some == ComplexLanes.Count)
        {
            Vector512.StoreUnsafe(value.Re, ref real[from]);
            Vector512.StoreUnsafe(value.Im, ref imaginary[from]);
            return;
        }

        for (var i = 0; i < some; i++)
        {
            (real[from + i], imaginary[from + i]) = (value.Re.GetElement(i), value.Im.GetElement(i));
        }
    }

    private bool Interpolate(int from, int end, double low, double high)
    {
        for (var n = Nodes(low, high); n <= MostNodes && n < end - from; n += More)
        {
            if (!FillValues(n, low, high))
            {
                return false;
            }

            var (worst, flowRest) = (0.0, 0.0);
            for (var row = 0; row < rows; row++)
            {
                var (largest, tail) = (0.0, 0.0);
                for (var part = 0; part < 2; part++)
                {
                    var place = values.AsSpan((2 * row + part) * n, n);
                    var c = series.AsSpan(0, n);
                    ChebyshevFit.Coefficients(place, c);
                    c.CopyTo(place);
                    largest = Math.Max(largest, Largest(c));
                    tail = Math.Max(tail, Largest(c[(n - 4)..]));
                }

                worst = largest == 0 ? worst : Math.Max(worst, tail / largest);
                flowRest = row == 1 ? 4 * tail : flowRest;
            }

            if (worst <= MostLeftOut)
            {
                Evaluate(values, n, from, end, low, high, flowRest, 4 * worst);
                return true;
            }
        }

        return false;
    }

    private double MostLeftOut => column.Modal is null ? Allowed : AllowedOfDifferences;

    // q turns twice as fast as the waves.
    private int Nodes(double low, double high) =>
        Math.Max(
            FewestNodes,
            WaveSegment.NodesFor(2 * WaveSegment.Turns(column.Waves, low, high), MostLeftOut)
        );

    private static double Largest(ReadOnlySpan<double> values)
    {
        var largest = 0.0;
        foreach (var value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        return largest;
    }

    // [(2·row + part)·n + node]; false where scales differ.
    private bool FillValues(int n, double low, double high)
    {
        if (values.Length < 2 * rows * n)
        {
            values = new double[2 * rows * n];
        }

        for (var from = 0; from < n; from += ComplexLanes.Count)
        {
            var (p, u, log) = sensitivity.At(FrequencyLanes.AtNodes(low, high, n, from), q);
            if (log != 0)
            {
                return false;
            }

            Store(p, 0);
            Store(u, 1);
            for (var row = 2; row < rows; row++)
            {
                Store(q[row - 2], row);
            }

            void Store(in ComplexLanes value, int row)
            {
                Vector512.StoreUnsafe(value.Re, ref values[2 * row * n + from]);
                Vector512.StoreUnsafe(value.Im, ref values[(2 * row + 1) * n + from]);
            }
        }

        return true;
    }

    // Where there are many frequencies, by shorter series over blocks in which q turns little.
    private void Evaluate(
        double[] coefficients,
        int n,
        int from,
        int end,
        double low,
        double high,
        double flowRest,
        double rest
    )
    {
        var (scale, shift) = WaveSegment.Variable(low, high);
        var blocks = (int)Math.Ceiling(2 * WaveSegment.Turns(column.Waves, low, high) / BlockTurn);
        if (n <= ShortSeries.Terms || end - from < FewestOfBlock * blocks)
        {
            EvaluatePart(coefficients, n, from, end, scale, shift, flowRest, rest);
            return;
        }

        var i = from;
        for (var b = 0; b < blocks; b++)
        {
            var (middle, edge) = (-1 + (2.0 * b + 1) / blocks, -1 + 2.0 * (b + 1) / blocks);
            var next = i;
            while (next < end && (b + 1 == blocks || Math.Sqrt(hertz[next]) * scale + shift < edge))
            {
                next++;
            }

            var leftOut = new ShortSeries(n, middle, 1.0 / blocks).Of(coefficients, 2 * rows, shorter);
            if (leftOut > MostLeftOut)
            {
                // As losses may have it at low frequencies, however little the waves turn.
                EvaluatePart(coefficients, n, i, next, scale, shift, flowRest, rest);
            }
            else
            {
                EvaluatePart(
                    shorter,
                    ShortSeries.Terms,
                    i,
                    next,
                    scale * blocks,
                    (shift - middle) * blocks,
                    flowRest,
                    rest + 4 * leftOut
                );
            }

            i = next;
        }
    }

    // Four vectors of frequencies at a time, so that a coefficient that is loaded serves all of them.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    [SkipLocalsInit]
    private void EvaluatePart(
        double[] coefficients,
        int n,
        int from,
        int end,
        double scale,
        double shift,
        double flowRest,
        double rest
    )
    {
        // Chebyshev polynomials, [k·Block + vector].
        Span<Vector512<double>> powers = stackalloc Vector512<double>[MostNodes * Block];
        Span<ComplexLanes> sums = stackalloc ComplexLanes[Block];
        Span<ComplexLanes> inverses = stackalloc ComplexLanes[Block];
        Span<double> some = stackalloc double[ComplexLanes.Count];
        const int Wide = Block * ComplexLanes.Count;
        for (var i = from; i < end; i += Wide)
        {
            for (var v = 0; v < Block; v++)
            {
                // Beyond the end the last one again.
                for (var lane = 0; lane < some.Length; lane++)
                {
                    some[lane] = hertz[Math.Min(end - 1, i + v * ComplexLanes.Count + lane)];
                }

                var t = Vector512.Sqrt(Vector512.Create<double>(some)) * scale + Vector512.Create(shift);
                (powers[v], powers[Block + v]) = (Vector512<double>.One, t);
                for (var k = 2; k < n; k++)
                {
                    powers[k * Block + v] = Vector512.FusedMultiplyAdd(
                        t + t,
                        powers[(k - 1) * Block + v],
                        -powers[(k - 2) * Block + v]
                    );
                }
            }

            Sum(coefficients, 1, n, powers, inverses);
            Sum(coefficients, 0, n, powers, sums);
            for (var v = 0; v < Block; v++)
            {
                inverses[v] = inverses[v].Inverse();
                sums[v] *= inverses[v];
                Error = Math.Max(Error, rest + 2 * flowRest * inverses[v].Largest());
                inverses[v] *= inverses[v];
            }

            Write(sums, Real, Imaginary, i, end - i);
            for (var row = 2; row < rows; row++)
            {
                Sum(coefficients, row, n, powers, sums);
                for (var v = 0; v < Block; v++)
                {
                    sums[v] *= inverses[v];
                }

                Write(sums, GradientReal, GradientImaginary, (row - 2) * count + i, end - i);
            }
        }
    }

    private static void Write(
        ReadOnlySpan<ComplexLanes> values,
        double[] real,
        double[] imaginary,
        int from,
        int room
    )
    {
        for (var v = 0; v < values.Length && v * ComplexLanes.Count < room; v++)
        {
            Write(
                values[v],
                real,
                imaginary,
                from + v * ComplexLanes.Count,
                Math.Min(ComplexLanes.Count, room - v * ComplexLanes.Count)
            );
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Sum(
        double[] coefficients,
        int row,
        int n,
        Span<Vector512<double>> powers,
        Span<ComplexLanes> sums
    )
    {
        ref var c = ref coefficients[2 * row * n];
        ref var power = ref MemoryMarshal.GetReference(powers);
        var (re0, im0) = (Vector512<double>.Zero, Vector512<double>.Zero);
        var (re1, im1, re2, im2, re3, im3) = (re0, re0, re0, re0, re0, re0);
        for (var k = 0; k < n; k++)
        {
            var real = Vector512.Create(Unsafe.Add(ref c, k));
            var imaginary = Vector512.Create(Unsafe.Add(ref c, n + k));
            var p0 = Unsafe.Add(ref power, k * Block);
            re0 = Vector512.FusedMultiplyAdd(real, p0, re0);
            im0 = Vector512.FusedMultiplyAdd(imaginary, p0, im0);
            var p1 = Unsafe.Add(ref power, k * Block + 1);
            re1 = Vector512.FusedMultiplyAdd(real, p1, re1);
            im1 = Vector512.FusedMultiplyAdd(imaginary, p1, im1);
            var p2 = Unsafe.Add(ref power, k * Block + 2);
            re2 = Vector512.FusedMultiplyAdd(real, p2, re2);
            im2 = Vector512.FusedMultiplyAdd(imaginary, p2, im2);
            var p3 = Unsafe.Add(ref power, k * Block + 3);
            re3 = Vector512.FusedMultiplyAdd(real, p3, re3);
            im3 = Vector512.FusedMultiplyAdd(imaginary, p3, im3);
        }

        sums[0] = new ComplexLanes(re0, im0);
        sums[1] = new ComplexLanes(re1, im1);
        sums[2] = new ComplexLanes(re2, im2);
        sums[3] = new ComplexLanes(re3, im3);
    }
}
