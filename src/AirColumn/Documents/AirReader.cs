using UnitsNet;

namespace AirColumn.Documents;

/// <summary>Reads "air": a state or constants throughout, or states along the bore.</summary>
internal static class AirReader
{
    private const string StateExample = "{ \"temperature\": \"20 °C\", \"humidity\": \"50 %\" }";

    private const string Breath = "{ \"state\": \"breath\" }";

    private const string NameKey = "state"; // of a state that has a name

    private const string ModelKey = "model";

    private static readonly string[] Four = ["temperature", "humidity", "pressure", "co2"];

    // How air may be given, and by which keys; those of the first two are known to version 1.
    private static readonly (string Name, string[] Keys)[] Ways =
    [
        ("a state", [.. Four, NameKey]),
        (
            "constants",
            ["speedOfSound", "density", "viscosity", "conductivity", "heatCapacity", "heatCapacityRatio"]
        ),
        ("a change along the bore", ["from", "to", "over", "decay"]),
        ("a table along the bore", ["points"]),
    ];

    private static readonly string[] Known = [.. Four, .. Ways[1].Keys];

    private static readonly string[] New = [NameKey, ModelKey, .. Ways[2..].SelectMany(way => way.Keys)];

    private static RelativeHumidity RoomHumidity => RelativeHumidity.FromPercent(50);

    /// <summary>Reads the air, or takes the air of a room if there is none.</summary>
    public static AirProfile Read(DocumentValue? value)
    {
        if (value is null)
        {
            return Air.At(Temperature.FromDegreesCelsius(20), RoomHumidity);
        }

        var air = DocumentObject.Of(value, StateExample);
        air.AllowOnly(Known, New);
        var ways = Ways.Select((way, i) => (way.Name, Key: way.Keys.FirstOrDefault(air.Has), Index: i))
            .Where(way => way.Key is not null)
            .ToList();
        if (ways.Count > 1)
        {
            throw new ColumnDocumentException(
                air.PathOf(ways[1].Key!),
                $"{air.Path} gives both {ways[0].Name} ({ways[0].Key}) and {ways[1].Name} ({ways[1].Key}); give one of the two."
            );
        }

        var index = ways.Count == 0 ? 0 : ways[0].Index;
        if (index > 0 && air.Optional(ModelKey) is { } useless)
        {
            throw new ColumnDocumentException(
                useless.Path,
                $"{useless.Path} has a meaning only beside a temperature; leave it out."
            );
        }

        return index switch
        {
            0 => Uniform(air),
            1 => Constants(air),
            2 => Change(air),
            _ => Table(air),
        };
    }

    private static Air Uniform(DocumentObject air)
    {
        var state = State(air);
        return air.Optional(ModelKey) is { } model
            ? Air.At(state, Vocabulary.AirModels.Read(model))
            : Air.At(state);
    }

    private static AirProfile Change(DocumentObject air)
    {
        var from = State(air.Required("from", Breath));
        var to = State(air.Required("to", StateExample));
        var over = air.Optional("over")?.Length("300 mm");
        if (air.Optional("decay") is not { } distance)
        {
            return Checked.Make(air, () => AirProfile.Linear(from, to, over));
        }

        if (over is not null)
        {
            throw new ColumnDocumentException(
                distance.Path,
                $"{air.Path} gives both the length of a steady change (over) and the length of a fading one (decay); give one of the two."
            );
        }

        var decay = distance.Length("300 mm");
        return Checked.Make(air, () => AirProfile.Exponential(from, to, decay));
    }

    private static AirProfile Table(DocumentObject air)
    {
        const string Allowed =
            "it must be places and the air there, such as [[\"0 mm\", "
            + Breath
            + "], [\"300 mm\", "
            + StateExample
            + "]].";
        var list = air.Required("points", "[ … ]");
        var points = list.List(BoreReader.Most, Allowed).Select(Point).ToList();
        return Checked.Make(air, () => AirProfile.Tabulated(points));

        static AirProfilePoint Point(DocumentValue value)
        {
            var pair = value.List(2, Allowed);
            return pair.Count == 2
                ? new AirProfilePoint(pair[0].Length("300 mm"), State(pair[1]))
                : throw value.Wrong(Allowed);
        }
    }

    // The air at one place.
    private static AirState State(DocumentValue value)
    {
        var state = DocumentObject.Of(value, StateExample);
        state.AllowOnly(Ways[0].Keys);
        return State(state);
    }

    private static AirState State(DocumentObject air)
    {
        if (air.Optional(NameKey) is { } name)
        {
            _ = name.Word("breath");
            return Four.FirstOrDefault(air.Has) is { } key
                ? throw new ColumnDocumentException(
                    air.PathOf(key),
                    $"{air.Path} gives both a state by name (state) and a value that the state sets ({key}); give one of the two."
                )
                : AirState.ExhaledBreath;
        }

        var temperature = air.Required("temperature", "\"20 °C\"")
            .Quantity(QuantityText.ParseTemperature, "20 °C");
        var humidity =
            air.Optional("humidity")?.Quantity(QuantityText.ParseRelativeHumidity, "50 %") ?? RoomHumidity;
        var pressure = air.Optional("pressure")?.Quantity(QuantityText.ParsePressure, "101.325 kPa");
        var carbonDioxide = air.Optional("co2")?.Quantity(QuantityText.ParseRatio, "400 ppm");
        return Checked.Make(
            air,
            () => new AirState(temperature, humidity, pressure, carbonDioxide),
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
