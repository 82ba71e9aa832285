using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>One piece of a column for the modes: carries their state from its far side to its near side.</summary>
internal abstract class ModalPiece
{
    /// <summary>m along the axis; 0 of what is lumped.</summary>
    public virtual double Length => 0;

    public abstract void Carry(ModalState state);

    /// <summary>The piece as two, divided at a distance from its near side.</summary>
    public virtual (ModalPiece Near, ModalPiece Far) Split(double at) =>
        throw new NotSupportedException("What is lumped has no inside.");

    /// <summary>What the wall takes, W, from the modes at both ends of the piece: by friction and as heat.</summary>
    public virtual (double Friction, double Heat) Loss(in ModalEnds ends, in FrequencyVector frequency) =>
        default;
}

/// <summary>The modes' pressures and W = jωρU on both sides of a piece, at one frequency.</summary>
internal readonly record struct ModalEnds(
    Complex[] Pressure,
    Complex[] Flow,
    Complex[] FarPressure,
    Complex[] FarFlow
);
