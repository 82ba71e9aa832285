using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>A tube with its pipe cut to a length, and its computed resonances. Immutable.</summary>
/// <param name="Tube">The parts in place.</param>
/// <param name="Column">The column of that tube.</param>
/// <param name="FirstResonance">Its first resonance.</param>
/// <param name="Cents">The distance from the note to the first resonance, cents; positive is sharp.</param>
public sealed record BuiltTube(AssembledTube Tube, Column Column, Frequency FirstResonance, double Cents)
{
    /// <summary>The length to which the open pipe is cut.</summary>
    public Length Cut => Tube.FreeCut!.Cut;
}
