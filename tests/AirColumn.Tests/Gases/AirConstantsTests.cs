using UnitsNet;

namespace AirColumn.Tests.Gases;

public class AirConstantsTests
{
    [Fact]
    public void Constants_are_returned_as_given()
    {
        var air = Make(343.37, 1.2045, 1.814e-5, 0.0258, 1006, 1.4019);

        Assert.Equal(343.37, air.SpeedOfSound.MetersPerSecond);
        Assert.Equal(1.2045, air.Density.KilogramsPerCubicMeter);
        Assert.Equal(1.814e-5, air.DynamicViscosity.PascalSeconds);
        Assert.Equal(0.0258, air.ThermalConductivity.WattsPerMeterKelvin);
        Assert.Equal(1006, air.SpecificHeatCapacity.JoulesPerKilogramKelvin);
        Assert.Equal(1.4019, air.HeatCapacityRatio);
    }

    [Fact]
    public void Constants_have_no_state_no_range_and_say_so()
    {
        var air = Make(343.37, 1.2045, 1.814e-5, 0.0258, 1006, 1.4019);

        Assert.Equal(AirModel.Constants, air.Model);
        Assert.Null(air.State);
        Assert.True(air.IsInsideStatedRange);
        Assert.Empty(air.Warnings);
        Assert.Equal("given constants: 343.37 m/s, 1.2045 kg/m³, heat capacity ratio 1.4019", air.ToString());
    }

    [Fact]
    public void Equal_constants_make_equal_air()
    {
        Assert.Equal(Make(343, 1.2, 1.8e-5, 0.026, 1000, 1.4), Make(343, 1.2, 1.8e-5, 0.026, 1000, 1.4));
        Assert.NotEqual(Make(343, 1.2, 1.8e-5, 0.026, 1000, 1.4), Make(344, 1.2, 1.8e-5, 0.026, 1000, 1.4));
    }

    // By hand: 2e-5·1000/0.025 = 0.8 and 0.025/(1.25·1000) = 2e-5.
    [Fact]
    public void Derived_numbers_follow_from_the_constants()
    {
        var air = Make(343, 1.25, 2e-5, 0.025, 1000, 1.4);

        Assert.Equal(0.8, air.PrandtlNumber, tolerance: 1e-15);
        Assert.Equal(2e-5, air.ThermalDiffusivity.SquareMetersPerSecond, tolerance: 1e-20);
    }

    [Theory]
    [InlineData("speedOfSound", 0)]
    [InlineData("density", 1)]
    [InlineData("viscosity", 2)]
    [InlineData("conductivity", 3)]
    [InlineData("heatCapacity", 4)]
    [InlineData("heatCapacityRatio", 5)]
    public void What_is_not_a_positive_number_is_refused_by_name(string parameter, int index)
    {
        foreach (var bad in new[] { 0, -1, double.NegativeZero })
        {
            var error = Assert.Throws<ArgumentOutOfRangeException>(() => MakeWith(index, bad));

            Assert.Equal(parameter, error.ParamName);
            Assert.StartsWith($"{parameter} is ", error.Message, StringComparison.Ordinal);
        }

        // UnitsNet refuses these when the quantity is made, before this library sees them.
        foreach (var bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity })
        {
            Assert.ThrowsAny<ArgumentException>(() => MakeWith(index, bad));
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.99)]
    [InlineData(2)]
    [InlineData(140)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_heat_capacity_ratio_no_gas_has_is_refused(double ratio)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            Make(343, 1.2, 1.8e-5, 0.026, 1000, ratio)
        );

        Assert.Contains("must be greater than 1 and less than 2", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_ratio_of_a_monatomic_gas_is_accepted() =>
        Assert.Equal(5.0 / 3, Make(320, 1.6, 2.2e-5, 0.0177, 520, 5.0 / 3).HeatCapacityRatio);

    private static Air MakeWith(int index, double bad)
    {
        double[] values = [343, 1.2, 1.8e-5, 0.026, 1000, 1.4];
        values[index] = bad;
        return Make(values[0], values[1], values[2], values[3], values[4], values[5]);
    }

    private static Air Make(
        double speed,
        double density,
        double viscosity,
        double conductivity,
        double heatCapacity,
        double ratio
    ) =>
        Air.FromConstants(
            Speed.FromMetersPerSecond(speed),
            Density.FromKilogramsPerCubicMeter(density),
            DynamicViscosity.FromPascalSeconds(viscosity),
            ThermalConductivity.FromWattsPerMeterKelvin(conductivity),
            SpecificEntropy.FromJoulesPerKilogramKelvin(heatCapacity),
            ratio
        );
}
