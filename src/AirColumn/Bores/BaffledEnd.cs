namespace AirColumn;

/// <summary>An open end flush with a large rigid plane.</summary>
public sealed record BaffledEnd : BoreEnd
{
    /// <summary>The kind of end.</summary>
    /// <returns>The kind of end, as text.</returns>
    public override string ToString() => "open end in a baffle";
}
