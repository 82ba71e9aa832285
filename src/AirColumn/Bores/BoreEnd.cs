namespace AirColumn;

/// <summary>The geometry of the far end of a bore.</summary>
public abstract record BoreEnd
{
    private protected BoreEnd() { }
}
