namespace AirColumn.Tables;

/// <summary>
/// The open end of a pipe with a square rim, by <see cref="MouthPlane"/>, at the rims and ka that the table names. Writes RimTable.cs:
/// dotnet run -c Release --project benchmarks/AirColumn.Tables -- rims --write
/// </summary>
internal static class Rims
{
    private const string Source = "Radiation/RimTable.cs";

    public static IEnumerable<Table> Tables(string repository)
    {
        var text = new TableText(repository, Source);
        var (rims, ka) = (text.Read("OuterOverInner"), text.Read("Ka"));
        return
        [
            new("rims", Source, ["Reflection", "EndCorrection"], rims.Length * ka.Length, Of, "F9", 3e-9),
        ];

        double[] Of(int i)
        {
            var field = new MouthPlane(rims[i / ka.Length]).At(ka[i % ka.Length]);
            return [Math.Exp(field.LogReflection), field.EndCorrection];
        }
    }
}
