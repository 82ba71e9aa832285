using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using AirColumn.Documents;
using AirColumn.Gases;
using Shared;
using UnitsNet;

namespace ColumnTool;

/// <summary>air: the acoustic properties of humid air, the model that gave them and whether it is inside its range.</summary>
internal static class AirVerb
{
    public static Command Create()
    {
        var temperature = Options.Parsed<Temperature?>(
            "--temperature",
            "Temperature, such as \"20 °C\" or \"68 °F\".",
            text => QuantityText.ParseTemperature(text)
        );
        temperature.Required = true;
        var humidity = Options.Parsed<RelativeHumidity?>(
            "--humidity",
            "Relative humidity; \"50 %\" if left out.",
            text => QuantityText.ParseRelativeHumidity(text)
        );
        var pressure = Options.Parsed<Pressure?>(
            "--pressure",
            "Static pressure; \"101.325 kPa\" if left out.",
            text => QuantityText.ParsePressure(text)
        );
        var carbonDioxide = Options.Parsed<Ratio?>(
            "--co2",
            "Mole fraction of carbon dioxide; \"400 ppm\" if left out.",
            text => QuantityText.ParseRatio(text)
        );
        var json = JsonSwitch.Create();
        var verb = new Command("air", "The acoustic properties of humid air, with their units.")
        {
            temperature,
            humidity,
            pressure,
            carbonDioxide,
            json,
        };
        verb.SetAction(parsed =>
        {
            var air = At(
                parsed.GetRequiredValue(temperature)!.Value,
                parsed.GetValue(humidity) ?? RelativeHumidity.FromPercent(50),
                parsed.GetValue(pressure),
                parsed.GetValue(carbonDioxide)
            );
            var text = parsed.GetValue(json) ? Json(air) : Table(air);
            ConsoleProgram.Warn(parsed, air.Warnings);
            Answer.Write(parsed, output => output.Write(text));
        });
        return verb;
    }

    // Errors name the option, not the parameter of a library.
    private static Air At(
        Temperature temperature,
        RelativeHumidity humidity,
        Pressure? pressure,
        Ratio? carbonDioxide
    )
    {
        try
        {
            return Air.At(temperature, humidity, pressure, carbonDioxide);
        }
        catch (ArgumentException problem)
        {
            var option = problem.ParamName switch
            {
                nameof(carbonDioxide) => "--co2",
                { } parameter => $"--{parameter}",
                null => "The air",
            };
            throw new BadInputException(OneLine.Of(problem, option));
        }
    }

    private static string Model(Air air) =>
        air.Model == AirModel.Iec61094 ? "IEC 61094-2:2009, Annex F" : "mixture of gases";

    // The names are those of the column document. The unit of a ratio is 1.
    private static IEnumerable<(string Name, double Value, string Unit)> State(AirState state) =>
        [
            ("temperature", state.Temperature.DegreesCelsius, "°C"),
            ("humidity", state.Humidity.Percent, "%"),
            ("pressure", state.Pressure.Kilopascals, "kPa"),
            ("co2", state.CarbonDioxide.PartsPerMillion, "ppm"),
        ];

    private static IEnumerable<(string Name, double Value, string Unit)> Properties(Air air) =>
        [
            ("speedOfSound", air.SpeedOfSound.MetersPerSecond, "m/s"),
            ("density", air.Density.KilogramsPerCubicMeter, "kg/m³"),
            ("viscosity", air.DynamicViscosity.PascalSeconds, "Pa·s"),
            ("conductivity", air.ThermalConductivity.WattsPerMeterKelvin, "W/(m·K)"),
            ("heatCapacity", air.SpecificHeatCapacity.JoulesPerKilogramKelvin, "J/(kg·K)"),
            ("heatCapacityRatio", air.HeatCapacityRatio, "1"),
            ("thermalDiffusivity", air.ThermalDiffusivity.SquareMetersPerSecond, "m²/s"),
            ("prandtlNumber", air.PrandtlNumber, "1"),
        ];

    private static string Json(Air air) =>
        JsonText.Of(json =>
        {
            json.WriteStartObject("state");
            Write(json, State(air.State!));
            json.WriteEndObject();
            Write(json, Properties(air));
            json.WriteString("model", Model(air));
            json.WriteBoolean("insideStatedRange", air.IsInsideStatedRange);
            json.Texts("warnings", air.Warnings);
        });

    private static void Write(
        Utf8JsonWriter json,
        IEnumerable<(string Name, double Value, string Unit)> values
    )
    {
        foreach (var (name, value, unit) in values)
        {
            json.WriteStartObject(name);
            json.Number("value", value);
            json.WriteString("unit", unit);
            json.WriteEndObject();
        }
    }

    private static string Table(Air air)
    {
        var lines = State(air.State!).Concat(Properties(air)).Select(Line);
        var inside = air.IsInsideStatedRange ? "inside" : "outside";
        return $"{string.Concat(lines)}{Model(air)}; {inside} its stated range\n";
    }

    private static string Line((string Name, double Value, string Unit) row)
    {
        var unit = row.Unit == "1" ? "" : row.Unit;
        var line = string.Create(
            CultureInfo.InvariantCulture,
            $"{row.Name, -18}  {row.Value, 14:G8}  {unit}"
        );
        return line.TrimEnd() + "\n";
    }
}
