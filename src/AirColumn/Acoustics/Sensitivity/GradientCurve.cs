using System.Runtime.CompilerServices;
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
    private const int FewestNodes = 32;
    private const int MostNodes = 128;

    // Of q, which turns twice as fast as the waves.
    private const double Allowed = 1e-11;

    private readonly Column column;
    private readonly ColumnSensitivity sensitivity;
    private readonly int count;
    private readonly double[] hertz;
    private readonly int rows; // p, U and each q
    private readonly ComplexLanes[] q;

    public GradientCurve(Column column, IReadOnlyList<ColumnParameter> parameters, ReadOnlySpan<double> hertz)
    {
        this.column = column;
        this.hertz = hertz.ToArray();
        count = hertz.Length;
        sensitivity = new ColumnSensitivity(column, parameters);
        q = new ComplexLanes[parameters.Count];
        rows = parameters.Count + 2;
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
            if (column.Waves.SmoothAround(hertz[i]) is var (low, high))
            {
                while (end < count && hertz[end] < high)
                {
                    end++;
                }

                isSmooth = end - i > FewestNodes && Interpolate(i, end, low, high);
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
        for (var n = FewestNodes; n <= MostNodes && n < end - from; n *= 2)
        {
            if (Values(n, low, high) is not { } values)
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
                    var c = ChebyshevFit.Coefficients(place);
                    c.CopyTo(place);
                    largest = Math.Max(largest, c.Max(Math.Abs));
                    tail = Math.Max(tail, c[^4..].Max(Math.Abs));
                }

                worst = largest == 0 ? worst : Math.Max(worst, tail / largest);
                flowRest = row == 1 ? 4 * tail : flowRest;
            }

            if (worst <= Allowed)
            {
                Evaluate(values, n, from, end, low, high, flowRest, 4 * worst);
                return true;
            }
        }

        return false;
    }

    // [(2·row + part)·n + node]; null where scales differ.
    private double[]? Values(int n, double low, double high)
    {
        var values = new double[2 * rows * n];
        var (a, b) = (Math.Sqrt(low), Math.Sqrt(high));
        Span<double> omega = stackalloc double[ComplexLanes.Count];
        for (var from = 0; from < n; from += ComplexLanes.Count)
        {
            for (var i = 0; i < omega.Length; i++)
            {
                var root = (a + b) / 2 + (b - a) / 2 * Math.Cos(Math.PI * (from + i + 0.5) / n);
                omega[i] = 2 * Math.PI * root * root;
            }

            var (p, u, log) = sensitivity.At(new FrequencyLanes(Vector512.Create<double>(omega)), q);
            if (log != 0)
            {
                return null;
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

        return values;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
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
        var (a, b) = (Math.Sqrt(low), Math.Sqrt(high));
        var (scale, shift) = (2 / (b - a), -(a + b) / (b - a));
        Span<Vector512<double>> powers = stackalloc Vector512<double>[MostNodes]; // Chebyshev polynomials
        Span<double> some = stackalloc double[ComplexLanes.Count];
        for (var i = from; i < end; i += ComplexLanes.Count)
        {
            var lanes = Math.Min(ComplexLanes.Count, end - i);
            some.Fill(hertz[i + lanes - 1]);
            hertz.AsSpan(i, lanes).CopyTo(some);
            var t = Vector512.Sqrt(Vector512.Create<double>(some)) * scale + Vector512.Create(shift);
            (powers[0], powers[1]) = (Vector512<double>.One, t);
            for (var k = 2; k < n; k++)
            {
                powers[k] = Vector512.FusedMultiplyAdd(t + t, powers[k - 1], -powers[k - 2]);
            }

            var p = Sum(coefficients, 0, n, powers);
            var u = Sum(coefficients, 1, n, powers);
            var inverse = u.Inverse();
            Write(p * inverse, Real, Imaginary, i, lanes);
            Error = Math.Max(Error, rest + 2 * flowRest * inverse.Largest());
            inverse *= inverse;
            for (var row = 2; row < rows; row++)
            {
                var derivative = Sum(coefficients, row, n, powers) * inverse;
                Write(derivative, GradientReal, GradientImaginary, (row - 2) * count + i, lanes);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static ComplexLanes Sum(double[] coefficients, int row, int n, Span<Vector512<double>> powers)
    {
        ref var c = ref coefficients[2 * row * n];
        // Two sums each, so that none waits for the last addition.
        var (re, im) = (Vector512<double>.Zero, Vector512<double>.Zero);
        var (re1, im1) = (re, im);
        for (var k = 0; k < n; k += 2)
        {
            re = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref c, k)), powers[k], re);
            im = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref c, n + k)), powers[k], im);
            re1 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref c, k + 1)), powers[k + 1], re1);
            im1 = Vector512.FusedMultiplyAdd(
                Vector512.Create(Unsafe.Add(ref c, n + k + 1)),
                powers[k + 1],
                im1
            );
        }

        return new ComplexLanes(re + re1, im + im1);
    }
}
