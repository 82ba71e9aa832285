using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Losses;

/// <summary>
/// Friction and heat conduction at the wall of a circular duct filled with one gas, for any radius and frequency.
/// </summary>
/// <remarks>
/// Series impedance Z' = jωρ/(S·H) and shunt admittance Y' = jωS·T/(ρc²) with H = 1 − F(s), T = 1 + (γ − 1)·F(√Pr·s),
/// F = 2J₁(x)/(x·J₀(x)), x = s·√(−j), s = a·√(ωρ/μ): radius over boundary-layer thickness (sources: zwikker1949, ch. II;
/// tijdeman1975).
/// <para>
/// Three ranges. Below s = 25 the Bessel functions come from their recurrence run backwards (Miller; DLMF 10.6.1 rescaled), and
/// H = −J₂/J₀ without cancellation; to rounding. From there on the quotient of the Hankel series (DLMF 10.17.5) in powers of
/// w = 1/(√j·s) serves, to 1e-14 (<see cref="LossSeries"/>). Slopes D = a·d/da follow from Riccati's equation,
/// DF = 2H − (js²/2)·F² (DLMF 10.6.3).
/// </para>
/// </remarks>
internal sealed class BoundaryLayer
{
    /// <summary>s from which the series serve.</summary>
    public const double Thin = 25;

    private const MethodImplOptions Optimized = MethodImplOptions.AggressiveOptimization;

    private readonly WallLosses model;
    private readonly double excess; // γ − 1
    private readonly double rootPrandtl;

    public BoundaryLayer(in GasConstants gas, WallLosses model)
    {
        this.model = model;
        Unit = Math.Sqrt(gas.Density / gas.Viscosity);
        excess = gas.HeatCapacityRatio - 1;
        rootPrandtl = Math.Sqrt(gas.PrandtlNumber);
        Series = new LossSeries(model, excess, rootPrandtl);
    }

    /// <summary>s over a·√ω.</summary>
    public double Unit { get; }

    /// <summary>The same where boundary layers are thin.</summary>
    public LossSeries Series { get; }

    /// <summary>Whether the wall takes nothing.</summary>
    public bool IsLossless => model == WallLosses.None;

    /// <summary>ω from which the series serve at a radius, m.</summary>
    public double ThinFrom(double radius)
    {
        var root = Thin / (Unit * radius);
        return IsLossless ? 0 : root * root;
    }

    /// <summary>H and T at a radius, m.</summary>
    public void At(double radius, in FrequencyVector frequencies, out ComplexVector h, out ComplexVector t)
    {
        var s = Unit * radius * frequencies.Root;
        Viscous(s, out h, out _);
        Thermal(rootPrandtl * s, out var f, out _);
        t = 1 + excess * f;
    }

    /// <summary>The same with their slopes.</summary>
    public void At(double radius, in FrequencyVector frequencies, out WallFunctions functions)
    {
        var s = Unit * radius * frequencies.Root;
        Viscous(s, out var h, out var slope);
        Thermal(rootPrandtl * s, out var f, out var heatSlope);
        functions = new WallFunctions(h, slope, 1 + excess * f, f, heatSlope);
    }

    /// <summary>
    /// For a taper, whose wave ψ = a·√H·p obeys ψ'' + (k²·T/H − (a'/a)²·Bend − (a''/a)·Lean)·ψ = 0: H, T/H, Lean = 1 + DH/2H and
    /// Bend = DH/2H − (DH/2H)² + D²H/2H.
    /// </summary>
    [MethodImpl(Optimized)]
    public void OfTaper(double radius, in FrequencyVector frequencies, out TaperTerms terms)
    {
        var s = Unit * radius * frequencies.Root;
        Viscous(s, out var h, out var slope);
        Thermal(rootPrandtl * s, out var f, out _);
        var inverse = h.Inverse();
        var half = 0.5 * (slope * inverse);
        var curve = 0.5 * (Curve(s, h, slope) * inverse);
        terms = new TaperTerms(
            h,
            (1 + excess * f) * inverse,
            1 + half,
            ComplexVector.MultiplyAdd(half, 1 - half, curve)
        );
    }

    // H and DH; for large tubes H = 1/(1 + 2w), Dw = −w.
    private void Viscous(RealVector s, out ComplexVector h, out ComplexVector slope)
    {
        switch (model)
        {
            case WallLosses.None:
                (h, slope) = (ComplexVector.One, ComplexVector.Zero);
                break;
            case WallLosses.LargeTube:
                var w = FirstOrder(s);
                h = (1 + 2 * w).Inverse();
                slope = 2 * (w * (h * h));
                break;
            default:
                Bessel(s, out var f, out h);
                slope = -Riccati(s, f, h);
                break;
        }
    }

    // D²H.
    private ComplexVector Curve(RealVector s, in ComplexVector h, in ComplexVector slope)
    {
        switch (model)
        {
            case WallLosses.None:
                return ComplexVector.Zero;
            case WallLosses.LargeTube:
                return slope * (4 * (FirstOrder(s) * h) - RealVector.One);
            default:
                var f = 1 - h;
                var turn = (0.5 * s * s * f).TimesJ();
                return 2 * (turn * f - slope - turn * slope);
        }
    }

    // F and DF; for large tubes F = 2w.
    private void Thermal(RealVector s, out ComplexVector f, out ComplexVector slope)
    {
        switch (model)
        {
            case WallLosses.None:
                (f, slope) = (ComplexVector.Zero, ComplexVector.Zero);
                break;
            case WallLosses.LargeTube:
                f = 2 * FirstOrder(s);
                slope = -f;
                break;
            default:
                Bessel(s, out f, out var h);
                slope = Riccati(s, f, h);
                break;
        }
    }

    // DF = 2(1 − F) − (js²/2)·F².
    private static ComplexVector Riccati(RealVector s, in ComplexVector f, in ComplexVector h) =>
        2 * h - (0.5 * s * s * (f * f)).TimesJ();

    // w = 1/(√j·s).
    private static ComplexVector FirstOrder(RealVector s)
    {
        var w = Vector.Create(Math.Sqrt(0.5)) / s;
        return new ComplexVector(w, -w);
    }

    // F and 1 − F. With Jₙ = (x/2)ⁿ/n!·cₙ the recurrence is cₙ₋₁ = cₙ + j(s²/4)/(n(n + 1))·cₙ₊₁.
    [MethodImpl(Optimized)]
    private static void Bessel(RealVector s, out ComplexVector f, out ComplexVector h)
    {
        var (low, high) = (RealVectors.Smallest(s), RealVectors.Largest(s));
        if (low >= Thin)
        {
            Asymptotic(s, low, out f, out h);
            return;
        }

        Recurrence(Vector.Min(s, Vector.Create(Thin)), Math.Min(high, Thin), out f, out h);
        if (high >= Thin)
        {
            Asymptotic(Vector.Max(s, Vector.Create(Thin)), Thin, out var thinF, out var thinH);
            var isThin = Vector.GreaterThanOrEqual(s, Vector.Create(Thin));
            f = ComplexVector.Select(isThin, thinF, f);
            h = ComplexVector.Select(isThin, thinH, h);
        }
    }

    private static void Asymptotic(RealVector s, double least, out ComplexVector f, out ComplexVector h)
    {
        var w = FirstOrder(s);
        var terms = LossSeries.OfF;
        var count = LossSeries.TermsFrom(least);
        f = terms[count - 1] * w;
        for (var n = count - 2; n > 0; n--)
        {
            f = new ComplexVector(Vector.Create(terms[n]) + f.Re, f.Im) * w;
        }

        h = 1 - f;
    }

    private static void Recurrence(RealVector s, double largest, out ComplexVector f, out ComplexVector h)
    {
        var u = 0.25 * s * s;
        var (after, c) = (ComplexVector.One, ComplexVector.One);
        for (var n = 14 + (int)(1.4 * largest); n > 1; n--)
        {
            var q = u * (1.0 / (n * (n + 1)));
            var before = new ComplexVector(
                RealVectors.MultiplyAdd(-q, after.Im, c.Re),
                RealVectors.MultiplyAdd(q, after.Re, c.Im)
            );
            (c, after) = (before, c);
        }

        // c is c₁, after c₂.
        var half = 0.5 * (u * after.TimesJ());
        var inverse = (c + half).Inverse();
        (f, h) = (c * inverse, half * inverse);
    }
}

/// <summary>H with DH, T, and of the thermal argument F with DF.</summary>
internal readonly record struct WallFunctions(
    ComplexVector H,
    ComplexVector HSlope,
    ComplexVector T,
    ComplexVector Heat,
    ComplexVector HeatSlope
);

/// <summary>H, T/H, Lean and Bend; see <see cref="BoundaryLayer.OfTaper"/>.</summary>
internal readonly record struct TaperTerms(
    ComplexVector H,
    ComplexVector Wave,
    ComplexVector Lean,
    ComplexVector Bend
);
