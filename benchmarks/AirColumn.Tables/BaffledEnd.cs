namespace AirColumn.Tables;

/// <summary>
/// The open end of a pipe flush with an infinite rigid plane (zorumski1973, norris1989), by <see cref="MouthPlane"/>. Writes
/// BaffledTable.cs: dotnet run -c Release --project benchmarks/AirColumn.Tables -- baffled --write
/// </summary>
internal static class BaffledEnd
{
    private const string Source = "Radiation/BaffledTable.cs";
    private const double LowKa = 0.005;

    public static IEnumerable<Table> Tables { get; } =
    [
        new(
            "baffled",
            Source,
            ["LogReflection", "EndCorrection"],
            EndNodes.Count,
            i => Of(EndNodes.Ka(i)),
            "G12",
            1e-9
        ),
        new("baffled", Source, ["LowFrequencyEndCorrection"], 1, _ => [Limit()], "F10", 2e-9),
    ];

    private static double[] Of(double ka)
    {
        var field = new MouthPlane(double.PositiveInfinity).At(ka);
        return [field.LogReflection, field.EndCorrection];
    }

    // The limit is reached as (ka)².
    private static double Limit()
    {
        var (low, twice) = (Of(LowKa)[1], Of(2 * LowKa)[1]);
        return low - (twice - low) / 3;
    }
}
