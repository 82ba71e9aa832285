using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>What is said of a Q where there is no complex resonance to take it from.</summary>
public class GuessedQTests
{
    // Just below ka = 3.8, where the model of the end stops, what it is off the real axis is not known.
    private static readonly Bore Stub = new(
        [new ConeSection(Mm(5.009), Mm(9.158), Mm(9.337))],
        new OpenEnd(Mm(1.670152))
    );

    // The series reaches to the end of the model, and off the axis from there: the complex resonance is found beside it.
    [Fact]
    public void Where_the_model_of_the_end_stops_a_pole_is_found_all_the_same()
    {
        var column = new Column(Stub, TableAir, new ColumnOptions { Wavefronts = Wavefronts.Sloped });
        var found = column.Resonances(Frequency.FromHertz(0.97 * column.HighestFrequency.Hertz));
        Assert.Equal(3, found.Count);
        Assert.All(found, resonance => Assert.InRange(resonance.QualityFactor, 0.5, 1000));
        Assert.DoesNotContain(
            found.Warnings,
            warning => warning.Contains("is a guess", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Of_what_is_not_listed_nothing_is_said()
    {
        var column = new Column(Stub, TableAir, new ColumnOptions { Wavefronts = Wavefronts.Sloped });
        Assert.DoesNotContain(
            column.FirstResonances(2).Warnings,
            warning => warning.Contains("is a guess", StringComparison.Ordinal)
        );
    }
}
