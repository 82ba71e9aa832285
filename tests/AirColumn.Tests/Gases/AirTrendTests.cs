using FsCheck.Xunit;
using static AirColumn.Tests.Gases.States;

namespace AirColumn.Tests.Gases;

public class AirTrendTests
{
    [Property(MaxTest = 300)]
    public void Everything_is_positive_finite_and_plausible_in_all_accepted_air(
        ushort t,
        ushort h,
        ushort p,
        ushort x
    )
    {
        var constants = Accepted(t, h, p, x).Constants;

        // Plausible: between what −20 °C at 50 kPa and 50 °C at 110 kPa could at most do to room air.
        Assert.InRange(constants.SpeedOfSound, 300, 380);
        Assert.InRange(constants.Density, 0.45, 1.6);
        Assert.InRange(constants.Viscosity, 1.5e-5, 2.1e-5);
        Assert.InRange(constants.Conductivity, 0.02, 0.03);
        Assert.InRange(constants.HeatCapacity, 1000, 1150);
        Assert.InRange(constants.HeatCapacityRatio, 1.36, 1.41);
        Assert.InRange(constants.PrandtlNumber, 0.70, 0.77);
        Assert.InRange(constants.ThermalDiffusivity, 1e-5, 6e-5);
    }

    [Property(MaxTest = 300)]
    public void Warming_raises_the_speed_and_lowers_the_density(
        ushort t,
        ushort step,
        ushort h,
        ushort p,
        ushort x
    )
    {
        var celsius = t.Between(0, 29.9);
        var warmer = celsius + step.Between(0.001, 30 - celsius);
        var kilopascals = p.Between(75, 102);
        var percent = h.Between(0, MaxPercentBelow(0.06, 30, kilopascals));
        var carbonDioxide = x.Between(0, 0.01);

        var cold = AirAt(celsius, percent, kilopascals, carbonDioxide).Constants;
        var warm = AirAt(warmer, percent, kilopascals, carbonDioxide).Constants;

        Assert.True(warm.SpeedOfSound > cold.SpeedOfSound);
        Assert.True(warm.Density < cold.Density);
    }

    [Property(MaxTest = 300)]
    public void Moistening_raises_the_speed_and_lowers_the_density(
        ushort t,
        ushort h,
        ushort step,
        ushort p,
        ushort x
    )
    {
        var celsius = t.Between(0, 30);
        var kilopascals = p.Between(75, 102);
        var most = MaxPercentBelow(0.06, celsius, kilopascals);
        var percent = h.Between(0, most - 0.1);
        var damper = percent + step.Between(0.01, most - percent);
        var carbonDioxide = x.Between(0, 0.01);

        var dry = AirAt(celsius, percent, kilopascals, carbonDioxide).Constants;
        var damp = AirAt(celsius, damper, kilopascals, carbonDioxide).Constants;

        Assert.True(damp.SpeedOfSound > dry.SpeedOfSound);
        Assert.True(damp.Density < dry.Density);
    }

    [Property(MaxTest = 300)]
    public void Carbon_dioxide_lowers_the_speed_and_raises_the_density(ushort t, ushort h, ushort p, ushort x)
    {
        var plain = Accepted(t, h, p, 0);
        var state = plain.State!;
        var fraction = x.Between(1e-6, 0.1);
        var breathed = AirAt(
            state.Temperature.DegreesCelsius,
            state.Humidity.Percent,
            state.Pressure.Kilopascals,
            fraction
        );

        Assert.True(breathed.Constants.SpeedOfSound < plain.Constants.SpeedOfSound);
        Assert.True(breathed.Constants.Density > plain.Constants.Density);
    }

    // A jump anywhere would show as a slope without bound: c changes by about 0.6 m/s per kelvin when dry, and by up
    // to 3 in hot saturated air.
    [Property(MaxTest = 500)]
    public void Speed_has_no_jump_in_temperature(ushort t, ushort h, ushort p, ushort x) =>
        AssertNoJump(t.Between(-20, 49.999), h, p, x);

    [Theory]
    [InlineData(0)]
    [InlineData(15)]
    [InlineData(27)]
    [InlineData(30)]
    public void Speed_has_no_jump_at_the_edge_of_a_stated_range(double edge) =>
        AssertNoJump(edge - 0.5e-6, ushort.MaxValue / 2, ushort.MaxValue, 0);

    private static void AssertNoJump(double celsius, ushort h, ushort p, ushort x)
    {
        const double step = 1e-6;
        var kilopascals = p.Between(50, 110);
        var percent = h.Between(0, MaxPercentBelow(0.13, celsius + step, kilopascals));
        var carbonDioxide = x.Between(0, 0.1);

        var here = AirAt(celsius, percent, kilopascals, carbonDioxide).Constants;
        var there = AirAt(celsius + step, percent, kilopascals, carbonDioxide).Constants;

        Assert.InRange((there.SpeedOfSound - here.SpeedOfSound) / step, 0.1, 3);
    }

    private static Air Accepted(ushort t, ushort h, ushort p, ushort x)
    {
        var celsius = t.Between(-20, 50);
        var kilopascals = p.Between(50, 110);
        var percent = h.Between(0, MaxPercentBelow(0.13, celsius, kilopascals));
        return AirAt(celsius, percent, kilopascals, x.Between(0, 0.1));
    }
}
