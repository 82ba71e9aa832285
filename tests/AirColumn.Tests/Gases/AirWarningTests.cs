using FsCheck.Xunit;
using static AirColumn.Tests.Gases.States;

namespace AirColumn.Tests.Gases;

public class AirWarningTests
{
    // Where both sources stand: cramer1993 (0–30 °C, 75–102 kPa, x_w ≤ 0.06, x_c ≤ 0.01) and iec61094-2, Annex F
    // (15–27 °C, 60–110 kPa, 10–90 %). Below 27 °C and above 75 kPa the air cannot hold 6 % water vapour.
    [Property(MaxTest = 1000)]
    public void Warnings_appear_exactly_outside_the_stated_ranges(ushort t, ushort h, ushort p, ushort x)
    {
        var celsius = t.Between(10, 32);
        var percent = h.Between(0, 100);
        var kilopascals = p.Between(70, 110);
        var carbonDioxide = x.Between(0, 0.015);

        var air = AirAt(celsius, percent, kilopascals, carbonDioxide);

        var cramer = celsius <= 30 && kilopascals is >= 75 and <= 102 && carbonDioxide <= 0.01;
        var annex = celsius is >= 15 and <= 27 && percent is >= 10 and <= 90;
        Assert.Equal(cramer, air.Model == AirModel.Iec61094);
        Assert.Equal(annex || !cramer, air.IsInsideStatedRange);
        Assert.Equal(annex || !cramer, air.Warnings.Count == 0);
        var standard = Air.At(air.State!, AirModel.Iec61094);
        Assert.Equal(cramer && annex, standard.IsInsideStatedRange);
    }

    [Theory]
    [InlineData(15, 50, 101.325, 0.0004)]
    [InlineData(27, 50, 101.325, 0.0004)]
    [InlineData(20, 10, 101.325, 0.0004)]
    [InlineData(20, 90, 101.325, 0.0004)]
    [InlineData(20, 50, 75, 0.0004)]
    [InlineData(20, 50, 102, 0.0004)]
    [InlineData(20, 50, 101.325, 0)]
    [InlineData(20, 50, 101.325, 0.01)]
    public void Edges_of_the_stated_ranges_are_inside(
        double celsius,
        double percent,
        double kilopascals,
        double carbonDioxide
    )
    {
        var air = AirAt(celsius, percent, kilopascals, carbonDioxide);
        Assert.Empty(air.Warnings);
        Assert.Equal(AirModel.Iec61094, air.Model);
    }

    [Theory]
    [InlineData(14.99, 50, 101.325, 0.0004, "Temperature is 14.99 °C", "15 °C to 27 °C")]
    [InlineData(27.01, 50, 101.325, 0.0004, "Temperature is 27.01 °C", "15 °C to 27 °C")]
    [InlineData(20, 9.9, 101.325, 0.0004, "Relative humidity is 9.9 %", "10 % to 90 %")]
    [InlineData(20, 90.1, 101.325, 0.0004, "Relative humidity is 90.1 %", "10 % to 90 %")]
    [InlineData(20, 50, 74.9, 0.0004, "Pressure is 74.9 kPa", "75 kPa to 102 kPa")]
    [InlineData(20, 50, 102.1, 0.0004, "Pressure is 102.1 kPa", "75 kPa to 102 kPa")]
    [InlineData(20, 50, 101.325, 0.011, "Mole fraction of carbon dioxide is 1.1 %", "0 % to 1 %")]
    public void A_warning_names_quantity_value_and_range(
        double celsius,
        double percent,
        double kilopascals,
        double carbonDioxide,
        string value,
        string range
    )
    {
        var warning = Assert.Single(Standard(celsius, percent, kilopascals, carbonDioxide).Warnings);

        Assert.StartsWith(value, warning, StringComparison.Ordinal);
        Assert.Contains(range, warning, StringComparison.Ordinal);
        Assert.EndsWith(".", warning, StringComparison.Ordinal);
    }

    [Fact]
    public void Warm_breath_is_outside_both_sources_and_each_is_named()
    {
        var warnings = Standard(37, 100, 101.325, 0.04).Warnings;

        Assert.Equal(2, warnings.Count(w => w.StartsWith("Temperature", StringComparison.Ordinal)));
        Assert.Contains(warnings, w => w.Contains("Cramer (1993)", StringComparison.Ordinal));
        Assert.Contains(warnings, w => w.Contains("IEC 61094-2:2009", StringComparison.Ordinal));
        Assert.Contains(
            warnings,
            w => w.StartsWith("Mole fraction of water vapour is 6.2", StringComparison.Ordinal)
        );
        Assert.Contains(
            warnings,
            w => w.Contains("take no account of carbon dioxide", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void The_standards_wider_pressure_range_has_its_own_warning() =>
        Assert.Equal(2, Standard(20, 50, 59.9).Warnings.Count);

    private static Air Standard(
        double celsius,
        double percent,
        double kilopascals = 101.325,
        double carbonDioxide = 0.0004
    ) => Air.At(AirAt(celsius, percent, kilopascals, carbonDioxide).State!, AirModel.Iec61094);
}
