using System.Text.Json.Nodes;

namespace BenchPage.Tubes;

/// <summary>A part of a parts file, as it is written there.</summary>
public sealed class PartText(JsonObject json)
{
    /// <summary>The length of a pipe that is to be found.</summary>
    public const string Open = "open";

    public string Kind => this["part"] ?? "";

    public string Name => this["name"] ?? "";

    public bool IsOpen => Kind == "pipe" && this["length"] == Open;

    /// <summary>A text or number of it, as written; null if it is not there or is an object.</summary>
    public string? this[string key] => json[key] is JsonValue value ? value.ToString() : null;

    /// <summary>A text of an object of it; null if either is not there.</summary>
    public string? Inner(string key, string inner) =>
        json[key] is JsonObject there ? there[inner]?.ToString() : null;

    /// <summary>Whether it has an object there.</summary>
    public bool IsObject(string key) => json[key] is JsonObject;
}
