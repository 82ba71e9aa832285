using System.Text.Json;

namespace ColumnTool.Questions;

/// <summary>Values of JSON, read without exceptions of a reader.</summary>
internal static class JsonRead
{
    private const int Longest = 40;

    /// <summary>A text.</summary>
    /// <exception cref="FormatException">It holds only half of a surrogate pair.</exception>
    public static string Text(JsonElement json)
    {
        try
        {
            return json.GetString()!;
        }
        catch (InvalidOperationException)
        {
            throw new FormatException("a text holds only half of a surrogate pair; write both halves.");
        }
    }

    /// <summary>The name of a member.</summary>
    /// <exception cref="FormatException">It holds only half of a surrogate pair.</exception>
    public static string Name(JsonProperty member)
    {
        try
        {
            return member.Name;
        }
        catch (InvalidOperationException)
        {
            throw new FormatException("a name holds only half of a surrogate pair; write both halves.");
        }
    }

    /// <summary>A finite number; null if it is none.</summary>
    public static double? Number(JsonElement json) =>
        json.ValueKind == JsonValueKind.Number && json.TryGetDouble(out var number) && double.IsFinite(number)
            ? number
            : null;

    /// <summary>A value as it was written, if it is short.</summary>
    public static string Shown(JsonElement json)
    {
        var text = json.GetRawText();
        return text.Length <= Longest ? text : $"{text[..Longest]}…";
    }
}
