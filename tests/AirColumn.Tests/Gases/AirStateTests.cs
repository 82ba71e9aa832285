using System.Globalization;
using UnitsNet;
using static AirColumn.Tests.Gases.States;

namespace AirColumn.Tests.Gases;

public class AirStateTests
{
    [Theory]
    [InlineData(20, 130, 101.325, 0.0004, "humidity", "humidity is 130 %; allowed is 0 % to 100 %.")]
    [InlineData(20, -1, 101.325, 0.0004, "humidity", "humidity is -1 %; allowed is 0 % to 100 %.")]
    [InlineData(
        -300,
        50,
        101.325,
        0.0004,
        "temperature",
        "temperature is -300 °C; allowed is -20 °C to 50 °C."
    )]
    [InlineData(
        50.01,
        50,
        101.325,
        0.0004,
        "temperature",
        "temperature is 50.01 °C; allowed is -20 °C to 50 °C."
    )]
    [InlineData(20, 50, -5, 0.0004, "pressure", "pressure is -5 kPa; allowed is 50 kPa to 110 kPa.")]
    [InlineData(20, 50, 0, 0.0004, "pressure", "pressure is 0 kPa; allowed is 50 kPa to 110 kPa.")]
    [InlineData(20, 50, 101.325, -0.01, "carbonDioxide", "carbonDioxide is -1 %; allowed is 0 % to 10 %.")]
    [InlineData(20, 50, 101.325, 0.11, "carbonDioxide", "carbonDioxide is 11 %; allowed is 0 % to 10 %.")]
    public void Refusals_name_parameter_value_and_range(
        double celsius,
        double percent,
        double kilopascals,
        double carbonDioxide,
        string parameter,
        string message
    )
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            AirAt(celsius, percent, kilopascals, carbonDioxide)
        );

        Assert.Equal(parameter, error.ParamName);
        Assert.StartsWith(message, error.Message, StringComparison.Ordinal);
    }

    // UnitsNet refuses these when the quantity is made, before this library sees them.
    [Theory]
    [InlineData(double.NaN, 50, 101.325, 0.0004)]
    [InlineData(20, double.NaN, 101.325, 0.0004)]
    [InlineData(20, 50, double.NaN, 0.0004)]
    [InlineData(20, 50, 101.325, double.NaN)]
    [InlineData(double.PositiveInfinity, 50, 101.325, 0.0004)]
    [InlineData(20, double.PositiveInfinity, 101.325, 0.0004)]
    [InlineData(20, 50, double.PositiveInfinity, 0.0004)]
    [InlineData(20, 50, 101.325, double.NegativeInfinity)]
    public void What_is_not_a_finite_number_does_not_get_in(
        double celsius,
        double percent,
        double kilopascals,
        double carbonDioxide
    ) => Assert.ThrowsAny<ArgumentException>(() => AirAt(celsius, percent, kilopascals, carbonDioxide));

    [Fact]
    public void Air_wetter_than_the_fits_bear_is_refused_with_a_way_out()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => AirAt(50, 100, 50));

        Assert.Equal("humidity", error.ParamName);
        Assert.Contains(
            "humidity is 100 %, which at 50 °C and 50 kPa is 24.",
            error.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("allowed is at most 13 %", error.Message, StringComparison.Ordinal);
        Assert.Contains("Lower the humidity", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-20, 0, 50, 0)]
    [InlineData(-20, 100, 110, 0.1)]
    [InlineData(50, 0, 50, 0.1)]
    [InlineData(50, 100, 101.325, 0)]
    [InlineData(37, 100, 50, 0.05)]
    public void Edges_of_the_accepted_air_are_accepted(
        double celsius,
        double percent,
        double kilopascals,
        double carbonDioxide
    ) => Assert.NotNull(AirAt(celsius, percent, kilopascals, carbonDioxide));

    [Fact]
    public void Edges_given_in_other_units_are_accepted_in_spite_of_round_off() =>
        Assert.NotNull(
            Air.At(
                Temperature.FromDegreesFahrenheit(122),
                RelativeHumidity.FromPercent(30),
                Pressure.FromBars(1.1),
                Ratio.FromPartsPerMillion(100_000)
            )
        );

    // 1e-12: the round-off of the unit conversions, with room.
    [Fact]
    public void Other_units_give_the_same_air()
    {
        var expected = AirAt(20, 50, 98, 0.0005).Constants;

        var actual = Air.At(
            Temperature.FromDegreesFahrenheit(68),
            RelativeHumidity.FromPercent(50),
            Pressure.FromHectopascals(980),
            Ratio.FromPartsPerMillion(500)
        ).Constants;

        Assert.Equal(1, actual.SpeedOfSound / expected.SpeedOfSound, tolerance: 1e-12);
        Assert.Equal(1, actual.Density / expected.Density, tolerance: 1e-12);
        Assert.Equal(1, actual.HeatCapacity / expected.HeatCapacity, tolerance: 1e-12);
        Assert.Equal(1, actual.HeatCapacityRatio / expected.HeatCapacityRatio, tolerance: 1e-12);
        Assert.Equal(1, actual.Viscosity / expected.Viscosity, tolerance: 1e-12);
        Assert.Equal(1, actual.Conductivity / expected.Conductivity, tolerance: 1e-12);
    }

    [Fact]
    public void A_state_holds_what_it_was_given()
    {
        var state = AirAt(21, 45, 99, 0.001).State!;

        Assert.Equal(21, state.Temperature.DegreesCelsius);
        Assert.Equal(45, state.Humidity.Percent);
        Assert.Equal(99, state.Pressure.Kilopascals);
        Assert.Equal(0.001, state.CarbonDioxide.DecimalFractions);
    }

    [Fact]
    public void Air_can_be_asked_for_a_state() =>
        Assert.Equal(AirAt(21, 45, 99, 0.001), Air.At(AirAt(21, 45, 99, 0.001).State!));

    [Fact]
    public void A_missing_state_is_refused() => Assert.Throws<ArgumentNullException>(() => Air.At(null!));

    [Fact]
    public void Equal_states_make_equal_air_and_others_do_not()
    {
        Assert.Equal(AirAt(20, 50), AirAt(20, 50));
        Assert.Equal(AirAt(20, 50).GetHashCode(), AirAt(20, 50).GetHashCode());
        Assert.NotEqual(AirAt(20, 50), AirAt(20, 51));
        Assert.False(AirAt(20, 50).Equals(null));
        Assert.Equal(
            new AirState(Temperature.FromDegreesFahrenheit(68), RelativeHumidity.FromPercent(50)),
            new AirState(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void Text_is_the_same_in_every_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            var air = AirAt(-2.5, 5.5, 98.7654);

            Assert.Equal(
                "-2.5 °C, 5.5 % relative humidity, 98.7654 kPa, 400 ppm carbon dioxide",
                air.State!.ToString()
            );
            Assert.Matches(
                "carbon dioxide: [0-9]{3}[.][0-9]+ m/s, 1[.][0-9]+ kg/m³, heat capacity ratio 1[.]4[0-9]+$",
                air.ToString()
            );
            Assert.StartsWith(
                "Temperature is -2.5 °C",
                Air.At(air.State!, AirModel.Iec61094).Warnings[0],
                StringComparison.Ordinal
            );
            var error = Assert.Throws<ArgumentOutOfRangeException>(() => AirAt(50, 99.5, 50));
            Assert.Contains("99.5 %", error.Message, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
