using MathNet.Numerics.LinearAlgebra;

namespace AirColumn.Tables;

/// <summary>
/// The modes of a rigid duct of round cross-section, and the flow that a pressure over its end sends into it: H = Σ √(λ − k²)·g·gᵀ.
/// </summary>
/// <remarks>
/// They are those of M over K + M, whose largest eigenvalues μ = 1/(λ + 1) belong to the longest waves: these keep all their digits,
/// however short the shortest are. With K + M = L·Lᵀ and the eigenvectors u of L⁻¹·M·L⁻ᵀ, a mode φ with ∫φ²dS = 1 is L⁻ᵀ·u/√μ, and
/// g, which is M·φ, is L·u·√μ.
/// </remarks>
internal sealed class DuctModes
{
    private readonly double[] shares; // μ, the largest first

    /// <summary>The modes of a duct as wide as a mesh up to an unknown.</summary>
    public DuctModes(RadialElements mesh, int wall)
    {
        var (stiffness, mass) = mesh.Matrices(0, wall);
        var m = Full(mass);
        var lower = (Full(stiffness) + m).Cholesky().Factor;
        var standard = lower.Solve(lower.Solve(m).Transpose());
        var modes = ((standard + standard.Transpose()) / 2).Evd(Symmetricity.Symmetric);
        int[] order = [.. Enumerable.Range(0, wall + 1).OrderByDescending(i => modes.EigenValues[i].Real)];
        // Rounding may leave nothing of the smallest.
        shares = [.. order.Select(i => Math.Max(modes.EigenValues[i].Real, 1e-30))];
        var vectors = Matrix<double>.Build.Dense(
            wall + 1,
            wall + 1,
            (i, j) => modes.EigenVectors[i, order[j]] * Math.Sqrt(shares[j])
        );
        Weights = lower * vectors;
        AtWall = [.. lower.Transpose().Solve(vectors).Row(wall).Select((value, j) => value / shares[j])];
    }

    /// <summary>How many modes there are.</summary>
    public int Count => shares.Length;

    /// <summary>g, a column for each mode; the plane mode comes first.</summary>
    public Matrix<double> Weights { get; }

    /// <summary>φ at the wall.</summary>
    public double[] AtWall { get; }

    /// <summary>√(λ − k²) of a mode above the plane one.</summary>
    public double Decay(int mode, double square) => Math.Sqrt(Math.Max(0, 1 / shares[mode] - 1 - square));

    /// <summary>H without the plane mode.</summary>
    public Matrix<double> At(double square)
    {
        var scaled = Weights.Clone();
        for (var j = 0; j < shares.Length; j++)
        {
            scaled.SetColumn(j, scaled.Column(j) * (j == 0 ? 0 : Decay(j, square)));
        }

        return scaled.TransposeAndMultiply(Weights);
    }

    private static Matrix<double> Full(BandMatrix band) =>
        Matrix<double>.Build.Dense(band.Size, band.Size, (i, j) => band[i, j].Real);
}
