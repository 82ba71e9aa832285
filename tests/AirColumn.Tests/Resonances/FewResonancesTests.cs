using AirColumn.Tests.Acoustics;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>Who asks for few resonances gets the lowest of those that there are.</summary>
public class FewResonancesTests
{
    // A chamber on a narrow pipe: its lowest mode is far below the first of a plain tube, and where that would be lies the second.
    [Theory]
    [InlineData(25, 85)]
    [InlineData(22, 95)]
    [InlineData(30, 70)]
    [InlineData(60, 40)]
    public void The_lowest_of_a_chamber_on_a_pipe(double length, double diameter)
    {
        foreach (var pipe in Enumerable.Range(0, 40).Select(i => 460 + i))
        {
            var bore = Bore.Build()
                .Cylinder(Mm(diameter), Mm(length))
                .Cylinder(Mm(6), Mm(pipe))
                .OpenEnd(Mm(1));
            var all = new Column(bore, TableAir, OneDimensional).FirstResonances(8);
            Assert.True(all[0].Frequency.Hertz < 80, $"{all[0]}");
            IsTheBeginning(bore, BlownEnd.Closed);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Of_random_bores(bool isOpen)
    {
        for (var seed = 0; seed < 60; seed++)
        {
            IsTheBeginning(
                RandomBore.From(seed, 3e-3, 0.05, 0.8),
                isOpen ? BlownEnd.FreeOpen() : BlownEnd.Closed
            );
        }
    }

    private static void IsTheBeginning(Bore bore, BlownEnd blown)
    {
        Column New() =>
            new(bore, TableAir, OneDimensional with { BlownEnd = blown, RelativeTolerance = 1e-9 });
        var all = New().FirstResonances(9);
        foreach (var count in new[] { 1, 2, 3, 5 })
        {
            var few = New().FirstResonances(count);
            Assert.Equal(Math.Min(count, all.Count), few.Count);
            for (var i = 0; i < few.Count; i++)
            {
                Near.Relative(all[i].Frequency.Hertz, few[i].Frequency.Hertz, 1e-9, $"{bore}, {count}");
            }
        }

        if (New().LowestResonance() is { } lowest)
        {
            Near.Relative(all[0].Frequency.Hertz, lowest.Frequency.Hertz, 1e-9, $"{bore}, the lowest");
        }
    }

    [Fact]
    public void They_are_written_as_csv_to_all_digits()
    {
        var found = new Column(
            Bore.Build().Cylinder(Mm(38), Mm(900)).OpenEnd(Mm(3)),
            TableAir
        ).FirstResonances(3);
        using var text = new StringWriter();
        found.WriteCsv(text);
        var lines = text.ToString().Split('\n');
        Assert.Equal("number,frequency_hz,magnitude,quality_factor", lines[0]);
        Assert.Equal(
            found.SelectMany(each => new[] { each.Frequency.Hertz, each.Magnitude, each.QualityFactor }),
            lines[1..4]
                .SelectMany(line => line.Split(',').Skip(1))
                .Select(number => double.Parse(number, System.Globalization.CultureInfo.InvariantCulture))
        );
        Assert.Equal("", lines[4]);
    }

    [Fact]
    public void A_bore_much_wider_than_long_is_warned_of()
    {
        var swapped = new Column(Bore.Build().Cylinder(Mm(1000), Mm(30)).OpenEnd(Mm(3)), TableAir);
        Assert.Contains(
            swapped.FirstResonances(1).Warnings,
            warning => warning.StartsWith("The bore is 30 mm long and 1000 mm wide", StringComparison.Ordinal)
        );
    }
}
