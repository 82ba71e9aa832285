using System.Text.Json;

namespace AirColumn.Documents;

/// <summary>Writes "air".</summary>
internal static class AirWriter
{
    /// <summary>The air as a member of the document.</summary>
    public static void Write(Utf8JsonWriter json, AirProfile air)
    {
        json.WriteStartObject("air");
        switch (air)
        {
            case AirProfile.UniformAir { Air: var uniform }:
                WriteUniform(json, uniform);
                break;
            case AirProfile.LinearAir linear:
                WriteState(json, "from", linear.From);
                WriteState(json, "to", linear.To);
                if (linear.Over is { } over)
                {
                    json.WriteString("over", ExactText.Metres(over));
                }

                break;
            case AirProfile.ExponentialAir exponential:
                WriteState(json, "from", exponential.From);
                WriteState(json, "to", exponential.Towards);
                json.WriteString("decay", ExactText.Metres(exponential.Decay));
                break;
            case AirProfile.TabulatedAir table:
                WritePoints(json, table);
                break;
            default:
                throw new InvalidOperationException($"Documents have no name for {air.GetType().Name}.");
        }

        json.WriteEndObject();
    }

    private static void WriteUniform(Utf8JsonWriter json, Air air)
    {
        if (air.State is { } state)
        {
            WriteState(json, state);
            // Left to the state where that says the same.
            if (!Air.At(state).Equals(air))
            {
                json.WriteString("model", Vocabulary.AirModels.For(air.Model));
            }

            return;
        }

        var gas = air.Constants;
        json.WriteString("speedOfSound", $"{ExactText.Of(gas.SpeedOfSound)} m/s");
        json.WriteString("density", $"{ExactText.Of(gas.Density)} kg/m³");
        json.WriteString("viscosity", $"{ExactText.Of(gas.Viscosity)} Pa·s");
        json.WriteString("conductivity", $"{ExactText.Of(gas.Conductivity)} W/(m·K)");
        json.WriteString("heatCapacity", $"{ExactText.Of(gas.HeatCapacity)} J/(kg·K)");
        json.WriteNumber("heatCapacityRatio", gas.HeatCapacityRatio);
    }

    private static void WritePoints(Utf8JsonWriter json, AirProfile.TabulatedAir table)
    {
        json.WriteStartArray("points");
        foreach (var (metres, state) in table.Points)
        {
            json.WriteStartArray();
            json.WriteStringValue(ExactText.Metres(metres));
            json.WriteStartObject();
            WriteState(json, state);
            json.WriteEndObject();
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void WriteState(Utf8JsonWriter json, string key, AirState state)
    {
        json.WriteStartObject(key);
        WriteState(json, state);
        json.WriteEndObject();
    }

    private static void WriteState(Utf8JsonWriter json, AirState state)
    {
        json.WriteString("temperature", $"{ExactText.Of(state.Temperature.DegreesCelsius)} °C");
        json.WriteString("humidity", $"{ExactText.Of(state.Humidity.Percent)} %");
        json.WriteString("pressure", $"{ExactText.Of(state.Pressure.Kilopascals)} kPa");
        var ratio = state.CarbonDioxide;
        json.WriteString(
            "co2",
            ExactText.Of(
                ratio.DecimalFractions,
                text => QuantityText.ParseRatio(text).DecimalFractions,
                (ratio.PartsPerMillion, "ppm"),
                (ratio.Percent, "%"),
                (ratio.DecimalFractions, "mol/mol")
            )
        );
    }
}
