namespace AirColumn;

/// <summary>The outcome of a solver.</summary>
public enum SolveStatus
{
    /// <summary>The answer meets the target.</summary>
    Solved,

    /// <summary>No allowed value reaches the target; the explanation gives the reason.</summary>
    OutOfReach,

    /// <summary>The column has no first resonance within plane-wave theory.</summary>
    NoResonance,

    /// <summary>None of the values tried makes a bore; the explanation names the part that does not fit.</summary>
    NoBore,

    /// <summary>The iteration ended before the target was met; the values are the best found.</summary>
    NotConverged,
}
