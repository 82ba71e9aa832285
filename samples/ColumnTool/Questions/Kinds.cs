using AirColumn;
using AirColumn.Documents;
using UnitsNet;

namespace ColumnTool.Questions;

/// <summary>Kinds that several verbs take.</summary>
internal static class Kinds
{
    public static Kind<bool> Switch { get; } = new SwitchKind();

    public static Kind<Frequency> Frequency { get; } = new FrequencyKind();

    public static Kind<Length> Length { get; } =
        new TextKind<Length>(text => QuantityText.ParseLength(text), "25 mm");

    public static Kind<Pitch> Pitch { get; } =
        new TextKind<Pitch>(text => AirColumn.Pitch.Parse(text), "F#3");

    /// <summary>One of several words.</summary>
    public static Kind<T> Word<T>(IReadOnlyDictionary<string, T> words) =>
        new TextKind<T>(
            text =>
                words.TryGetValue(text, out var value)
                    ? value
                    : throw new FormatException(
                        $"'{text}' is not allowed; write one of {string.Join(", ", words.Keys)}."
                    ),
            words.Keys.First(),
            [.. words.Keys]
        );

    /// <summary>Several; a command line has the option again for each.</summary>
    public static Kind<T[]> Many<T>(Kind<T> kind, int most = 1000) => new ListKind<T>(kind, false, 1, most);

    /// <summary>Several; a command line has commas between.</summary>
    public static Kind<T[]> Listed<T>(Kind<T> kind, int least, int most) =>
        new ListKind<T>(kind, true, least, most);
}
