using UnitsNet;

namespace AirColumn.Tests.Bores;

public class HornTests
{
    private static Length Mm(double value) => Length.FromMillimeters(value);

    public static TheoryData<HornLaw> Laws => [.. Enum.GetValues<HornLaw>()];

    private static HornSection Horn(HornLaw law, double from, double to) =>
        law == HornLaw.Bessel
            ? new HornSection(Mm(from), Mm(to), Mm(250), 0.7)
            : new HornSection(law, Mm(from), Mm(to), Mm(250));

    [Theory]
    [MemberData(nameof(Laws))]
    public void Ends_are_where_they_were_put(HornLaw law)
    {
        var horn = Horn(law, 20, 90);
        Near.Relative(20, horn.InletDiameter.Millimeters, 1e-12);
        Near.Relative(90, horn.OutletDiameter.Millimeters, 1e-12);
        Near.Relative(125, horn.WithLength(Mm(125)).Length.Millimeters, 1e-12);
        Assert.Equal(law, horn.WithLength(Mm(125)).Law);
    }

    [Theory]
    [MemberData(nameof(Laws))]
    public void Slope_and_curvature_are_the_derivatives_of_the_radius(HornLaw law)
    {
        foreach (var horn in new[] { Horn(law, 20, 90), Horn(law, 90, 20) })
        {
            const double Step = 1e-4;
            for (var x = 0.01; x < 0.24; x += 0.02)
            {
                var (before, here, after) = (horn.WallAt(x - Step), horn.WallAt(x), horn.WallAt(x + Step));
                // Central differences: their own error is of order Step².
                Near.Absolute((after.Radius - before.Radius) / (2 * Step), here.Slope, 1e-4);
                Near.Absolute((after.Slope - before.Slope) / (2 * Step), here.Curvature, 1e-2);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Laws))]
    public void A_narrowing_horn_is_the_opening_one_from_behind(HornLaw law)
    {
        var (opening, narrowing) = (Horn(law, 20, 90), Horn(law, 90, 20));
        for (var x = 0.0; x <= 0.25; x += 0.05)
        {
            Near.Relative(opening.WallAt(x).Radius, narrowing.WallAt(0.25 - x).Radius, 1e-12);
        }
    }

    [Fact]
    public void Impossible_horns_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new HornSection(HornLaw.Exponential, Mm(40), Mm(40), Mm(100)));
        Assert.Throws<ArgumentException>(() => new HornSection(HornLaw.Bessel, Mm(40), Mm(50), Mm(100)));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new HornSection((HornLaw)9, Mm(40), Mm(50), Mm(100))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new HornSection(Mm(40), Mm(50), Mm(100), double.NaN)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => new HornSection(Mm(40), Mm(50), Mm(100), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new HornSection(HornLaw.Cosine, Mm(0), Mm(50), Mm(100))
        );
    }
}
