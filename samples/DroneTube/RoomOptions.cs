using System.CommandLine;
using AirColumn.Documents;
using AirColumn.Gases;
using AirColumn.Pitches;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The options of every verb that say what air and what tuning.</summary>
internal sealed class RoomOptions
{
    private readonly Option<Temperature?> temperature = Options.Parsed<Temperature?>(
        "--temperature",
        "Of the air in the tube. [default: 20 °C]",
        text => Room(QuantityText.ParseTemperature(text), RelativeHumidity.Zero).State!.Temperature
    );

    private readonly Option<RelativeHumidity?> humidity = Options.Parsed<RelativeHumidity?>(
        "--humidity",
        "Relative humidity of the air in the tube. [default: 50 %]",
        text => Room(null, QuantityText.ParseRelativeHumidity(text)).State!.Humidity
    );

    private readonly Option<Frequency?> reference = Options.Parsed<Frequency?>(
        "--reference",
        "Frequency of A4, in Hz or with a unit. [default: 440 Hz]",
        text => AirColumn.Pitches.Tuning.WithReference(Options.Hertz(text)).Reference
    );

    public IEnumerable<Option> All => [temperature, humidity, reference];

    public Tuning Tuning(ParseResult parsed) =>
        parsed.GetValue(reference) is { } a4
            ? AirColumn.Pitches.Tuning.WithReference(a4)
            : AirColumn.Pitches.Tuning.Concert;

    public Air Air(ParseResult parsed) => Room(parsed.GetValue(temperature), parsed.GetValue(humidity));

    private static Air Room(Temperature? temperature, RelativeHumidity? humidity) =>
        AirColumn.Gases.Air.At(
            temperature ?? Temperature.FromDegreesCelsius(20),
            humidity ?? RelativeHumidity.FromPercent(50)
        );
}
