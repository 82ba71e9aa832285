namespace AirColumn.Recordings.Tests.Hard;

/// <summary>What makes a take hard to read.</summary>
internal enum HardKind
{
    /// <summary>Nothing but breath noise.</summary>
    Plain,

    /// <summary>Lips that open a little wider every other time.</summary>
    Doubled,

    /// <summary>Every third period alike.</summary>
    Looped,

    /// <summary>A weaker tone a fifth above.</summary>
    Fifth,

    /// <summary>Mains hum.</summary>
    Hum,

    /// <summary>Music behind it.</summary>
    Background,

    /// <summary>Wind or traffic.</summary>
    Rumble,

    /// <summary>A voice sung into the tube.</summary>
    Growl,

    /// <summary>Another note nearly as strong.</summary>
    TwoNotes,

    /// <summary>A pitch that wanders.</summary>
    Wandering,

    /// <summary>Circular breathing.</summary>
    Breaths,

    /// <summary>Wandering, vibrato, breaths, hum, music, rumble and breath noise.</summary>
    Everything,
}
