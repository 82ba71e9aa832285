using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class LossFactorTests
{
    // Friction and conduction go with the roots of viscosity and conductivity, at whatever thickness of the layer.
    [Theory]
    [InlineData(Wavefronts.Curved)]
    [InlineData(Wavefronts.Multimodal)]
    public void It_is_air_of_so_much_more_viscosity_and_conductivity(Wavefronts fronts)
    {
        const double Factor = 1.7;
        var bore = Bore.Build()
            .Cylinder(Mm(6), Mm(200))
            .Cone(Mm(6), Mm(20), Mm(300))
            .Cylinder(Mm(30), Mm(100))
            .Hole(Mm(450), Mm(5), Mm(3))
            .OpenEnd(Mm(2));
        var options = new ColumnOptions { Wavefronts = fronts };
        var thicker = Air.FromConstants(
            Speed.FromMetersPerSecond(343.37),
            Density.FromKilogramsPerCubicMeter(1.2045),
            DynamicViscosity.FromPascalSeconds(Factor * Factor * 1.814e-5),
            ThermalConductivity.FromWattsPerMeterKelvin(Factor * Factor * 0.0258),
            SpecificEntropy.FromJoulesPerKilogramKelvin(1006),
            1.4019
        );
        var expected = new Column(bore, thicker, options);
        var column = new Column(bore, TableAir, options with { LossFactor = Factor });
        foreach (var hertz in new[] { 40.0, 300, 900, 2000 })
        {
            var f = Frequency.FromHertz(hertz);
            Near.Relative(expected.ImpedanceAt(f), column.ImpedanceAt(f), 1e-12);
        }
    }

    // Where nothing is radiated and the layer is thin, the quality factor is that of a smooth wall over the factor.
    [Fact]
    public void Resonances_are_broader_in_proportion()
    {
        var smooth = Column(new CylinderSection(Mm(50), Mm(1500)), new IdealOpenEnd());
        var rough = ColumnParameter.Losses.With(smooth, 1.25);
        foreach (var (a, b) in smooth.FirstResonances(5).Zip(rough.FirstResonances(5)))
        {
            Near.Relative(1.25, a.QualityFactor / b.QualityFactor, 0.005);
            Assert.True(b.Frequency < a.Frequency);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.09)]
    [InlineData(10.1)]
    [InlineData(double.NaN)]
    public void A_factor_out_of_range_is_refused(double factor)
    {
        var problem = Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ColumnOptions { LossFactor = factor }
        );
        Assert.Contains("LossFactor", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Walls_without_losses_have_no_factor()
    {
        var column = Column(new CylinderSection(Mm(50), Mm(1500)), new IdealOpenEnd(), Lossless);
        var problem = Assert.Throws<ArgumentException>(() => ColumnParameter.Losses.With(column, 1.1));
        Assert.Contains("losses at the wall", problem.Message, StringComparison.Ordinal);
        Assert.Equal(ColumnParameter.Losses, ColumnParameter.Parse("losses at the wall"));
    }
}
