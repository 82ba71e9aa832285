using System.Text.Json;
using AirColumn.Workshop;
using AirColumn.Workshop.Tubes;
using Shared;

namespace DroneTube;

/// <summary>A plan for other programs: what they get of every tube, the quarter-wave rule and the cautions.</summary>
internal static class PlanJson
{
    public static string Of(TubeBuild build) =>
        JsonText.Of(json =>
        {
            BuildJson.Write(json, build);
            json.Number("referenceHz", build.Tuning.Reference.Hertz);
            json.Number("speedOfSoundMetresPerSecond", build.Air.SpeedOfSound.MetersPerSecond);
            json.Number("centsPerMillimetre", build.CentsPerMillimetre);
            Rule(json, QuarterWaveRule.Of(build));
            Care(json);
        });

    private static void Rule(Utf8JsonWriter json, QuarterWaveRule rule)
    {
        json.WriteStartObject("quarterWaveRule");
        json.Number("totalLengthMetres", rule.TotalLength.Meters);
        json.Number("differenceMetres", rule.Difference.Meters);
        json.Number("cents", rule.Built?.Cents ?? double.NaN);
        json.WriteEndObject();
    }

    private static void Care(Utf8JsonWriter json)
    {
        json.WriteString("precedence", Cautions.First);
        json.WriteStartArray("cautions");
        foreach (var caution in Cautions.All)
        {
            json.WriteStartObject();
            json.WriteString("step", caution.Title);
            json.WriteString("text", caution.Text);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
