using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// The two solutions of φ'' + Q·φ = 0 at the end of a step of a cone: ξ, η₀, η₁ of the mean of −h²Q, and what the rest of it adds to u, hu',
/// v/h, v' (source: ixaru1997). See <see cref="ConeLanes"/> for φ.
/// </summary>
internal readonly struct ConeSolution
{
    private readonly ComplexLanes z;
    private readonly ComplexLanes xi;
    private readonly ComplexLanes eta0;
    private readonly ComplexLanes eta1;
    private readonly Perturbation rest;

    /// <summary>From the Legendre coefficients of −h²Q, the mean first.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public ConeSolution(ReadOnlySpan<ComplexLanes> c)
    {
        Span<ComplexLanes> eta = stackalloc ComplexLanes[Oscillation.Orders];
        z = c[0];
        xi = Oscillation.At(z, eta);
        (eta0, eta1) = (eta[0], eta[1]);
        rest = new Perturbation(c, eta);
    }

    /// <summary>(φ, φ') here from there, over a step of this length, m.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public LaneMatrix Propagator(double h) =>
        new(xi + rest.VSlope, -h * (eta0 + rest.V), (-1 / h) * (z * eta0 + rest.USlope), xi + rest.U);

    /// <summary>φ and φ' here in place of those there, by <see cref="Propagator"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Carry(double h, ref ComplexLanes phi, ref ComplexLanes slope)
    {
        var before = phi;
        phi = ComplexLanes.MultiplyAdd(xi + rest.VSlope, phi, -h * ((eta0 + rest.V) * slope));
        slope = ComplexLanes.MultiplyAdd(
            xi + rest.U,
            slope,
            (-1 / h) * (ComplexLanes.MultiplyAdd(z, eta0, rest.USlope) * before)
        );
    }

    /// <summary>
    /// Waves (p⁻, p⁺)·a here from those there, up to a factor; <paramref name="inertia"/> is kμ.
    /// </summary>
    /// <remarks>
    /// ψ = √ζ·φ, w = j/(kμ√ζ)·(φ' − ηφ) with η = (ln(a/√ζ))' = g(1 − ½·Dζ/ζ). In the flow of a pressure that is the same at both ends g·ξ
    /// cancels: what is left of it is written out, for digits' sake.
    /// </remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public LaneMatrix ToWaves(double h, Vector512<double> inertia, in ConeEnd here, in ConeEnd there)
    {
        var u = xi + rest.U;
        var v = eta0 + rest.V;
        var vSlope = xi + rest.VSlope;
        var uSlope = z * eta0 + rest.USlope;
        var (eta, etaAfter) = (here.Eta, there.Eta);
        var a = vSlope - h * (v * etaAfter);
        var b = -h * v;
        var d = u + h * (v * eta);
        // −u'/h + uη₁ − v'η₀ + hvη₀η₁, in which η₁ − η₀ = rest − hη₀η₁ (η at either end) and ξ less its sinh √Z/√Z is Z times
        // the next function.
        var product = eta * etaAfter;
        var gg = h * here.G * there.G;
        var left =
            gg * (0.25 * (here.D * there.D) - 0.5 * (here.D + there.D))
            - 0.5 * (there.G * there.D - here.G * here.D);
        var c =
            (-1 / h) * uSlope
            + left * xi
            - h * (product * (z * eta1 - rest.V))
            + etaAfter * rest.U
            - eta * rest.VSlope;
        var inverse = here.Root.Inverse();
        var inverseAfter = there.Root.Inverse();
        return new LaneMatrix(
            a * (here.Root * inverseAfter),
            -(inertia * (b * (here.Root * there.Root)).TimesJ()),
            (Vector512<double>.One / inertia) * (c * (inverse * inverseAfter)).TimesJ(),
            d * (inverse * there.Root)
        ).OfWaves();
    }
}

/// <summary>One end of a step: a'/a, Dζ/ζ, √ζ.</summary>
internal readonly struct ConeEnd(double g, ComplexLanes d, ComplexLanes root)
{
    public readonly double G = g;
    public readonly ComplexLanes D = d;
    public readonly ComplexLanes Root = root;

    public ComplexLanes Eta => G + (-0.5 * G) * D;
}
