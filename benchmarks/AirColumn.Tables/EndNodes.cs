namespace AirColumn.Tables;

/// <summary>
/// Where the thin edge and the baffle are tabulated: ka = γ·sin(v·s²) with s in even steps up to 1, γ the cut-on of the first radial mode,
/// and v such that the last ka is 3.8. At s = 0 the limits are known.
/// </summary>
internal static class EndNodes
{
    public const int Count = 40;

    private const double CutOn = 3.8317059702075123;
    private const double Last = 3.8;

    public static double Ka(int i)
    {
        var s = (i + 1.0) / Count;
        return CutOn * Math.Sin(Math.Asin(Last / CutOn) * s * s);
    }
}
