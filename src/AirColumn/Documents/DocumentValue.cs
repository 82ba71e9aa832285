using System.Text.Json;
using UnitsNet;

namespace AirColumn.Documents;

/// <summary>A JSON value of a document.</summary>
/// <param name="Path">Where it is, such as "sections[2].length".</param>
/// <param name="Json">The value.</param>
/// <param name="Version">The version of the format that the document is written in.</param>
internal sealed record DocumentValue(string Path, JsonElement Json, int Version)
{
    /// <summary>The value as a person would write it, short, for messages.</summary>
    private string Shown =>
        Json.ValueKind switch
        {
            JsonValueKind.Object => "an object",
            JsonValueKind.Array => "a list",
            JsonValueKind.String => Quote.Of(Text()),
            _ => Quote.Cut(Json.GetRawText()),
        };

    /// <summary>The error that says what the value is and what it must be.</summary>
    public ColumnDocumentException Wrong(string allowed) =>
        new(Path, $"{(Path.Length == 0 ? "The document" : Path)} is {Shown}; {allowed}");

    /// <summary>A text.</summary>
    /// <param name="allowed">What it must be, for the message.</param>
    public string Text(string allowed = "it must be a text.")
    {
        if (Json.ValueKind != JsonValueKind.String)
        {
            throw Wrong(allowed);
        }

        try
        {
            return Json.GetString()!;
        }
        catch (InvalidOperationException problem)
        {
            // Half of a surrogate pair, written as an escape.
            throw new ColumnDocumentException(
                Path,
                $"{Path} holds only half of a surrogate pair; write both halves.",
                problem
            );
        }
    }

    /// <summary>A plain number.</summary>
    public double Number() =>
        Json.ValueKind == JsonValueKind.Number && Json.TryGetDouble(out var number) && double.IsFinite(number)
            ? number
            : throw Wrong("it must be a number without a unit and without quotation marks.");

    /// <summary>Yes or no.</summary>
    public bool Truth() =>
        Json.ValueKind switch
        {
            JsonValueKind.True => true,
            JsonValueKind.False => false,
            _ => throw Wrong("it must be true or false, without quotation marks."),
        };

    /// <summary>A whole number.</summary>
    /// <param name="least">The least that is allowed.</param>
    /// <param name="most">The greatest.</param>
    public long Whole(long least, long most)
    {
        var number = Number();
        return number >= least && number <= most && number == Math.Floor(number)
            ? (long)number
            : throw Wrong(
                $"it must be a whole number from {Require.Show(least, "")} to {Require.Show(most, "")}."
            );
    }

    /// <summary>A list.</summary>
    /// <param name="most">How many items there may be.</param>
    /// <param name="allowed">What it must be, for the message.</param>
    public IReadOnlyList<DocumentValue> List(int most, string allowed)
    {
        if (Json.ValueKind != JsonValueKind.Array)
        {
            throw Wrong(allowed);
        }

        var count = Json.GetArrayLength();
        if (count > most)
        {
            throw new ColumnDocumentException(
                Path,
                $"{Path} has {Require.Show(count, "")} items; at most {Require.Show(most, "")} are allowed."
            );
        }

        return
        [
            .. Json.EnumerateArray().Select((item, i) => new DocumentValue($"{Path}[{i}]", item, Version)),
        ];
    }

    /// <summary>A length.</summary>
    public Length Length(string example = "25 mm") => Quantity(QuantityText.ParseLength, example);

    /// <summary>A quantity, written as a number and a unit in a text.</summary>
    /// <param name="parse">One of the methods of <see cref="QuantityText"/>.</param>
    /// <param name="example">A quantity of that kind.</param>
    public T Quantity<T>(Func<string, T> parse, string example)
    {
        if (Json.ValueKind == JsonValueKind.Number)
        {
            var unit = example[example.IndexOf(' ', StringComparison.Ordinal)..];
            throw new ColumnDocumentException(
                Path,
                $"{Path} is {Shown}, a number without a unit; write \"{Shown}{unit}\"."
            );
        }

        var text = Text($"it must be a number and a unit in quotation marks, such as \"{example}\".");
        try
        {
            return parse(text);
        }
        catch (FormatException problem)
        {
            throw new ColumnDocumentException(Path, $"{Path}: {problem.Message}", problem);
        }
    }

    /// <summary>One of a few words.</summary>
    public string Word(params string[] known)
    {
        var allowed = $"allowed: {string.Join(", ", known)}.";
        var word = Text(allowed);
        return known.Contains(word, StringComparer.Ordinal) ? word : throw Wrong(allowed);
    }
}
