namespace AirColumn.Workshop.Stock;

/// <summary>The certainty of a row of a catalogue.</summary>
public enum DataCertainty
{
    /// <summary>Read in the standard or in a public reproduction of its table.</summary>
    Read,

    /// <summary>Read in part and inferred in part; the source states which.</summary>
    Inferred,

    /// <summary>From memory, not confirmed.</summary>
    Memory,

    /// <summary>Measured by the user, or from the user's own catalogue.</summary>
    Own,
}
