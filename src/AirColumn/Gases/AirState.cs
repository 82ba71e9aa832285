using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// The state of air: temperature, humidity, pressure and carbon dioxide. Immutable; two states are equal when all four quantities are equal.
/// </summary>
/// <remarks>
/// Accepted are −20 to 50 °C, 0 to 100 % relative humidity, 50 to 110 kPa, 0 to 10 % carbon dioxide, and at most 13 %
/// of water vapour by mole, as in warm breath at half an atmosphere. This is wider than the range of the standard:
/// <see cref="Air.Model"/> names the model used for a state.
/// </remarks>
[JsonConverter(typeof(JsonAnswerConverter<AirState>))]
public sealed record AirState : IJsonAnswer
{
    // The limits are ours, not a source's: they hold played air and cold rooms with some margin, and the mixture's second
    // virial coefficients suffice inside them.
    private const double MinCelsius = -20;
    private const double MaxCelsius = 50;
    private const double MaxHumidityPercent = 100;
    private const double MinKilopascals = 50;
    private const double MaxKilopascals = 110;
    private const double MaxCarbonDioxidePercent = 10;
    private const double MaxWaterVapourPercent = 13;

    private const double StandardAtmosphereKilopascals = 101.325; // exact, definition of the atmosphere
    private const double UsualCarbonDioxide = 0.0004; // iec61094-2, Annex F, recommended for laboratories

    /// <summary>Checks and holds a state of the air.</summary>
    /// <param name="temperature">Temperature, −20 °C to 50 °C.</param>
    /// <param name="humidity">
    /// Relative humidity, 0 % to 100 %, with respect to liquid water (below 0 °C too).
    /// </param>
    /// <param name="pressure">Static pressure, 50 kPa to 110 kPa. Default: 101.325 kPa.</param>
    /// <param name="carbonDioxide">
    /// Mole fraction of carbon dioxide in the dry part of the air, 0 to 10 %. Default: 400 ppm. It takes the place
    /// of oxygen, as it does in breathing.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A value is outside its range, or the air would hold more than 13 % water vapour by mole.
    /// </exception>
    public AirState(
        Temperature temperature,
        RelativeHumidity humidity,
        Pressure? pressure = null,
        Ratio? carbonDioxide = null
    )
    {
        // One unit for each, so that states given in different units compare as equal.
        Temperature = Temperature.FromDegreesCelsius(
            InRange(temperature.DegreesCelsius, MinCelsius, MaxCelsius, "°C", nameof(temperature))
        );
        Humidity = RelativeHumidity.FromPercent(
            InRange(humidity.Percent, 0, MaxHumidityPercent, "%", nameof(humidity))
        );
        Pressure = Pressure.FromKilopascals(
            InRange(
                pressure?.Kilopascals ?? StandardAtmosphereKilopascals,
                MinKilopascals,
                MaxKilopascals,
                "kPa",
                nameof(pressure)
            )
        );
        var carbonDioxideFraction = carbonDioxide?.DecimalFractions ?? UsualCarbonDioxide;
        InRange(carbonDioxideFraction * 100, 0, MaxCarbonDioxidePercent, "%", nameof(carbonDioxide));
        CarbonDioxide = Ratio.FromDecimalFractions(carbonDioxideFraction);
        RequireNotTooWet(nameof(humidity));
    }

    /// <summary>
    /// Air as it leaves the mouth: 34 °C, saturated, 101.325 kPa, 4 % carbon dioxide in its dry part.
    /// </summary>
    /// <remarks>
    /// A usual value, not a constant of nature. Mouth-breathed air is 33 to 35 °C and near saturation (hoppe1981). Mixed expired air holds
    /// about 4 % carbon dioxide (physiology textbooks, from memory): 3 % after a quick short breath, 5.5 % after a long held one. Breath
    /// cools along the bore: see <see cref="AirProfile"/>.
    /// </remarks>
    public static AirState ExhaledBreath { get; } =
        new(
            Temperature.FromDegreesCelsius(34),
            RelativeHumidity.FromPercent(100),
            carbonDioxide: Ratio.FromPercent(4)
        );

    /// <summary>Temperature, in °C.</summary>
    public Temperature Temperature { get; }

    /// <summary>Relative humidity, in percent, with respect to liquid water.</summary>
    public RelativeHumidity Humidity { get; }

    /// <summary>Static pressure, in kPa.</summary>
    public Pressure Pressure { get; }

    /// <summary>Mole fraction of carbon dioxide in the dry part of the air, as a decimal fraction.</summary>
    public Ratio CarbonDioxide { get; }

    /// <summary>x_w, mole fraction of water vapour in the humid air.</summary>
    internal double WaterVapour =>
        AirColumn.WaterVapour.MoleFraction(
            Temperature.DegreesCelsius,
            Humidity.Percent / 100,
            Pressure.Pascals
        );

    /// <summary>The four quantities in words, in the invariant culture.</summary>
    /// <returns>The four quantities, as text.</returns>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Temperature.DegreesCelsius:G10} °C, {Humidity.Percent:G10} % relative humidity, {Pressure.Kilopascals:G10} kPa, {CarbonDioxide.PartsPerMillion:G10} ppm carbon dioxide"
        );

    // Nine decimals decide: unit conversion leaves a last digit astray (1.1 bar is 110.00000000000001 kPa).
    private static double InRange(double value, double min, double max, string unit, string parameter)
    {
        Require.InRange(Math.Round(value, 9), min, max, unit, parameter);
        return value;
    }

    private void RequireNotTooWet(string parameter)
    {
        var percent = WaterVapour * 100;
        if (percent > MaxWaterVapourPercent)
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                Humidity.Percent,
                $"{parameter} is {Require.Show(Humidity.Percent, "%")}, which at "
                    + $"{Require.Show(Temperature.DegreesCelsius, "°C")} and "
                    + $"{Require.Show(Pressure.Kilopascals, "kPa")} is {Require.Show(Math.Round(percent, 3), "%")} water "
                    + $"vapour by mole; allowed is at most {Require.Show(MaxWaterVapourPercent, "%")}. Lower the humidity "
                    + "or the temperature, or raise the pressure."
            );
        }
    }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Number("temperatureCelsius", Temperature.DegreesCelsius);
        json.Number("humidityPercent", Humidity.Percent);
        json.Number("pressureKilopascals", Pressure.Kilopascals);
        json.Number("carbonDioxidePpm", CarbonDioxide.PartsPerMillion);
    }
}
