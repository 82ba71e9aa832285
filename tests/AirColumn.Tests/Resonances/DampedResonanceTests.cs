using System.Numerics;
using AirColumn.Tests.Acoustics;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>Resonances that radiation damps strongly, and sharp ones beside them.</summary>
public class DampedResonanceTests
{
    // A pipe shorter than a third of its width: with length the resonance falls and sharpens, without a gap or a jump.
    [Fact]
    public void A_short_pipe_has_one_resonance_at_every_length()
    {
        Resonance? before = null;
        for (var length = 4.6; length < 12; length += 0.02)
        {
            var column = new Column(Bore.Build().Cylinder(Mm(40), Mm(length)).OpenEnd(Mm(3)), TableAir);
            var resonance = Assert.Single(column.FirstResonances(1));
            if (before is not null)
            {
                Assert.InRange(resonance.Frequency / before.Frequency, 0.99, 1);
                Assert.InRange(resonance.QualityFactor / before.QualityFactor, 1, 1.02);
            }

            before = resonance;
        }
    }

    // This bore has holes whose own modes lie between those of the whole, ten times as broad. At a maximum of |Z| as sharp as these, with
    // no other near, −d²ln|Z|/df² is 1/(Im pole)².
    [Fact]
    public void A_sharp_resonance_is_not_given_the_pole_of_a_broad_one()
    {
        var (bore, fingering) = RandomOpenings.From(10, RandomBore.From(10, 4e-3, 0.04, 1));
        var column = new Column(bore, TableAir, OneDimensional with { Fingering = fingering });
        foreach (var about in new[] { 275.0, 951.0 })
        {
            var resonance = column
                .Resonances(UnitsNet.Frequency.FromHertz(1000))
                .Single(each => Math.Abs(each.Frequency.Hertz - about) < 1);
            var (f, step) = (resonance.Frequency.Hertz, 1e-4 * resonance.Frequency.Hertz);
            var bend = (Level(f + step) - 2 * Level(f) + Level(f - step)) / (step * step);
            // Neighbours add something to the curvature; the broad modes are a tenth as sharp.
            Near.Relative(f / 2 * Math.Sqrt(-bend), resonance.QualityFactor, 0.05);
        }

        double Level(double hertz) => Math.Log(Complex.Abs(column.AnswerAt(2 * Math.PI * hertz)));
    }

    // A capillary in which a broad pole is the nearest to one maximum after another: the last of them must not be left with it.
    [Fact]
    public void A_broad_pole_is_not_handed_on_to_the_end()
    {
        var bore = Bore.Build()
            .Cone(Mm(1.005), Mm(0.659), Mm(15.9))
            .Cone(Mm(0.647), Mm(145.7))
            .Cone(Mm(0.698), Mm(617.8))
            .Cone(Mm(1.222), Mm(76.8))
            .BaffledEnd();
        var found = new Column(bore, TableAir, OneDimensional).FirstResonances(8);
        Assert.NotEmpty(found);
        Assert.All(
            found,
            each =>
                Assert.True(
                    Math.Abs(each.Frequency.Hertz - each.Pole.Real) < 4 * each.Pole.Imaginary,
                    $"{each}: {each.Pole}"
                )
        );
    }
}
