using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Spectra;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>Another density beyond: the flow stays.</summary>
internal sealed class GasPiece(double ratio) : ModalPiece
{
    public override void Carry(ModalState state)
    {
        for (var i = 0; i < state.H.Length; i++)
        {
            state.H[i] = ratio * state.H[i];
        }
    }
}

/// <summary>A hole or branch: a T in the plane part of the sound, the other modes pass it by.</summary>
internal sealed class SidePiece(SideColumn side, double density, double tolerance) : ModalPiece
{
    private readonly Answers branch = new(
        new PlaneWave(side.Parts, side.End, InputTermination.None, side.Impedance, null),
        tolerance
    );

    public override void Carry(ModalState state)
    {
        var half = ComplexVector.All(side.SeriesMass / (2 * density));
        PlaneMass.Put(state, half);
        var omega = state.Frequencies.Omega;
        var admittance = ComplexVector.Each(i =>
        {
            var (p, u, _) = branch.At(omega[i] / (2 * Math.PI), CancellationToken.None);
            // A branch that shorts the bore exactly, as only one without losses can, is taken a rounding error beside.
            return u / (p == 0 ? 1e-16 * side.Impedance * u : p);
        });
        state.H[0] += (omega * density) * admittance.TimesJ();
        PlaneMass.Put(state, half);
    }
}

/// <summary>A mass in series in the plane part of the sound.</summary>
internal static class PlaneMass
{
    /// <summary>Puts it before what there is, kg/m⁴ over the density: 1/m.</summary>
    public static void Put(ModalState state, ComplexVector mass)
    {
        var n = state.Modes;
        var column = state.Room(n);
        state.H.AsSpan(0, n).CopyTo(column);
        var factor = mass * (1 + mass * column[0]).Inverse();
        var first = state.T[0];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                state.H[i * n + j] -= factor * column[i] * column[j];
            }

            state.T[i] -= factor * first * column[i];
        }
    }
}
