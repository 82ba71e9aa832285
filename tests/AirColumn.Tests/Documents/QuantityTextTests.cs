using AirColumn.Documents;
using AirColumn.Tests.Pitches;
using FsCheck;
using FsCheck.Xunit;

namespace AirColumn.Tests.Documents;

/// <summary>
/// Expected values follow from the definitions of the units: 1 in = 25.4 mm exactly, °F = 9/5·°C + 32, 1 ppm = 1e-6,
/// 1 atm = 101 325 Pa (SI brochure, 9th edition, ch. 4, and the NIST Guide to the SI, appendix B, from memory).
/// </summary>
public class QuantityTextTests
{
    [Theory]
    [InlineData("25 mm", 25)]
    [InlineData("25mm", 25)]
    [InlineData("  25\u00A0mm\t", 25)]
    [InlineData("2.5 cm", 25)]
    [InlineData("1.24 m", 1240)]
    [InlineData("+.5e1 mm", 5)]
    [InlineData("3E+1 mm", 30)]
    [InlineData("-3 mm", -3)]
    [InlineData("\u22123 mm", -3)]
    [InlineData("12 µm", 0.012)] // micro sign
    [InlineData("12 μm", 0.012)] // Greek mu
    [InlineData("10 in", 254)]
    [InlineData("10 inches", 254)]
    [InlineData("10\"", 254)]
    [InlineData("10\u2033", 254)]
    [InlineData("10 \u201D", 254)]
    [InlineData("2 ft", 609.6)]
    [InlineData("2'", 609.6)]
    [InlineData("15/16 in", 23.8125)]
    [InlineData("46 15/16 in", 1192.2125)]
    [InlineData("46-15/16\"", 1192.2125)]
    [InlineData("-1/2 in", -12.7)]
    [InlineData("\u22122 1/2 in", -63.5)]
    [InlineData("+1/2 in", 12.7)]
    [InlineData("1\u215E in", 47.625)] // 1⅞ of 25.4 mm
    [InlineData("1 \u215E in", 47.625)]
    [InlineData("1 7\u20448 in", 47.625)] // the slash of fractions
    [InlineData("\u00BD\"", 12.7)]
    [InlineData("-2\u00BD in", -63.5)]
    [InlineData("0' 2\"", 50.8)]
    [InlineData("4'2\"", 1270)]
    [InlineData("4' 2 1/2\"", 1282.7)]
    [InlineData("4\u2032 2\u00BD\u2033", 1282.7)]
    [InlineData("4\u2019 2.5\u201D", 1282.7)]
    [InlineData("4 ft 2 1/2 in", 1282.7)]
    [InlineData("4'-2\"", 1270)]
    [InlineData("-1' 1\"", -330.2)]
    [InlineData("2 Inches", 50.8)]
    [InlineData("5 foot", 1524)]
    [InlineData("50 millimeters", 50)]
    public void Reads_a_length(string text, double millimetres) =>
        Assert.Equal(millimetres, QuantityText.ParseLength(text).Millimeters, 1e-12 * Math.Abs(millimetres));

    [Theory]
    [InlineData("20 °C")]
    [InlineData("20°C")]
    [InlineData("20 ºC")] // the ordinal sign of Spanish keyboards
    [InlineData("20 ℃")]
    [InlineData("20 C")]
    [InlineData("20 degC")]
    [InlineData("68 °F")]
    [InlineData("68 F")]
    [InlineData("68 degF")]
    [InlineData("293.15 K")]
    public void Reads_a_temperature(string text) =>
        Assert.Equal(20, QuantityText.ParseTemperature(text).DegreesCelsius, 1e-12);

    [Theory]
    [InlineData("50 %", 50)]
    [InlineData("50%", 50)]
    [InlineData("50 %RH", 50)]
    public void Reads_a_relative_humidity(string text, double percent) =>
        Assert.Equal(percent, QuantityText.ParseRelativeHumidity(text).Percent);

    [Theory]
    [InlineData("101.325 kPa")]
    [InlineData("101325 Pa")]
    [InlineData("1013.25 hPa")]
    [InlineData("1013.25 mbar")]
    [InlineData("1 atm")]
    public void Reads_a_pressure(string text) =>
        Assert.Equal(101_325, QuantityText.ParsePressure(text).Pascals, 1e-9);

    [Theory]
    [InlineData("400 ppm")]
    [InlineData("0.04 %")]
    [InlineData("0.4 ‰")]
    public void Reads_a_ratio(string text) =>
        Assert.Equal(4e-4, QuantityText.ParseRatio(text).DecimalFractions, 1e-18);

    [Theory]
    [InlineData("1.2045 kg/m³")]
    [InlineData("1.2045 kg/m3")]
    [InlineData("1.2045 kg/m^3")]
    [InlineData("1.2045 g/L")]
    public void Reads_a_density(string text) =>
        Assert.Equal(1.2045, QuantityText.ParseDensity(text).KilogramsPerCubicMeter, 1e-15);

    [Theory]
    [InlineData("1.814e-5 Pa·s")]
    [InlineData("1.814e-5 Pa.s")]
    [InlineData("1.814e-5 Pa s")]
    [InlineData("1.814e-5 Pa*s")]
    [InlineData("0.01814 mPa s")]
    public void Reads_a_viscosity(string text) =>
        Assert.Equal(1.814e-5, QuantityText.ParseDynamicViscosity(text).PascalSeconds, 1e-19);

    [Theory]
    [InlineData("0.0258 W/(m·K)")]
    [InlineData("0.0258 W/(m K)")]
    [InlineData("0.0258 W/m·K")]
    [InlineData("0.0258 W/(m*K)")]
    public void Reads_a_conductivity(string text) =>
        Assert.Equal(0.0258, QuantityText.ParseThermalConductivity(text).WattsPerMeterKelvin);

    [Theory]
    [InlineData("1006 J/(kg·K)")]
    [InlineData("1006 J/(kg K)")]
    [InlineData("1.006 kJ/(kg·K)")]
    public void Reads_a_heat_capacity(string text) =>
        Assert.Equal(1006, QuantityText.ParseSpecificHeatCapacity(text).JoulesPerKilogramKelvin, 1e-12);

    [Fact]
    public void Reads_a_speed_and_a_frequency()
    {
        Assert.Equal(343.37, QuantityText.ParseSpeed("343.37 m/s").MetersPerSecond);
        Assert.Equal(1200, QuantityText.ParseFrequency("1.2 kHz").Hertz, 1e-12);
    }

    [Theory]
    [InlineData("abc", "'abc' is not a length; write a number and a unit, such as \"25 mm\".")]
    [InlineData("mm", "'mm' is not a length; write a number and a unit, such as \"25 mm\".")]
    [InlineData("NaN mm", "'NaN mm' is not a length; write a number and a unit, such as \"25 mm\".")]
    [InlineData("∞ mm", "'∞ mm' is not a length; write a number and a unit, such as \"25 mm\".")]
    [InlineData("", "An empty text is not a length; write a number and a unit, such as \"25 mm\".")]
    [InlineData("30", "'30' is a number without a unit; write \"30 mm\".")]
    [InlineData("1e400 mm", "'1e400 mm' is too large a number for a length.")]
    [InlineData("1e308 km", "'1e308 km' is too large a number for a length.")]
    [InlineData(
        "25 kg",
        "'25 kg' is not a length: 'kg' is not a unit of it; write a number and a unit, such as \"25 mm\"."
    )]
    [InlineData(
        "25 pt", // of two kinds, so neither
        "'25 pt' is not a length: 'pt' is not a unit of it; write a number and a unit, such as \"25 mm\"."
    )]
    [InlineData(
        "25,4 mm",
        "'25,4 mm' is not a length; write numbers with a decimal point and no other separator, such as \"25 mm\"."
    )]
    [InlineData(
        "1 240 mm",
        "'1 240 mm' is not a length; write numbers with a decimal point and no other separator, such as \"25 mm\"."
    )]
    [InlineData(
        "4' 12\"",
        "'4' 12\"' is not a length: write fewer than 12 inches after the feet, such as 4' 2 1/2\"."
    )]
    [InlineData("50 MM", "'50 MM' is not a length: 'MM' is not a unit of it; did you mean \"50 mm\"?")]
    [InlineData("2 FT", "'2 FT' is not a length: 'FT' is not a unit of it; did you mean \"2 ft\"?")]
    [InlineData("1/0 in", "'1/0 in' is not a length: the divisor of its fraction is 0.")]
    [InlineData("46 1/0 in", "'46 1/0 in' is not a length: the divisor of its fraction is 0.")]
    public void Says_what_is_wrong_with_a_length(string text, string message) =>
        Assert.Equal(message, Assert.Throws<FormatException>(() => QuantityText.ParseLength(text)).Message);

    [Fact]
    public void Names_each_kind_of_quantity()
    {
        AssertRefuses(QuantityText.ParseTemperature, "50 %", "temperature");
        AssertRefuses(QuantityText.ParseRelativeHumidity, "20 °C", "relative humidity");
        AssertRefuses(QuantityText.ParsePressure, "20 mm", "pressure");
        AssertRefuses(QuantityText.ParseRatio, "20 mm", "ratio");
        AssertRefuses(QuantityText.ParseSpeed, "20 mm", "speed");
        AssertRefuses(QuantityText.ParseDensity, "20 mm", "density");
        AssertRefuses(QuantityText.ParseDynamicViscosity, "20 Pa", "dynamic viscosity");
        AssertRefuses(QuantityText.ParseThermalConductivity, "20 W", "thermal conductivity");
        AssertRefuses(QuantityText.ParseSpecificHeatCapacity, "20 J", "heat capacity per mass");
        AssertRefuses(QuantityText.ParseFrequency, "20 s", "frequency");
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void Reads_the_same_in_every_culture(string culture) =>
        Culture.Run(
            culture,
            () =>
            {
                Assert.Equal(12.5, QuantityText.ParseLength("12.5 mm").Millimeters);
                Assert.Equal(10 * 25.4, QuantityText.ParseLength("10 in").Millimeters, 1e-12);
                Assert.Equal(-2.5, QuantityText.ParseTemperature("-2.5 °C").DegreesCelsius);
                Assert.Throws<FormatException>(() => QuantityText.ParseLength("12,5 mm"));
            }
        );

    [Fact]
    public void Null_is_an_argument_error() =>
        Assert.Throws<ArgumentNullException>(() => QuantityText.ParseLength(null!));

    [Property(MaxTest = 500)]
    public void Any_text_is_a_finite_quantity_or_a_format_error_on_one_short_line(string? text)
    {
        try
        {
            Assert.True(double.IsFinite(QuantityText.ParseLength(text + " mm").Millimeters));
        }
        catch (FormatException problem)
        {
            Assert.InRange(problem.Message.Length, 1, 250);
            Assert.DoesNotContain(problem.Message, char.IsControl);
        }
    }

    private static void AssertRefuses<T>(Func<string, T> parse, string text, string kind)
    {
        var problem = Assert.Throws<FormatException>(() => parse(text));
        Assert.StartsWith($"'{text}' is not a {kind}: ", problem.Message, StringComparison.Ordinal);
    }
}
