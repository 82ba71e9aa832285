using System.Numerics;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Losses;

/// <summary>
/// The loss terms at one angular frequency for any radius of a section, from a few evaluations of the Bessel ratios.
/// </summary>
/// <remarks>
/// Both terms are smooth in the inverse of the radius. Their large-argument series (DLMF 10.17.5) is taken out to tenth
/// order, which leaves so little where the boundary layer is thin that four Chebyshev nodes carry the rest; where the
/// decay of the coefficients says otherwise, eight or sixteen are used, and beyond that every radius is evaluated itself.
/// </remarks>
internal readonly ref struct LossFit
{
    /// <summary>Room the caller provides for coefficients.</summary>
    public const int Room = 2 * MostNodes;

    private const int FewestNodes = 4;
    private const int MostNodes = 16;
    private const int Orders = 10;

    // The terms as series in w = 1/(√j·s): F = Σ a[k]·wᵏ⁺¹ from the quotient of the Hankel series, and F/(1 − F) from it.
    private static readonly double[] ShuntSeries = LargeArgument.Shunt(Orders);
    private static readonly double[] SeriesSeries = LargeArgument.Series(Orders);

    private readonly GasConstants gas;
    private readonly double omega;
    private readonly WallLosses model;
    private readonly double middle; // of 1/radius
    private readonly double half;
    private readonly double viscous; // s·(1/radius)
    private readonly double thermal;
    private readonly ReadOnlySpan<Complex> series; // Chebyshev coefficients; none where every radius is evaluated
    private readonly ReadOnlySpan<Complex> shunt;

    /// <summary>
    /// Fits the terms between two radii, m, so that neither is off by more than <paramref name="allowed"/>.
    /// </summary>
    public LossFit(
        double smallest,
        double largest,
        double omega,
        GasConstants gas,
        WallLosses model,
        double allowed,
        Span<Complex> room
    )
    {
        (this.gas, this.omega, this.model) = (gas, omega, model);
        if (model != WallLosses.Full)
        {
            return;
        }

        viscous = Math.Sqrt(omega * gas.Density / gas.Viscosity);
        thermal = viscous * Math.Sqrt(gas.PrandtlNumber);
        middle = (1 / smallest + 1 / largest) / 2;
        half = Math.Max((1 / smallest - 1 / largest) / 2, 1e-12 * middle);
        for (var n = FewestNodes; n <= MostNodes; n *= 2)
        {
            KernelEvaluations += n;
            var s = room[..n];
            var t = room.Slice(MostNodes, n);
            Fit(s, t);
            if (Rest(s) <= allowed && Rest(t) <= allowed)
            {
                series = s;
                shunt = t;
                return;
            }
        }
    }

    /// <summary>At how many radii the Bessel ratios were evaluated for the fit.</summary>
    public int KernelEvaluations { get; }

    public LossTerms At(double radius)
    {
        if (series.IsEmpty)
        {
            return LossTerms.At(radius, omega, gas, model);
        }

        var t = (1 / radius - middle) / half;
        var asymptotic = Asymptotic(radius);
        return new LossTerms(
            asymptotic.Series + Chebyshev(series, t),
            asymptotic.Shunt + Chebyshev(shunt, t)
        );
    }

    private LossTerms Asymptotic(double radius) =>
        new(
            Power(SeriesSeries, viscous * radius),
            (gas.HeatCapacityRatio - 1) * Power(ShuntSeries, thermal * radius)
        );

    private void Fit(Span<Complex> series, Span<Complex> shunt)
    {
        var n = series.Length;
        series.Clear();
        shunt.Clear();
        for (var i = 0; i < n; i++)
        {
            var angle = Math.PI * (i + 0.5) / n;
            var radius = 1 / (middle + half * Math.Cos(angle));
            var (exact, leading) = (LossTerms.At(radius, omega, gas, model), Asymptotic(radius));
            var (rest, shuntRest) = (exact.Series - leading.Series, exact.Shunt - leading.Shunt);
            for (var k = 0; k < n; k++)
            {
                var weight = (k == 0 ? 1.0 : 2.0) / n * Math.Cos(k * angle);
                series[k] += weight * rest;
                shunt[k] += weight * shuntRest;
            }
        }
    }

    // What a fit leaves out: the next coefficient if they go on decaying as the last ones do, and all after it.
    private static double Rest(ReadOnlySpan<Complex> coefficients)
    {
        var n = coefficients.Length;
        var last = Complex.Abs(coefficients[n - 1]);
        var before = Complex.Abs(coefficients[n - 2]);
        var decay = before > 0 ? Math.Min(last / before, 0.9) : 0;
        return last * decay / (1 - decay);
    }

    private static Complex Chebyshev(ReadOnlySpan<Complex> coefficients, double t)
    {
        var (next, afterNext) = (Complex.Zero, Complex.Zero);
        for (var k = coefficients.Length - 1; k > 0; k--)
        {
            (next, afterNext) = (coefficients[k] + 2 * t * next - afterNext, next);
        }

        return coefficients[0] + t * next - afterNext;
    }

    private static Complex Power(double[] coefficients, double s)
    {
        var w = new Complex(Math.Sqrt(0.5), -Math.Sqrt(0.5)) / s;
        var sum = Complex.Zero;
        for (var k = coefficients.Length - 1; k >= 0; k--)
        {
            sum = w * (sum + coefficients[k]);
        }

        return sum;
    }
}
