namespace AirColumn.Design;

/// <summary>The outcome of a solver.</summary>
public enum SolveStatus
{
    /// <summary>The answer meets the target.</summary>
    Solved,

    /// <summary>No allowed value reaches the target; the explanation says what stands in the way.</summary>
    OutOfReach,

    /// <summary>The column showed no first resonance within plane-wave theory where it was needed.</summary>
    NoResonance,

    /// <summary>The values that were tried make no bore; the explanation says what does not fit.</summary>
    NoBore,

    /// <summary>The iteration ended before the target was met; the values are the best found.</summary>
    NotConverged,
}
