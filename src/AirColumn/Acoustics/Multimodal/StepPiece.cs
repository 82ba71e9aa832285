using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// A sudden change of radius: mode matching. What the wider side's disc sees of its modes is pressed on the narrower one,
/// P₁ = F·P₂ + B·W₁, W₂ = Fᵀ·W₁, F exact.
/// </summary>
/// <remarks>
/// B is the share of the wider side's modes beyond those that are carried, which are taken to find a straight pipe; and in its first
/// entry what the edge's singularity leaves of the mass of a step by itself, so that this is as exact as for plane waves
/// (kergomard1987) however few the modes are. With one mode nothing but that mass is left.
/// </remarks>
internal sealed class StepPiece : ModalPiece
{
    /// <summary>How many modes more than those carried count on the wider side.</summary>
    public const int Beyond = 20;

    private readonly RadialBasis basis;
    private readonly RadialBasis finer;
    private readonly double narrow; // radius, m
    private readonly double wide;
    private readonly bool widens; // towards the far end
    private readonly double density;
    private readonly double speedOfSound;
    private readonly Func<double, double> mass; // kg/m⁴ at ω
    private readonly double[] overlap;
    private readonly double[] finerOverlap;
    private readonly double[] unseen;

    /// <summary>Between two radii, m, in a gas; with the mass, kg/m⁴ at ω, of the step by itself, and <see cref="Beyond"/> more modes.</summary>
    public StepPiece(
        RadialBasis basis,
        RadialBasis finer,
        double near,
        double far,
        double density,
        double speedOfSound,
        Func<double, double> mass
    )
    {
        (this.basis, this.finer) = (basis, finer);
        (this.density, this.speedOfSound, this.mass) = (density, speedOfSound, mass);
        (narrow, wide) = (Math.Min(near, far), Math.Max(near, far));
        widens = far > near;
        overlap = basis.Overlap(basis, narrow / wide);
        finerOverlap = basis.Overlap(finer, narrow / wide);
        unseen = Unseen();
    }

    // 1/m. Modes of a pipe far narrower than the other are too fine even for the finer modes there: what they meet is taken to be not less
    // than half of what they would in a pipe of their own, or nothing would hold them.
    private double[] Unseen()
    {
        var n = basis.Count;
        var missing = new double[n];
        for (var i = 1; i < n; i++)
        {
            var seen = 0.0;
            for (var l = 1; l < finer.Count; l++)
            {
                var share = finerOverlap[i * finer.Count + l];
                seen += share * share / (Math.PI * wide * finer.Gamma[l]);
            }

            missing[i] = Math.Max(0, 0.5 / (Math.PI * narrow * basis.Gamma[i]) - seen);
        }

        return missing;
    }

    public override void Carry(ModalState state)
    {
        var n = state.Modes;
        var room = state.Room(4 * n * n);
        var b = room[..(n * n)];
        var x = room.Slice(n * n, n * n);
        var y = room.Slice(2 * n * n, n * n);
        Masses(state, b, x);
        if (widens)
        {
            // X = 1/H: X₁ = F·X₂·Fᵀ + B; P₂ = X₂FᵀH₁·P₁.
            state.H.CopyTo(x);
            LaneSymmetric.Invert(x, n);
            Products.TimesTransposed(x, overlap, y, n); // X₂Fᵀ
            Products.Times(overlap, y, state.H, n);
            for (var i = 0; i < n * n; i++)
            {
                state.H[i] += b[i];
            }

            Products.Symmetrize(state.H, n);
            LaneSymmetric.Invert(state.H, n);
            Products.Times(y, state.H, x, n);
            Products.Row(state.T, x, room[(3 * n * n)..], n);
        }
        else
        {
            // W₁ = (X₁ + B)⁻¹·F·P₂, and P₁ beyond is X₁·W₁.
            state.H.CopyTo(x);
            LaneSymmetric.Invert(x, n);
            for (var i = 0; i < n * n; i++)
            {
                y[i] = x[i] + b[i];
            }

            LaneSymmetric.Invert(y, n);
            Products.Times(x, y, b, n);
            Products.Row(state.T, b, room[(3 * n * n)..], n);
            Products.RowTimes(state.T, overlap, x, n);
            Products.Times(y, overlap, x, n);
            Products.TransposedTimes(overlap, x, state.H, n);
            Products.Symmetrize(state.H, n);
        }
    }

    // B, 1/m.
    private void Masses(ModalState state, Span<ComplexVector> b, Span<ComplexVector> total)
    {
        var n = basis.Count;
        var k = state.Wavenumber(speedOfSound);
        Share(finer, finerOverlap, k, total);
        for (var i = 0; i < n; i++)
        {
            total[i * n + i] = unseen[i] + total[i * n + i];
        }

        Share(basis, overlap, k, b);
        for (var i = 0; i < n * n; i++)
        {
            b[i] = total[i] - b[i];
        }

        // The plane wave's mass by itself, the narrower side's higher modes going out in a straight pipe.
        var area = Math.PI * narrow * narrow;
        for (var i = 1; i < n; i++)
        {
            total[i * n + i] += (area * Decay(basis.Gamma[i] / narrow, k)).Inverse();
        }

        var row = state.Room(4 * n * n).Slice(3 * n * n, n);
        row.Clear();
        // The first unknown last: a copy turned round, so that the others can be taken out of it.
        var turned = state.Room(4 * n * n).Slice(2 * n * n, n * n);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                turned[(n - 1 - i) * n + n - 1 - j] = total[i * n + j];
            }
        }

        LaneSymmetric.Eliminate(turned, n, n - 1, row);
        var omega = state.Frequencies.Omega;
        var exact = ComplexVector.Each(i => mass(omega[i]) / density);
        b[0] += exact - turned[n * n - 1];
    }

    // F·X·Fᵀ of the wider side's higher modes in a straight pipe.
    private void Share(RadialBasis wider, double[] sees, RealVector k, Span<ComplexVector> sum)
    {
        var n = basis.Count;
        sum[..(n * n)].Clear();
        var area = Math.PI * wide * wide;
        for (var l = 1; l < wider.Count; l++)
        {
            var each = (area * Decay(wider.Gamma[l] / wide, k)).Inverse();
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                {
                    sum[i * n + j] += (sees[i * wider.Count + l] * sees[j * wider.Count + l]) * each;
                }
            }
        }
    }

    private static ComplexVector Decay(double across, RealVector k) =>
        new ComplexVector(Vector.Create(across * across) - k * k, RealVector.Zero).Root();
}
