namespace AirColumn.Bores;

/// <summary>The finish of the far end of a bore: geometry only; what it radiates is the acoustics' affair.</summary>
public abstract record BoreEnd
{
    private protected BoreEnd() { }
}
