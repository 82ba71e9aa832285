namespace AirColumn.Workshop;

/// <summary>The units in which lengths are written for people.</summary>
public enum LengthUnits
{
    /// <summary>Millimetres, followed by inches.</summary>
    Both,

    /// <summary>Millimetres only.</summary>
    Millimetres,

    /// <summary>Inches only: lengths to a sixteenth, diameters in thousandths.</summary>
    Inches,
}
