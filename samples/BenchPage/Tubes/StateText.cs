using System.Text.Json;
using System.Text.Json.Nodes;
using BenchPage.Engine;

namespace BenchPage.Tubes;

/// <summary>A bench as text, as it is kept and linked.</summary>
public static class StateText
{
    public static string Write(BenchState state) =>
        JsonSerializer.Serialize(state, MessageJson.Default.BenchState);

    /// <summary>Reads it. What is not said, as by an older version, is as on a bench to begin with: by itself the reader would take zeros.</summary>
    /// <exception cref="JsonException">It is not readable.</exception>
    public static BenchState Read(string text)
    {
        var usual = JsonSerializer.SerializeToNode(new BenchState("", ""), MessageJson.Default.BenchState)!;
        if (JsonNode.Parse(text) is not JsonObject said)
        {
            throw new JsonException("A bench is an object.");
        }

        Complete(said, usual.AsObject());
        return said.Deserialize(MessageJson.Default.BenchState)!;
    }

    private static void Complete(JsonObject said, JsonObject usual)
    {
        foreach (var (name, value) in usual)
        {
            if (!said.TryGetPropertyValue(name, out var there))
            {
                said[name] = value?.DeepClone();
            }
            else if (there is JsonObject inner && value is JsonObject wanted)
            {
                Complete(inner, wanted);
            }
        }
    }
}
