namespace AirColumn.Workshop;

/// <summary>The steps of making and playing a tube that have their own cautions, in the order of the work.</summary>
public enum CautionStep
{
    /// <summary>Choosing the pipe.</summary>
    Pipe,

    /// <summary>Cutting the pipe.</summary>
    Cutting,

    /// <summary>Working with power saws.</summary>
    Hearing,

    /// <summary>Dust and chips.</summary>
    Dust,

    /// <summary>Deburring and rounding the edges.</summary>
    Edges,

    /// <summary>Drilling.</summary>
    Drilling,

    /// <summary>Playing.</summary>
    Playing,

    /// <summary>Keeping the mouth end clean.</summary>
    Hygiene,

    /// <summary>Heating plastic.</summary>
    Heating,

    /// <summary>Joining with solvent cement.</summary>
    SolventCement,

    /// <summary>Painting.</summary>
    Paint,

    /// <summary>Working on metal pipe.</summary>
    Metal,
}
