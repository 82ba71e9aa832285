using System.Globalization;
using System.Text.Json;
using AirColumn.Documents;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Questions;

/// <summary>A part of a parts file that is being made.</summary>
internal sealed class DraftPart
{
    private readonly List<(string Key, object Value)> members = [];

    public DraftPart(string kind, params (string Key, string Text)[] usual)
    {
        this["part"] = kind;
        foreach (var (key, text) in usual)
        {
            this[key] = text;
        }
    }

    private DraftPart() { }

    /// <summary>Whether it has all that it needs.</summary>
    public bool IsWhole { get; set; }

    /// <summary>A text of it, as it was given; null where there is none.</summary>
    public string? this[string key]
    {
        get => members.Find(member => member.Key == key).Value as string;
        set => Set(key, value!);
    }

    /// <summary>Sets a size, kept as it was written.</summary>
    /// <exception cref="FormatException">It is no size.</exception>
    public void Size(string key, string text)
    {
        QuantityText.ParseLength(text);
        this[key] = text;
    }

    /// <summary>Sets a number.</summary>
    /// <exception cref="FormatException">It is no number.</exception>
    public void Number(string key, string text) =>
        Set(
            key,
            double.TryParse(
                text.TrimEnd('°', ' '),
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out var number
            ) && double.IsFinite(number)
                ? number
                : throw new FormatException(QuestionWords.NotANumber(text))
        );

    /// <summary>An object of its own under a key.</summary>
    public DraftPart Inner(string key)
    {
        var inner = new DraftPart();
        Set(key, inner);
        return inner;
    }

    public void Write(Utf8JsonWriter json)
    {
        foreach (var (key, value) in members)
        {
            switch (value)
            {
                case string text:
                    json.WriteString(key, text);
                    break;
                case double number:
                    json.WriteNumber(key, number);
                    break;
                case DraftPart inner:
                    json.WriteStartObject(key);
                    inner.Write(json);
                    json.WriteEndObject();
                    break;
            }
        }
    }

    private void Set(string key, object value)
    {
        var at = members.FindIndex(member => member.Key == key);
        if (at < 0)
        {
            members.Add((key, value));
        }
        else
        {
            members[at] = (key, value);
        }
    }
}
