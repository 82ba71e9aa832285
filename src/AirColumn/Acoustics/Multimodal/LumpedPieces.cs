using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;

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
internal sealed class SidePiece(SideElement side, double density) : ModalPiece
{
    public override void Carry(ModalState state)
    {
        var half = ComplexLanes.All(side.SeriesMass / (2 * density));
        SeriesMass.Put(state, half);
        var omega = state.Frequencies.Omega;
        var admittance = ComplexLanes.Each(i =>
        {
            var (p, u, _) = side.StateAtFoot(omega.GetElement(i));
            return u / p;
        });
        state.H[0] += (omega * density) * admittance.TimesJ();
        SeriesMass.Put(state, half);
    }
}

/// <summary>A mass in series in the plane part of the sound.</summary>
internal static class SeriesMass
{
    /// <summary>Puts it before what there is, kg/m⁴ over the density: 1/m.</summary>
    public static void Put(ModalState state, ComplexLanes mass)
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
