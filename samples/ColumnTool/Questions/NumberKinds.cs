using System.Globalization;
using System.Text.Json;
using ColumnTool.Answers;
using Shared;
using UnitsNet;

namespace ColumnTool.Questions;

/// <summary>A number in a range.</summary>
internal sealed class NumberKind(double min, double max, string unit) : Kind<double>
{
    public override double Read(IReadOnlyList<string> texts) =>
        Checked(Options.Number(texts[0]), $"'{texts[0]}'");

    public override double Read(JsonElement json) => Checked(JsonRead.Number(json), JsonRead.Shown(json));

    public override void WriteSchema(Utf8JsonWriter schema, string description) =>
        Schema.Type(
            schema,
            ["number"],
            description,
            more =>
            {
                more.WriteNumber("minimum", min);
                more.WriteNumber("maximum", max);
            }
        );

    private double Checked(double? number, string shown) =>
        number is { } value && value >= min && value <= max
            ? value
            : throw new FormatException(
                $"{shown} is not allowed; write a number from {Options.Show(min, unit)} to {Options.Show(max, unit)}."
            );
}

/// <summary>A whole number in a range.</summary>
internal sealed class WholeKind(int min, int max) : Kind<int>
{
    public override int Read(IReadOnlyList<string> texts) =>
        Checked(
            int.TryParse(
                texts[0],
                NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var number
            )
                ? number
                : null,
            $"'{texts[0]}'"
        );

    // 3.0 is the integer 3 to JSON schema.
    public override int Read(JsonElement json) =>
        Checked(
            JsonRead.Number(json) is { } number && Math.Truncate(number) == number && Math.Abs(number) < 1e9
                ? (int)number
                : null,
            JsonRead.Shown(json)
        );

    public override void WriteSchema(Utf8JsonWriter schema, string description) =>
        Schema.Type(
            schema,
            ["integer"],
            description,
            more =>
            {
                more.WriteNumber("minimum", min);
                more.WriteNumber("maximum", max);
            }
        );

    private int Checked(int? number, string shown) =>
        number is { } value && value >= min && value <= max
            ? value
            : throw new FormatException(
                $"{shown} is not allowed; write a whole number from {Options.Show(min, "")} to {Options.Show(max, "")}."
            );
}

/// <summary>A frequency: a number of Hz, or a text with its unit.</summary>
internal sealed class FrequencyKind : Kind<Frequency>
{
    public override Frequency Read(IReadOnlyList<string> texts) => Options.Hertz(texts[0]);

    public override Frequency Read(JsonElement json) =>
        json.ValueKind == JsonValueKind.String ? Options.Hertz(JsonRead.Text(json))
        : JsonRead.Number(json) is { } hertz ? Frequency.FromHertz(hertz)
        : throw new FormatException(
            $"{JsonRead.Shown(json)} is not allowed; write a number of Hz, or a text with a unit, such as \"0.6 kHz\"."
        );

    public override void WriteSchema(Utf8JsonWriter schema, string description) =>
        Schema.Type(schema, ["number", "string"], description);
}
