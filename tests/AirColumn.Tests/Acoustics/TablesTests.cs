using System.Reflection;
using AirColumn.Tables;

namespace AirColumn.Tests.Acoustics;

/// <summary>The engine's tables of numbers are what their program computes. A few numbers of each: all would take minutes.</summary>
public class TablesTests
{
    private static readonly string Top = typeof(TablesTests)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(data => data.Key == "Top")
        .Value!;

    [Theory]
    [InlineData("unflanged", "LogReflection", 0, 12, 39)]
    [InlineData("unflanged", "LowFrequencyEndCorrection", 0)]
    [InlineData("tapers", "Real", 4)]
    [InlineData("tapers", "Curvature", 0)]
    [InlineData("steps", "Length", 0, 11, 22)]
    public void Numbers_are_those_that_the_program_computes(string name, string list, params int[] numbers) =>
        AreComputed(name, list, numbers);

    [Theory]
    [Trait(Amount.Trait, Amount.Long)]
    [InlineData("baffled", "LogReflection", 25)]
    [InlineData("rims", "Reflection", 93)] // b/a = 1.3 at ka = 3.4
    [InlineData("tapers", "RimSlope", 0)]
    public void So_are_those_that_take_seconds(string name, string list, params int[] numbers) =>
        AreComputed(name, list, numbers);

    private static void AreComputed(string name, string list, int[] numbers)
    {
        var table = AllTables.In(Top).Single(table => table.Name == name && table.Lists.Contains(list));
        var text = new TableText(Top, table.File);
        foreach (var number in numbers)
        {
            var computed = table.Entry(number);
            for (var i = 0; i < computed.Length; i++)
            {
                Near.Absolute(
                    computed[i],
                    text.Read(table.Lists[i])[number],
                    table.Error,
                    $"{table.Lists[i]}, number {number}"
                );
            }
        }
    }

    // radiation-flanged.csv: mode matching to about 1e-12, which has the singularity of the edge built in.
    [Theory]
    [InlineData(0.1)]
    [InlineData(3.8)]
    public void A_baffled_end_agrees_with_mode_matching(double ka)
    {
        var row = ReferenceTable.Read("radiation-flanged.csv").Rows.Single(row => row["ka"] == ka);
        var field = new MouthPlane(double.PositiveInfinity).At(ka);
        Near.Absolute(row["absR"], Math.Exp(field.LogReflection), 1e-9, row);
        Near.Absolute(row["l_over_a"], field.EndCorrection, 1e-9, row);
    }

    // All values of radiation-rims-between.csv are from another program and good to 2e-6.
    [Theory]
    [InlineData(2.5, 3)]
    public void A_rim_that_is_not_tabulated_agrees_with_field_solutions(double rim, double ka)
    {
        var row = ReferenceTable
            .Read("radiation-rims-between.csv")
            .Rows.Single(row => row["b_over_a"] == rim && row["ka"] == ka);
        var field = new MouthPlane(rim).At(ka);
        Near.Absolute(row["absR"], Math.Exp(field.LogReflection), 4e-7, row);
        Near.Absolute(row["l_over_a"], field.EndCorrection, 1.5e-6, row);
    }
}
