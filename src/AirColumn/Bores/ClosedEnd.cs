namespace AirColumn;

/// <summary>An end stopped by a rigid plug: no flow.</summary>
public sealed record ClosedEnd : BoreEnd
{
    /// <summary>The kind of end.</summary>
    /// <returns>The kind of end, as text.</returns>
    public override string ToString() => "closed end";
}
