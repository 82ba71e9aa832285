namespace AirColumn.Workshop.Questions;

/// <summary>A question to a maker. Immutable.</summary>
public sealed class Question
{
    internal Question(
        string key,
        string text,
        string? usual,
        IReadOnlyList<string> choices,
        Action<string> take
    ) => (Key, Text, Usual, Choices, Take) = (key, text, usual, choices, take);

    /// <summary>The subject, the same in every language: "mouth.inside"; for a page that has a picture of each.</summary>
    public string Key { get; }

    /// <summary>The question, in English.</summary>
    public string Text { get; }

    /// <summary>The answer that an empty text stands for; null if there is none.</summary>
    public string? Usual { get; }

    /// <summary>The possible answers; empty for free text.</summary>
    public IReadOnlyList<string> Choices { get; }

    /// <summary>Takes the answer, or throws <see cref="FormatException"/>.</summary>
    internal Action<string> Take { get; }

    /// <summary>The question as a console shows it, with its choices and the usual answer.</summary>
    /// <returns>The question, as text.</returns>
    public override string ToString() =>
        Text
        + (Choices.Count > 0 ? $" ({string.Join(", ", Choices)})" : "")
        + (Usual is null ? "" : $" [{Usual}]");
}
