using AirColumn.Gases;
using FsCheck.Xunit;
using static AirColumn.Tests.Gases.States;

namespace AirColumn.Tests.Gases;

/// <summary>How far the fits can be trusted, measured against ideal gases.</summary>
public class AirAgainstIdealGasTests
{
    // cramer1993: 300 ppm inside its range, and 200 ppm for the forces between molecules that an ideal gas lacks.
    [Property(MaxTest = 500)]
    public void Speed_of_sound_agrees_inside_the_stated_range(ushort t, ushort h, ushort p, ushort x)
    {
        var celsius = t.Between(0, 30);
        var kilopascals = p.Between(75, 102);
        var percent = h.Between(0, MaxPercentBelow(0.06, celsius, kilopascals));

        var air = AirAt(celsius, percent, kilopascals, x.Between(0, 0.01));

        Assert.InRange(air.Constants.SpeedOfSound / Ideal(air).SpeedOfSound, 1 - 500e-6, 1 + 500e-6);
        Assert.InRange(air.Constants.HeatCapacityRatio / Ideal(air).HeatCapacityRatio, 1, 1.002);
        Assert.InRange(air.Constants.HeatCapacity / Ideal(air).HeatCapacity, 1, 1.004);
    }

    // What the documentation promises of the extrapolation: 0.08 % up to 6 % water vapour, and 2.5 % in Cp.
    [Property(MaxTest = 500)]
    public void Speed_of_sound_stays_near_in_all_accepted_air_that_is_not_very_wet(
        ushort t,
        ushort h,
        ushort p,
        ushort x
    )
    {
        var celsius = t.Between(-20, 50);
        var kilopascals = p.Between(50, 110);
        var percent = h.Between(0, MaxPercentBelow(0.06, celsius, kilopascals));

        var air = AirAt(celsius, percent, kilopascals, x.Between(0, 0.1));

        Assert.InRange(air.Constants.SpeedOfSound / Ideal(air).SpeedOfSound, 1 - 0.0008, 1 + 0.0008);
        Assert.InRange(air.Constants.HeatCapacity / Ideal(air).HeatCapacity, 1, 1.025);
        Assert.InRange(air.Constants.Density / (Ideal(air).DensityPerPascal * kilopascals * 1000), 1, 1.002);
    }

    // What the documentation promises of the extrapolation: 0.23 % up to the limit of 13 % water vapour.
    [Property(MaxTest = 500)]
    public void Speed_of_sound_stays_fairly_near_in_the_wettest_accepted_air(
        ushort t,
        ushort h,
        ushort p,
        ushort x
    )
    {
        var celsius = t.Between(-20, 50);
        var kilopascals = p.Between(50, 110);
        var percent = h.Between(0, MaxPercentBelow(0.13, celsius, kilopascals));

        var air = AirAt(celsius, percent, kilopascals, x.Between(0, 0.1));

        Assert.InRange(air.Constants.SpeedOfSound / Ideal(air).SpeedOfSound, 1 - 0.0023, 1 + 0.0023);
    }

    [Theory]
    [InlineData(50, 95, 101.325, 0.1)]
    [InlineData(50, 100, 110, 0.1)]
    [InlineData(37, 100, 50, 0.1)]
    [InlineData(37, 100, 101.325, 0.05)]
    [InlineData(-20, 0, 110, 0.1)]
    [InlineData(50, 52, 50, 0.1)]
    public void Corners_of_the_accepted_air_are_no_worse(
        double celsius,
        double percent,
        double kilopascals,
        double carbonDioxide
    )
    {
        var air = AirAt(celsius, percent, kilopascals, carbonDioxide);

        Assert.InRange(air.Constants.SpeedOfSound / Ideal(air).SpeedOfSound, 1 - 0.0023, 1 + 0.0023);
    }

    // Why there is a limit on water vapour: the same polynomial in saturated air of 50 °C at 50 kPa.
    [Theory]
    [InlineData(0.0004, 0.0035)]
    [InlineData(0.1, 0.006)]
    public void Refused_wet_air_would_be_badly_off(double carbonDioxide, double atLeast)
    {
        var waterVapour = WaterVapour.MoleFraction(50, 1, 50e3);
        var fit = CramerPolynomial.SpeedOfSound(50, 50e3, waterVapour, carbonDioxide);
        var ideal = new IdealGasMixture(50, waterVapour, carbonDioxide).SpeedOfSound;

        Assert.True(ideal / fit - 1 > atLeast, $"{fit} m/s, ideal {ideal} m/s");
    }

    private static IdealGasMixture Ideal(Air air)
    {
        var state = air.State!;
        return new(state.Temperature.DegreesCelsius, state.WaterVapour, state.CarbonDioxide.DecimalFractions);
    }
}
