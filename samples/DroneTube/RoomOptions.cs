using System.CommandLine;
using AirColumn;
using AirColumn.Documents;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The options of every verb that say what air and what tuning.</summary>
internal sealed class RoomOptions
{
    private readonly Option<Temperature?> temperature = Options.Parsed<Temperature?>(
        "--temperature",
        "Temperature of the air in the tube. [default: 20 °C]",
        text => Room(QuantityText.ParseTemperature(text), RelativeHumidity.Zero).State!.Temperature
    );

    private readonly Option<RelativeHumidity?> humidity = Options.Parsed<RelativeHumidity?>(
        "--humidity",
        "Relative humidity of the air in the tube. [default: 50 %]",
        text => Room(null, QuantityText.ParseRelativeHumidity(text)).State!.Humidity
    );

    private readonly Option<Frequency?> reference = Options.Parsed<Frequency?>(
        "--reference",
        "Frequency of A4, the A above middle C, in Hz or with a unit. [default: 440 Hz]",
        text => Reference(Options.Hertz(text))
    );

    // Pitch standards of five centuries lie between 370 and 570 Hz (memory); what is farther off is a slip.
    private static Frequency Reference(Frequency a4) =>
        a4.Hertz is >= 300 and <= 600
            ? a4
            : throw new FormatException(
                Show.Text(
                    $"{a4.Hertz:G6} Hz is not possible for A4, the A above middle C; write 300 Hz to 600 Hz, usually 440 Hz. The note of the tube is --note."
                )
            );

    public IEnumerable<Option> All => [temperature, humidity, reference];

    public Tuning Tuning(ParseResult parsed) =>
        parsed.GetValue(reference) is { } a4
            ? AirColumn.Tuning.Concert.WithReference(a4)
            : AirColumn.Tuning.Concert;

    public Air Air(ParseResult parsed) => Room(parsed.GetValue(temperature), parsed.GetValue(humidity));

    private static Air Room(Temperature? temperature, RelativeHumidity? humidity) =>
        AirColumn.Air.At(
            temperature ?? Temperature.FromDegreesCelsius(20),
            humidity ?? RelativeHumidity.FromPercent(50)
        );
}
