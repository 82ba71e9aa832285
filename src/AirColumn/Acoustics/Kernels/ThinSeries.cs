using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Losses;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// What thin boundary layers, s of 32 and more, do to a wave in a cone: series in w = 1/(√j·s), s of the viscous layer, made of those of
/// the loss functions (DLMF 10.17.5). They depend on the gas alone.
/// </summary>
/// <remarks>With ζ = 1 + εv and D = a·d/da, under which wⁿ becomes −n·wⁿ; see <see cref="ConeLanes"/>.</remarks>
internal sealed class ThinSeries
{
    /// <summary>The highest power.</summary>
    public const int Orders = 20;

    // What may be left out against 1.
    private const double Rounding = 1e-17;

    private const double From = 32;

    /// <summary>wⁿ/|w|ⁿ.</summary>
    public static readonly Complex[] Turns =
    [
        .. Enumerable
            .Range(0, Orders + 1)
            .Select(n => Complex.FromPolarCoordinates(1, -Math.PI / 4 * (n % 8))),
    ];

    private static ThinSeries? last;

    private readonly double rootPrandtl;
    private readonly double heatCapacityRatio;
    private readonly WallLosses losses;
    private readonly double[] ends; // [4n]: Re and Im of √ζ, then of Dζ/ζ, for powers of |w|
    private readonly double[] endSizes; // the larger modulus of the two

    private ThinSeries(in GasConstants gas, WallLosses losses)
    {
        (rootPrandtl, heatCapacityRatio) = (Math.Sqrt(gas.PrandtlNumber), gas.HeatCapacityRatio);
        this.losses = losses;
        var (zeta, slope, bend, shunt) = (One(), new double[Orders + 1], new double[Orders + 1], One());
        var (series, f) = (LargeArgument.Series(Orders), LargeArgument.Shunt(Orders));
        var kept =
            losses == WallLosses.None ? 0
            : losses == WallLosses.LargeTube ? 1
            : Orders;
        for (var n = 1; n <= kept; n++)
        {
            zeta[n] = series[n - 1];
            slope[n] = -n * zeta[n];
            bend[n] = (n * n - n) * zeta[n];
            shunt[n] = (heatCapacityRatio - 1) * f[n - 1] * Math.Pow(rootPrandtl, -n);
        }

        Wave = Product(zeta, shunt);
        var relative = Quotient(slope, zeta);
        var square = Product(relative, relative);
        Bend = Quotient(bend, zeta);
        for (var n = 0; n <= Orders; n++)
        {
            Bend[n] = 0.5 * Bend[n] - 0.75 * square[n];
        }

        var root = Root(zeta);
        ends = new double[4 * (Orders + 1)];
        endSizes = new double[Orders + 1];
        for (var n = 0; n <= Orders; n++)
        {
            var turn = Turns[n];
            (ends[4 * n], ends[4 * n + 1]) = (root[n] * turn.Real, root[n] * turn.Imaginary);
            (ends[4 * n + 2], ends[4 * n + 3]) = (relative[n] * turn.Real, relative[n] * turn.Imaginary);
            endSizes[n] = Math.Max(Math.Abs(root[n]), Math.Abs(relative[n]));
        }
    }

    /// <summary>Of ζ·(1 + εt).</summary>
    public double[] Wave { get; }

    /// <summary>Of ½(D²ζ + Dζ)/ζ − ¾(Dζ/ζ)².</summary>
    public double[] Bend { get; }

    /// <summary>√ζ and Dζ/ζ for eight s of the viscous layer, by as many terms as <see cref="EndTerms"/> says.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (ComplexLanes Root, ComplexLanes D) EndAt(Vector512<double> s, int terms)
    {
        var x = Vector512<double>.One / s;
        var zero = Vector512<double>.Zero;
        var (a, b, c, d) = (zero, zero, zero, zero);
        for (var n = terms; n >= 0; n--)
        {
            ref var k = ref ends[4 * n];
            a = Vector512.FusedMultiplyAdd(a, x, Vector512.Create(k));
            b = Vector512.FusedMultiplyAdd(b, x, Vector512.Create(Unsafe.Add(ref k, 1)));
            c = Vector512.FusedMultiplyAdd(c, x, Vector512.Create(Unsafe.Add(ref k, 2)));
            d = Vector512.FusedMultiplyAdd(d, x, Vector512.Create(Unsafe.Add(ref k, 3)));
        }

        return (new ComplexLanes(a, b), new ComplexLanes(c, d));
    }

    /// <summary>Dζ/ζ alone.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public ComplexLanes SlopeAt(Vector512<double> s, int terms)
    {
        var x = Vector512<double>.One / s;
        var (re, im) = (Vector512<double>.Zero, Vector512<double>.Zero);
        for (var n = terms; n >= 0; n--)
        {
            ref var k = ref ends[4 * n + 2];
            re = Vector512.FusedMultiplyAdd(re, x, Vector512.Create(k));
            im = Vector512.FusedMultiplyAdd(im, x, Vector512.Create(Unsafe.Add(ref k, 1)));
        }

        return new ComplexLanes(re, im);
    }

    /// <summary>The highest power that counts there, from the least s on.</summary>
    public int EndTerms(double lowest)
    {
        var n = Orders;
        for (var power = LastPower(lowest); n > 1 && power * endSizes[n] < Rounding; n--)
        {
            power *= lowest;
        }

        return n;
    }

    /// <summary>The highest power that counts in wave·<see cref="Wave"/> + bend·x⁴·<see cref="Bend"/>, all times square.</summary>
    public int Terms(double lowest, double square, double wave, double bend)
    {
        var n = Orders;
        for (var power = square * LastPower(lowest); n > 1; n--, power *= lowest)
        {
            var size = wave * Math.Abs(Wave[n]) + (n < 4 ? 0 : bend * Math.Abs(Bend[n - 4]));
            if (!(power * size < Rounding))
            {
                break;
            }
        }

        return n;
    }

    /// <summary>Those of a gas; columns mostly ask for one gas over and over.</summary>
    public static ThinSeries Of(in GasConstants gas, WallLosses losses)
    {
        var series = Volatile.Read(ref last);
        if (
            series is null
            || series.losses != losses
            || !series.heatCapacityRatio.Equals(gas.HeatCapacityRatio)
            || !series.rootPrandtl.Equals(Math.Sqrt(gas.PrandtlNumber))
        )
        {
            series = new ThinSeries(gas, losses);
            Volatile.Write(ref last, series);
        }

        return series;
    }

    /// <summary>The angular frequency, rad/s, from which on layers are thin enough, from s of the viscous one over √ω.</summary>
    public static double LowestOmega(double unit, in GasConstants gas)
    {
        var root = From / (unit * Math.Min(1, Math.Sqrt(gas.PrandtlNumber)));
        return root * root;
    }

    // The highest power of one over a number.
    private static double LastPower(double inverse)
    {
        var four = 1 / (inverse * inverse * inverse * inverse);
        var eight = four * four;
        return four * eight * eight;
    }

    private static double[] One()
    {
        var one = new double[Orders + 1];
        one[0] = 1;
        return one;
    }

    private static double[] Product(double[] a, double[] b)
    {
        var product = new double[Orders + 1];
        for (var n = 0; n <= Orders; n++)
        {
            for (var i = 0; i <= n; i++)
            {
                product[n] += a[i] * b[n - i];
            }
        }

        return product;
    }

    // By a series that begins with 1.
    private static double[] Quotient(double[] a, double[] b)
    {
        var quotient = new double[Orders + 1];
        for (var n = 0; n <= Orders; n++)
        {
            quotient[n] = a[n];
            for (var i = 0; i < n; i++)
            {
                quotient[n] -= quotient[i] * b[n - i];
            }
        }

        return quotient;
    }

    // Of a series that begins with 1.
    private static double[] Root(double[] a)
    {
        var root = One();
        for (var n = 1; n <= Orders; n++)
        {
            var rest = a[n];
            for (var i = 1; i < n; i++)
            {
                rest -= root[i] * root[n - i];
            }

            root[n] = rest / 2;
        }

        return root;
    }
}
