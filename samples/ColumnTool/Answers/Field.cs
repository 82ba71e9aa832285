using System.Text.Json;

namespace ColumnTool.Answers;

/// <summary>
/// A member of an answer: what it is called and means. JSON, its schema, CSV, the text for people and the reference all come from it.
/// </summary>
internal abstract class Field(string name, string meaning)
{
    private readonly JsonEncodedText encoded = JsonEncodedText.Encode(name);

    /// <summary>Its name in JSON.</summary>
    public string Name => name;

    /// <summary>What it means, for the reference.</summary>
    public string Meaning => meaning;

    /// <summary>Whether an answer may go without it.</summary>
    public virtual bool IsOptional => false;

    /// <summary>What it is called in JSON, encoded once.</summary>
    protected JsonEncodedText Encoded => encoded;

    /// <summary>The schema of its value.</summary>
    public abstract void WriteSchema(Utf8JsonWriter schema);

    /// <summary>Its path, unit and meaning, and those of what is in it.</summary>
    public abstract IEnumerable<(string Path, string Unit, string Meaning)> Rows();
}

/// <summary>A member of an answer of that type.</summary>
internal abstract class Field<T>(string name, string meaning) : Field(name, meaning)
{
    /// <summary>Writes name and value.</summary>
    public abstract void WriteJson(Utf8JsonWriter json, T of);

    /// <summary>Shows it to people.</summary>
    public abstract void Show(TextPage page, T of);
}
