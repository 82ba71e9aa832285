using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Documents;

/// <summary>Writes a column document of version 1.</summary>
internal static class DocumentWriter
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        // Units stay readable; the text is data, never part of a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The document as text.</summary>
    public static string Write(ColumnDocument document)
    {
        RequireNameable(document);
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("column", 1);
            if (document.Name is { } name)
            {
                json.WriteString("name", name);
            }

            WriteAir(json, document.Air);
            WriteOptions(json, document.Options);
            json.WriteStartArray("sections");
            foreach (var section in document.Bore.Sections)
            {
                json.WriteStartObject();
                WriteSection(json, section);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteFarEnd(json, document.Bore.FarEnd);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }

    private static void RequireNameable(ColumnDocument document)
    {
        if (document.Bore.Holes.Count > 0 || document.Bore.Branches.Count > 0)
        {
            throw new NotSupportedException(
                "The bore has tone holes or side branches; version 1 of the document has no name for them."
            );
        }

        if (document.Options.Fingering != Fingering.AllOpen)
        {
            throw new NotSupportedException(
                "The options have a fingering; version 1 of the document has no name for it."
            );
        }
    }

    private static void WriteAir(Utf8JsonWriter json, Air air)
    {
        json.WriteStartObject("air");
        if (air.State is { } state)
        {
            json.WriteString("temperature", $"{ExactText.Of(state.Temperature.DegreesCelsius)} °C");
            json.WriteString("humidity", $"{ExactText.Of(state.Humidity.Percent)} %");
            json.WriteString("pressure", $"{ExactText.Of(state.Pressure.Kilopascals)} kPa");
            json.WriteString("co2", CarbonDioxide(state));
        }
        else
        {
            var gas = air.Constants;
            json.WriteString("speedOfSound", $"{ExactText.Of(gas.SpeedOfSound)} m/s");
            json.WriteString("density", $"{ExactText.Of(gas.Density)} kg/m³");
            json.WriteString("viscosity", $"{ExactText.Of(gas.Viscosity)} Pa·s");
            json.WriteString("conductivity", $"{ExactText.Of(gas.Conductivity)} W/(m·K)");
            json.WriteString("heatCapacity", $"{ExactText.Of(gas.HeatCapacity)} J/(kg·K)");
            json.WriteNumber("heatCapacityRatio", gas.HeatCapacityRatio);
        }

        json.WriteEndObject();
    }

    private static string CarbonDioxide(AirState state)
    {
        var ratio = state.CarbonDioxide;
        return ExactText.Of(
            ratio.DecimalFractions,
            text => QuantityText.ParseRatio(text).DecimalFractions,
            (ratio.PartsPerMillion, "ppm"),
            (ratio.Percent, "%"),
            (ratio.PartsPerThousand, "‰"),
            (ratio.PartsPerBillion, "ppb"),
            (ratio.PartsPerTrillion, "ppt")
        );
    }

    private static void WriteOptions(Utf8JsonWriter json, ColumnOptions options)
    {
        json.WriteString(
            "losses",
            options.Losses switch
            {
                WallLosses.Full => "full",
                WallLosses.None => "none",
                WallLosses.LargeTube => "large-tube",
                var other => throw NoName(other.ToString()),
            }
        );
        json.WriteString(
            "wavefronts",
            options.Wavefronts switch
            {
                Wavefronts.Automatic => "automatic",
                Wavefronts.Multimodal => "multimodal",
                Wavefronts.Curved => "curved",
                Wavefronts.Sloped => "sloped",
                Wavefronts.Plane => "plane",
                var other => throw NoName(other.ToString()),
            }
        );
        if (options.Modes is { } modes)
        {
            json.WriteNumber("modes", modes);
        }

        json.WriteString("blownEnd", options.BlownEnd.IsOpen ? "open" : "closed");
        if (options.BlownEnd.IsOpen)
        {
            json.WriteString("correction", Metres(options.BlownEnd.CorrectionMetres));
        }
    }

    private static void WriteSection(Utf8JsonWriter json, Section section)
    {
        switch (section)
        {
            case CylinderSection cylinder:
                json.WriteString("shape", "cylinder");
                json.WriteString("diameter", Metres(2 * cylinder.WallAt(0).Radius));
                json.WriteString("length", Metres(cylinder.LengthMetres));
                break;
            case ConeSection cone:
                json.WriteString("shape", "cone");
                json.WriteString("from", Metres(2 * cone.WallAt(0).Radius));
                json.WriteString("to", Metres(2 * cone.WallAt(cone.LengthMetres).Radius));
                json.WriteString("length", Metres(cone.LengthMetres));
                break;
            case HornSection horn:
                json.WriteString("shape", "horn");
                json.WriteString("law", HornWords.Of(horn.Law));
                json.WriteString("from", Metres(2 * horn.InletRadius));
                json.WriteString("to", Metres(2 * horn.OutletRadius));
                json.WriteString("length", Metres(horn.LengthMetres));
                if (horn.Exponent is { } exponent)
                {
                    json.WriteNumber("exponent", exponent);
                }

                break;
            case ProfileSection profile:
                json.WriteString("shape", "profile");
                json.WriteString("join", profile.Join == ProfileJoin.Smooth ? "smooth" : "straight");
                WritePoints(json, profile);
                break;
            default:
                throw NoName(section.GetType().Name);
        }
    }

    private static void WritePoints(Utf8JsonWriter json, ProfileSection profile)
    {
        json.WriteStartArray("points");
        for (var i = 0; i < profile.Positions.Count; i++)
        {
            json.WriteStartArray();
            json.WriteStringValue(Metres(profile.Positions[i]));
            json.WriteStringValue(Metres(2 * profile.WallAt(profile.Positions[i]).Radius));
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void WriteFarEnd(Utf8JsonWriter json, BoreEnd end)
    {
        json.WriteStartObject("farEnd");
        switch (end)
        {
            case OpenEnd open:
                json.WriteString("kind", "open");
                json.WriteString("wall", Metres(open.WallMetres));
                break;
            case BaffledEnd:
                json.WriteString("kind", "baffle");
                break;
            case ClosedEnd:
                json.WriteString("kind", "closed");
                break;
            case IdealOpenEnd:
                json.WriteString("kind", "ideal");
                break;
            default:
                throw NoName(end.GetType().Name);
        }

        json.WriteEndObject();
    }

    private static string Metres(double metres) =>
        ExactText.Of(
            metres,
            text => QuantityText.ParseLength(text).Meters,
            (metres * 1000, "mm"),
            (metres, "m")
        );

    private static NotSupportedException NoName(string what) =>
        new($"Version 1 of the column document has no name for {what}.");
}
