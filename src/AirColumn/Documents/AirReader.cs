using AirColumn.Gases;
using UnitsNet;

namespace AirColumn.Documents;

/// <summary>Reads "air": a state or constants.</summary>
internal static class AirReader
{
    private static readonly string[] StateKeys = ["temperature", "humidity", "pressure", "co2"];

    private static readonly string[] ConstantKeys =
    [
        "speedOfSound",
        "density",
        "viscosity",
        "conductivity",
        "heatCapacity",
        "heatCapacityRatio",
    ];

    /// <summary>Room air, where a document does not mention air.</summary>
    private static Air Room => Air.At(Temperature.FromDegreesCelsius(20), RoomHumidity);

    private static RelativeHumidity RoomHumidity => RelativeHumidity.FromPercent(50);

    /// <summary>Reads the air, or takes the air of a room if there is none.</summary>
    public static Air Read(DocumentValue? value)
    {
        if (value is null)
        {
            return Room;
        }

        var air = DocumentObject.Of(value, "{ \"temperature\": \"20 °C\", \"humidity\": \"50 %\" }");
        air.AllowOnly([.. StateKeys, .. ConstantKeys]);
        var state = StateKeys.FirstOrDefault(air.Has);
        var constant = ConstantKeys.FirstOrDefault(air.Has);
        return (state, constant) switch
        {
            (not null, not null) => throw new ColumnDocumentException(
                air.PathOf(constant),
                $"{air.Path} gives both a state ({state}) and constants ({constant}); give one of the two."
            ),
            (_, not null) => Constants(air),
            _ => State(air),
        };
    }

    private static Air State(DocumentObject air)
    {
        var temperature = air.Required("temperature", "\"20 °C\"")
            .Quantity(QuantityText.ParseTemperature, "20 °C");
        var humidity =
            air.Optional("humidity")?.Quantity(QuantityText.ParseRelativeHumidity, "50 %") ?? RoomHumidity;
        var pressure = air.Optional("pressure")?.Quantity(QuantityText.ParsePressure, "101.325 kPa");
        var carbonDioxide = air.Optional("co2")?.Quantity(QuantityText.ParseRatio, "400 ppm");
        return Checked.Make(
            air,
            () => Air.At(temperature, humidity, pressure, carbonDioxide),
            ("carbonDioxide", air.PathOf("co2"))
        );
    }

    private static Air Constants(DocumentObject air)
    {
        var speed = Quantity(air, "speedOfSound", QuantityText.ParseSpeed, "343.37 m/s");
        var density = Quantity(air, "density", QuantityText.ParseDensity, "1.2045 kg/m³");
        var viscosity = Quantity(air, "viscosity", QuantityText.ParseDynamicViscosity, "1.814e-5 Pa·s");
        var conductivity = Quantity(
            air,
            "conductivity",
            QuantityText.ParseThermalConductivity,
            "0.0258 W/(m·K)"
        );
        var capacity = Quantity(air, "heatCapacity", QuantityText.ParseSpecificHeatCapacity, "1006 J/(kg·K)");
        var ratio = air.Required("heatCapacityRatio", "1.4019").Number();
        return Checked.Make(
            air,
            () => Air.FromConstants(speed, density, viscosity, conductivity, capacity, ratio)
        );
    }

    private static T Quantity<T>(DocumentObject air, string key, Func<string, T> parse, string example) =>
        air.Required(key, $"\"{example}\"").Quantity(parse, example);
}
