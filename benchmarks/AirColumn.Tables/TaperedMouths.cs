namespace AirColumn.Tables;

/// <summary>
/// What a sloping wall adds to the impedance of a mouth: Hadamard's formula over the field of the straight pipe, κ = 2∫[(v² + p²) −
/// (v₀² + p₀²)]·s ds, and −∫[…]·s² ds for the curvature of the wall. Writes TaperTable.cs:
/// dotnet run -c Release --project benchmarks/AirColumn.Tables -- tapers --write
/// </summary>
internal static class TaperedMouths
{
    private const string Source = "Radiation/TaperTable.cs";
    private const double Step = 0.25; // of ka
    private const int Count = 15;
    private const double LowKa = 1e-3; // for the static values, which are reached as (ka)²

    public static IEnumerable<Table> Tables(string repository)
    {
        var rims = new TableText(repository, Source).Read("OuterOverInner");
        return
        [
            Of(
                ["Real", "Imaginary"],
                Count,
                i =>
                {
                    var slope = 2 * Moment(double.PositiveInfinity, Math.Max(i * Step, LowKa), 1);
                    return [slope.Real, slope.Imaginary];
                }
            ),
            Of(["RimSlope"], rims.Length, i => [2 * Moment(rims[i], LowKa, 1).Real]),
            Of(["Curvature"], 1, _ => [-Moment(double.PositiveInfinity, LowKa, 2).Real]),
        ];

        static Table Of(string[] lists, int count, Func<int, double[]> entry) =>
            new("tapers", Source, lists, count, entry, "F6", 1e-6);
    }

    private static System.Numerics.Complex Moment(double outerOverInner, double ka, int power) =>
        new MouthPlane(outerOverInner).At(ka).WallMoment(power);
}
