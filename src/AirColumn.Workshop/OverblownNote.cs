using AirColumn.Pitches;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>A resonance above the first, on which the tube can be overblown.</summary>
public sealed record OverblownNote
{
    internal OverblownNote(int resonance, Frequency frequency, PitchReading nearest, double centsAboveFirst)
    {
        Resonance = resonance;
        Frequency = frequency;
        Nearest = nearest;
        CentsAboveFirst = centsAboveFirst;
    }

    /// <summary>Which resonance: 2 is the first overblown note.</summary>
    public int Resonance { get; }

    /// <summary>Its frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>The nearest note of the plan's tuning, and how far it is.</summary>
    public PitchReading Nearest { get; }

    /// <summary>The interval above the first resonance in cents: 1200 is an octave, 1900 a twelfth.</summary>
    public double CentsAboveFirst { get; }
}
