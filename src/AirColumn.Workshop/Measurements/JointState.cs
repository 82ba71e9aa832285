namespace AirColumn.Workshop.Measurements;

/// <summary>The state of the joints: how far pipes are in their sockets.</summary>
public enum JointState
{
    /// <summary>As far as they go by hand, without cement: tapered sockets hold them out.</summary>
    Dry,

    /// <summary>Pushed home.</summary>
    Home,
}
