using System.Globalization;
using System.Text.Json;
using Shared;

namespace ColumnTool.Answers;

/// <summary>One value: a cell of a table, or a member by itself.</summary>
internal abstract class Cell<T>(string name, string unit, string meaning) : Field<T>(name, meaning)
{
    /// <summary>Its unit, or what kind of thing it is.</summary>
    public string Unit => unit;

    /// <summary>Whether columns of it are aligned as numbers are.</summary>
    public abstract bool IsNumber { get; }

    /// <summary>The value alone, as an item of a list.</summary>
    public abstract void WriteValue(Utf8JsonWriter json, T of);

    /// <summary>As CSV has it.</summary>
    public abstract string Csv(T of);

    /// <summary>As people read it.</summary>
    public abstract string Text(T of);

    public override void WriteJson(Utf8JsonWriter json, T of)
    {
        json.WritePropertyName(Encoded);
        WriteValue(json, of);
    }

    public override void Show(TextPage page, T of) =>
        page.Line(Words.Label(Name), Text(of), IsNumber ? Unit : "");

    public override IEnumerable<(string Path, string Unit, string Meaning)> Rows() => [(Name, Unit, Meaning)];
}

/// <summary>A number.</summary>
internal sealed class NumberCell<T>(
    string name,
    string unit,
    string meaning,
    Func<T, double> value,
    string format,
    bool mayLack
) : Cell<T>(name, unit, meaning)
{
    public override bool IsNumber => true;

    public override void WriteValue(Utf8JsonWriter json, T of)
    {
        var number = Checked(of);
        if (double.IsFinite(number))
        {
            json.WriteNumberValue(number);
        }
        else
        {
            json.WriteNullValue();
        }
    }

    public override void WriteSchema(Utf8JsonWriter schema) =>
        Schema.Type(schema, mayLack ? ["number", "null"] : ["number"], $"{Meaning}, {Unit}");

    // Infinite where there is no bound, and nothing where there is no number.
    public override string Csv(T of)
    {
        var number = Checked(of);
        return double.IsNaN(number) ? "" : number.ToString("R", CultureInfo.InvariantCulture);
    }

    public override string Text(T of)
    {
        var number = Checked(of);
        return double.IsNaN(number) ? "" : number.ToString(format, CultureInfo.InvariantCulture);
    }

    private double Checked(T of)
    {
        var number = value(of);
        return mayLack || double.IsFinite(number)
            ? number
            : throw new FailureException($"There is no finite {Words.Label(Name)} to answer with.");
    }
}

/// <summary>A whole number.</summary>
internal sealed class WholeCell<T>(string name, string meaning, Func<T, int> value)
    : Cell<T>(name, "1", meaning)
{
    public override bool IsNumber => true;

    public override void WriteValue(Utf8JsonWriter json, T of) => json.WriteNumberValue(value(of));

    public override void WriteSchema(Utf8JsonWriter schema) => Schema.Type(schema, ["integer"], Meaning);

    public override string Csv(T of) => value(of).ToString(CultureInfo.InvariantCulture);

    public override string Text(T of) => Csv(of);
}

/// <summary>A text, or nothing.</summary>
internal sealed class TextCell<T>(string name, string meaning, Func<T, string?> value, bool mayLack)
    : Cell<T>(name, "text", meaning)
{
    public override bool IsNumber => false;

    public override void WriteValue(Utf8JsonWriter json, T of) => json.WriteStringValue(value(of));

    public override void WriteSchema(Utf8JsonWriter schema) =>
        Schema.Type(schema, mayLack ? ["string", "null"] : ["string"], Meaning);

    public override string Csv(T of) => Answers.Csv.Quoted(value(of) ?? "");

    public override string Text(T of) => value(of) ?? "";
}

/// <summary>True or false.</summary>
internal sealed class FlagCell<T>(string name, string meaning, Func<T, bool> value)
    : Cell<T>(name, "true or false", meaning)
{
    public override bool IsNumber => false;

    public override void WriteValue(Utf8JsonWriter json, T of) => json.WriteBooleanValue(value(of));

    public override void WriteSchema(Utf8JsonWriter schema) => Schema.Type(schema, ["boolean"], Meaning);

    public override string Csv(T of) => value(of) ? "true" : "false";

    public override string Text(T of) => value(of) ? "yes" : "no";
}
