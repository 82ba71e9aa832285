using System.Text.Json;
using ColumnTool.Answers;

namespace ColumnTool.Questions;

/// <summary>What a parameter may be: how it is written on a command line and in JSON, and what the schema says of it.</summary>
internal abstract class Kind<T>
{
    /// <summary>Whether it is a list, of which a command line gives one after the other.</summary>
    public virtual bool IsList => false;

    /// <summary>Whether a command line has the name alone.</summary>
    public virtual bool IsSwitch => false;

    /// <summary>Reads it from a command line.</summary>
    /// <exception cref="FormatException">It is not one; one sentence says so.</exception>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public abstract T Read(IReadOnlyList<string> texts);

    /// <summary>Reads it from JSON.</summary>
    /// <exception cref="FormatException">It is not one; one sentence says so.</exception>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public abstract T Read(JsonElement json);

    /// <summary>The schema of its JSON.</summary>
    public abstract void WriteSchema(Utf8JsonWriter schema, string description);
}

/// <summary>What is a text in JSON too: a quantity with its unit, a pitch, a word.</summary>
internal sealed class TextKind<T>(
    Func<string, T> read,
    string example,
    IReadOnlyCollection<string>? words = null
) : Kind<T>
{
    public override T Read(IReadOnlyList<string> texts) => read(texts[0]);

    public override T Read(JsonElement json) =>
        json.ValueKind == JsonValueKind.String
            ? read(JsonRead.Text(json))
            : throw new FormatException(
                $"{JsonRead.Shown(json)} is not allowed; write a text, such as \"{example}\"."
            );

    public override void WriteSchema(Utf8JsonWriter schema, string description) =>
        Schema.Type(
            schema,
            ["string"],
            description,
            more =>
            {
                if (words is null)
                {
                    return;
                }

                more.WriteStartArray("enum");
                foreach (var word in words)
                {
                    more.WriteStringValue(word);
                }

                more.WriteEndArray();
            }
        );
}

/// <summary>A name alone on a command line; true or false in JSON.</summary>
internal sealed class SwitchKind : Kind<bool>
{
    public override bool IsSwitch => true;

    public override bool Read(IReadOnlyList<string> texts) => true;

    public override bool Read(JsonElement json) =>
        json.ValueKind switch
        {
            JsonValueKind.True => true,
            JsonValueKind.False => false,
            _ => throw new FormatException($"{JsonRead.Shown(json)} is not allowed; write true or false."),
        };

    public override void WriteSchema(Utf8JsonWriter schema, string description) =>
        Schema.Type(schema, ["boolean"], description);
}

/// <summary>Several of a kind: an array in JSON; on a command line the option again for each, or commas between where they allow it.</summary>
internal sealed class ListKind<T>(Kind<T> item, bool isCommaBetween, int least, int most) : Kind<T[]>
{
    public override bool IsList => true;

    public override T[] Read(IReadOnlyList<string> texts)
    {
        string[] items = isCommaBetween
            ? [.. texts.SelectMany(text => text.Split(',', StringSplitOptions.TrimEntries))]
            : [.. texts];
        RequireCount(items.Length);
        return [.. items.Select(text => item.Read([text]))];
    }

    public override T[] Read(JsonElement json)
    {
        if (json.ValueKind != JsonValueKind.Array)
        {
            throw new FormatException($"{JsonRead.Shown(json)} is not allowed; write a list in brackets.");
        }

        RequireCount(json.GetArrayLength());
        var list = new T[json.GetArrayLength()];
        var i = 0;
        foreach (var element in json.EnumerateArray())
        {
            list[i++] = item.Read(element);
        }

        return list;
    }

    public override void WriteSchema(Utf8JsonWriter schema, string description) =>
        Schema.Type(
            schema,
            ["array"],
            description,
            more =>
            {
                more.WriteNumber("minItems", least);
                more.WriteNumber("maxItems", most);
                more.WritePropertyName("items");
                item.WriteSchema(more, "one of them");
            }
        );

    private void RequireCount(int count)
    {
        if (count < least || count > most)
        {
            throw new FormatException(
                least == most
                    ? $"{count} are not possible here; write {most}."
                    : $"{count} are not possible here; write {least} to {most}."
            );
        }
    }
}
