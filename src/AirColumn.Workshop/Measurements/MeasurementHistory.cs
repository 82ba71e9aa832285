using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using AirColumn.Documents;
using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Measurements;

/// <summary>
/// The history of one tube's measurements while it was trimmed, kept in a small file: JSON, each quantity a text with its unit. Immutable.
/// </summary>
/// <remarks>
/// <code>
/// { "measurements": 1, "taken": [ { "when": "2026-05-02T09:30:00+00:00", "cut": "1120 mm", "heard": "70.31 Hz",
///   "standardUncertaintyCents": 0.4, "temperature": "20 °C", "humidity": "50 %", "joints": "dry", "stopsShort": "16 mm", "recording": "…" } ] }
/// </code>
/// The joints are dry (the default) or home; stopsShort is present only if it was measured.
/// The file holds measurements only. Everything else is computed from the parts each time, so a better caliper reading improves all results.
/// </remarks>
public sealed class MeasurementHistory
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        // The text is data for programs, never part of a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly ImmutableArray<TubeMeasurement> taken;

    private MeasurementHistory(ImmutableArray<TubeMeasurement> taken) => this.taken = taken;

    /// <summary>Nothing heard yet.</summary>
    public static MeasurementHistory Empty { get; } = new([]);

    /// <summary>The measurements in the order in which they were added.</summary>
    public IReadOnlyList<TubeMeasurement> Taken => taken;

    /// <summary>
    /// This history with one more measurement; a measurement of the same recording is replaced, so no recording counts twice.
    /// </summary>
    /// <param name="measurement">The measurement to add.</param>
    /// <returns>The new history.</returns>
    public MeasurementHistory With(TubeMeasurement measurement)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        return new([
            .. taken.Where(old => old.Recording.Length == 0 || old.Recording != measurement.Recording),
            measurement,
        ]);
    }

    /// <summary>Reads a history.</summary>
    /// <param name="json">Its text, up to a million characters.</param>
    /// <returns>The history.</returns>
    /// <exception cref="FormatException">The text is not a valid history; the message names the place and the allowed values.</exception>
    public static MeasurementHistory Read(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return JsonFile.Read(json, "The history", "{ \"measurements\": 1", History);
    }

    private static MeasurementHistory History(PartsObject file)
    {
        if (file.Number("measurements") is not 1)
        {
            throw file.Wrong("measurements", "it must be 1, the version of this format");
        }

        var history = new MeasurementHistory([.. file.Objects("taken").Select(Measurement)]);
        file.Done();
        return history;
    }

    /// <summary>The history as <see cref="Read"/> reads it, with '\n' at the ends of lines.</summary>
    /// <returns>The text of the history.</returns>
    public string Write()
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("measurements", 1);
            json.WriteStartArray("taken");
            foreach (var one in taken)
            {
                json.WriteStartObject();
                json.WriteString(
                    "when",
                    one.When.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)
                );
                json.WriteString("cut", Text(one.Cut.Millimeters, "mm"));
                json.WriteString("heard", Text(one.Heard.Hertz, "Hz"));
                json.WriteNumber("standardUncertaintyCents", one.StandardUncertaintyCents);
                json.WriteString("temperature", Text(one.Air.State!.Temperature.DegreesCelsius, "°C"));
                json.WriteString("humidity", Text(one.Air.State.Humidity.Percent, "%"));
                json.WriteString("joints", one.Joints == JointState.Home ? "home" : "dry");
                if (one.StopsShort is { } stops)
                {
                    json.WriteString("stopsShort", Text(stops.Millimeters, "mm"));
                }

                json.WriteString("recording", one.Recording);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static string Text(double value, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{value:G12} {unit}");

    private static TubeMeasurement Measurement(PartsObject one)
    {
        var when = one.Text("when");
        if (
            !DateTimeOffset.TryParse(
                when,
                CultureInfo.InvariantCulture,
                DateTimeStyles.AssumeUniversal,
                out var time
            )
        )
        {
            throw one.Wrong("when", $"'{when}' is not a time; write, for example, 2026-05-02T09:30:00+00:00");
        }

        var cut = one.Size("cut");
        var heard = one.Quantity("heard", QuantityText.ParseFrequency);
        var temperature = one.Quantity("temperature", QuantityText.ParseTemperature);
        var humidity = one.Quantity("humidity", QuantityText.ParseRelativeHumidity);
        var uncertainty = one.Number("standardUncertaintyCents");
        var recording = one.TextIfAny("recording") ?? "";
        var joints = one.TextIfAny("joints") switch
        {
            null or "dry" => JointState.Dry,
            "home" => JointState.Home,
            var other => throw one.Wrong("joints", $"'{other}' is not known; write dry or home"),
        };
        var stopsShort = one.SizeIfAny("stopsShort");
        one.Done();
        return one.Make(() =>
            new TubeMeasurement(time, cut, heard, uncertainty, Air.At(temperature, humidity), recording)
            {
                Joints = joints,
                StopsShort = stopsShort,
            }
        );
    }

    /// <summary>Number of notes heard.</summary>
    /// <returns>Number of notes, as text.</returns>
    public override string ToString() => FormattableString.Invariant($"{Taken.Count} notes heard");
}
