namespace AirColumn;

/// <summary>The spelling of the five pitches of an octave that have no letter of their own.</summary>
public enum PitchSpelling
{
    /// <summary>C#, D#, F#, G#, A#.</summary>
    Sharps = 0,

    /// <summary>Db, Eb, Gb, Ab, Bb.</summary>
    Flats = 1,
}
