namespace AirColumn;

/// <summary>The textbook open end, at which the sound pressure vanishes: no radiation and no end correction.</summary>
public sealed record IdealOpenEnd : BoreEnd
{
    /// <summary>The kind of end.</summary>
    /// <returns>The kind of end, as text.</returns>
    public override string ToString() => "ideal open end";
}
