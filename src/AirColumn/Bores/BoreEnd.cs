namespace AirColumn.Bores;

/// <summary>How the far end of a bore is finished: geometry only; what it radiates is the acoustics' affair.</summary>
public abstract record BoreEnd
{
    private protected BoreEnd() { }
}
