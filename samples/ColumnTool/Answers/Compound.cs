using System.Text.Json;

namespace ColumnTool.Answers;

/// <summary>A number with its unit beside it.</summary>
internal sealed class QuantityField<T>(string name, string unit, string meaning, Func<T, double> value)
    : Field<T>(name, meaning)
{
    private readonly NumberCell<T> number = new(name, unit, meaning, value, "G8", false);

    public override void WriteJson(Utf8JsonWriter json, T of)
    {
        json.WriteStartObject(Encoded);
        json.WritePropertyName("value");
        number.WriteValue(json, of);
        json.WriteString("unit", unit);
        json.WriteEndObject();
    }

    public override void WriteSchema(Utf8JsonWriter schema) =>
        Schema.Type(
            schema,
            ["object"],
            Meaning,
            inside =>
                Schema.Members(
                    inside,
                    [
                        ("value", false, s => Schema.Type(s, ["number"], null)),
                        (
                            "unit",
                            false,
                            s =>
                            {
                                s.WriteStartObject();
                                s.WriteString("const", unit);
                                s.WriteEndObject();
                            }
                        ),
                    ]
                )
        );

    public override void Show(TextPage page, T of) => page.Line(Words.Label(Name), number.Text(of), unit);

    public override IEnumerable<(string Path, string Unit, string Meaning)> Rows() =>
        [(Name, unit, $"{Meaning}: an object with its `value` and its `unit`")];
}

/// <summary>Several members under one name; null where there is no such thing.</summary>
internal sealed class GroupField<T, TPart>(
    string name,
    string meaning,
    Func<T, TPart?> part,
    IReadOnlyList<Field<TPart>> fields
) : Field<T>(name, meaning)
    where TPart : class
{
    public override void WriteJson(Utf8JsonWriter json, T of)
    {
        if (part(of) is not { } inside)
        {
            json.WriteNull(Encoded);
            return;
        }

        json.WriteStartObject(Encoded);
        foreach (var field in fields)
        {
            field.WriteJson(json, inside);
        }

        json.WriteEndObject();
    }

    public override void WriteSchema(Utf8JsonWriter schema) =>
        Schema.Type(
            schema,
            ["object", "null"],
            Meaning,
            inside => Schema.Members(inside, Schema.Members(fields))
        );

    public override void Show(TextPage page, T of)
    {
        if (part(of) is not { } inside)
        {
            return;
        }

        page.Heading(Words.Label(Name));
        foreach (var field in fields)
        {
            field.Show(page, inside);
        }
    }

    public override IEnumerable<(string Path, string Unit, string Meaning)> Rows() =>
        fields.SelectMany(field => field.Rows()).Select(row => ($"{Name}.{row.Path}", row.Unit, row.Meaning));
}

/// <summary>A column document, as it is.</summary>
internal sealed class DocumentField<T>(string name, string meaning, Func<T, string?> json)
    : Field<T>(name, meaning)
{
    public override void WriteJson(Utf8JsonWriter to, T of)
    {
        to.WritePropertyName(Encoded);
        if (json(of) is not { } text)
        {
            to.WriteNullValue();
            return;
        }

        using var document = JsonDocument.Parse(text);
        document.RootElement.WriteTo(to);
    }

    public override void WriteSchema(Utf8JsonWriter schema) =>
        Schema.Type(schema, ["object", "null"], Meaning);

    // A program's matter.
    public override void Show(TextPage page, T of) { }

    public override IEnumerable<(string Path, string Unit, string Meaning)> Rows() =>
        [(Name, "document", Meaning)];
}
