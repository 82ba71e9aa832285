namespace AirColumn.Workshop.Measurements;

/// <summary>The state of the joints: dry, or pushed fully in.</summary>
public enum JointState
{
    /// <summary>Pushed in by hand, without cement: tapered sockets stop the pipes short.</summary>
    Dry,

    /// <summary>Pushed fully in.</summary>
    Home,
}
