using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>A length to which the pipe may be cut, and what the assembled tube then does: computed, not estimated.</summary>
public sealed record TubeCut
{
    internal TubeCut(Length pipeLength, Length totalLength, Frequency firstResonance, double cents)
    {
        PipeLength = pipeLength;
        TotalLength = totalLength;
        FirstResonance = firstResonance;
        Cents = cents;
    }

    /// <summary>Length of the pipe.</summary>
    public Length PipeLength { get; }

    /// <summary>Length of the assembled tube: the pipe and what the fittings add.</summary>
    public Length TotalLength { get; }

    /// <summary>The first resonance of the assembled tube. The note that a player sounds may differ.</summary>
    public Frequency FirstResonance { get; }

    /// <summary>How far the first resonance is from the note, in cents; positive if it is sharp.</summary>
    public double Cents { get; }
}
