using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Resonances;
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
        Column New() => new(bore, TableAir, OneDimensional with { BlownEnd = blown, Tolerance = 1e-9 });
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
}
