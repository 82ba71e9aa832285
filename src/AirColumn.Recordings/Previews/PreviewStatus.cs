namespace AirColumn.Recordings.Previews;

/// <summary>The outcome of a note in the model.</summary>
public enum PreviewStatus
{
    /// <summary>The note speaks, is steady, and belongs to the register asked for.</summary>
    Speaks,

    /// <summary>The lips stay open and still.</summary>
    Silent,

    /// <summary>A note sounds, but of another register.</summary>
    OtherRegister,

    /// <summary>A sound that does not settle within the time: it still grows, wanders, or is not periodic.</summary>
    Unsteady,
}
