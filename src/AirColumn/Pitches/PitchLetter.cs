namespace AirColumn;

/// <summary>The letter of a <see cref="Pitch"/>, in the order in which an octave runs: C first, B last.</summary>
public enum PitchLetter
{
    /// <summary>C, the first letter of an octave.</summary>
    C = 0,

    /// <summary>D, two semitones above C.</summary>
    D = 1,

    /// <summary>E, four semitones above C.</summary>
    E = 2,

    /// <summary>F, five semitones above C.</summary>
    F = 3,

    /// <summary>G, seven semitones above C.</summary>
    G = 4,

    /// <summary>A, nine semitones above C.</summary>
    A = 5,

    /// <summary>B, eleven semitones above C (German H).</summary>
    B = 6,
}
