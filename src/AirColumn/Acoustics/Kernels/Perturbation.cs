using System.Runtime.CompilerServices;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// What a small polynomial W(δ) = Σ cᵢ·Pᵢ(2δ − 1), i = 1 … 4, adds to the two solutions of f'' = (F + W)·f at δ = 1, u from (1, 0) and v
/// from (0, 1): all of the first order, and of the second what c₁ and c₂ do, and c₁ with c₃ (source: ixaru1997).
/// </summary>
/// <remarks>
/// Each correction is a polynomial in the c times the η of <see cref="Oscillation"/>. The numbers follow from a recurrence, which the
/// tests repeat.
/// </remarks>
internal readonly struct Perturbation
{
    public readonly ComplexLanes U;
    public readonly ComplexLanes USlope;
    public readonly ComplexLanes V;
    public readonly ComplexLanes VSlope;

    /// <summary>From the c (that of index 0 is not looked at) and η₀ to η₄.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public Perturbation(ReadOnlySpan<ComplexLanes> c, ReadOnlySpan<ComplexLanes> eta)
    {
        var square = c[1] * c[1];
        var curved = c[2] * c[2];
        var third = c[1] * c[3];
        var halfMixed = 0.5 * (c[1] * c[2]);
        // −c₁²/24 − c₂²/40 comes back in each.
        var stiff = (-1.0 / 24) * square + (-1.0 / 40) * curved;
        var odd = 0.5 * (c[1] + c[3]);
        var even = 0.5 * (c[2] + c[4]);
        var turn = 2.5 * c[3];
        var bend = -0.075 * curved + 0.25 * third;
        U = (stiff + turn) * eta[2] + (bend + halfMixed) * eta[3] - odd * eta[1];
        VSlope = (stiff - turn) * eta[2] + (bend - halfMixed) * eta[3] + odd * eta[1];
        USlope =
            even * eta[0]
            + (stiff - 1.5 * c[2] - 5.0 * c[4]) * eta[1]
            + (17.5 * c[4] - (7.0 / 24) * square - 0.15 * curved - 0.5 * third) * eta[2]
            + (1.425 * curved + 4.0 * third) * eta[3];
        V = (stiff + 3.5 * c[4]) * eta[3] + (0.225 * curved + 0.5 * third) * eta[4] - even * eta[2];
    }
}
