namespace AirColumn;

/// <summary>The accidental of a <see cref="Pitch"/>; its value is the number of semitones by which it raises the letter.</summary>
public enum Accidental
{
    /// <summary>Two semitones down: bb, ♭♭ or 𝄫.</summary>
    DoubleFlat = -2,

    /// <summary>One semitone down: b or ♭.</summary>
    Flat = -1,

    /// <summary>No change.</summary>
    Natural = 0,

    /// <summary>One semitone up: # or ♯.</summary>
    Sharp = 1,

    /// <summary>Two semitones up: ##, x or 𝄪.</summary>
    DoubleSharp = 2,
}
