namespace AirColumn.Workshop.Stock;

/// <summary>The certainty of a row of a catalogue.</summary>
public enum DataCertainty
{
    /// <summary>Read in the standard or in a public reproduction of its table.</summary>
    Read,

    /// <summary>Read, but something of it inferred; the source says what.</summary>
    Inferred,

    /// <summary>From memory, not confirmed.</summary>
    Memory,

    /// <summary>Measured by the user, or from the user's own catalogue.</summary>
    Own,
}
