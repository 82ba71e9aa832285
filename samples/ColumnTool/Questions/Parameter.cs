using System.CommandLine;
using System.Text.Json;
using ColumnTool.Answers;

namespace ColumnTool.Questions;

/// <summary>Something that a question may or must say: an option of the command line, and a member of a request.</summary>
internal abstract class Parameter(string name, string meaning, string otherwise)
{
    /// <summary>Its option, without the dashes.</summary>
    public string Name => name;

    /// <summary>Its member in JSON.</summary>
    public string JsonName { get; } = Words.Camel(name);

    /// <summary>What it says.</summary>
    public string Meaning => meaning;

    /// <summary>What holds if it is left out; "required" where it cannot be.</summary>
    public string Otherwise => otherwise;

    public bool IsRequired => otherwise == Required;

    /// <summary>What <see cref="Otherwise"/> is then.</summary>
    public const string Required = "required";

    /// <summary>The option.</summary>
    public abstract Option CreateOption();

    /// <summary>What was given on a command line.</summary>
    public abstract object Read(IReadOnlyList<string> texts);

    /// <summary>What was given in a request.</summary>
    public abstract object Read(JsonElement json);

    /// <summary>The schema of the member.</summary>
    public abstract void WriteSchema(Utf8JsonWriter schema);
}

/// <summary>A parameter of that type.</summary>
internal sealed class Parameter<T>(string name, Kind<T> kind, string meaning, string otherwise)
    : Parameter(name, meaning, otherwise)
    where T : notnull
{
    public override Option CreateOption() =>
        kind.IsSwitch ? new Option<bool>($"--{Name}") { Description = Description }
        : kind.IsList ? new Option<string[]>($"--{Name}") { Description = Description, Required = IsRequired }
        : new Option<string>($"--{Name}")
        {
            Description = Description,
            Required = IsRequired,
            Arity = ArgumentArity.ExactlyOne,
        };

    public override object Read(IReadOnlyList<string> texts) => kind.Read(texts);

    public override object Read(JsonElement json) => kind.Read(json);

    public override void WriteSchema(Utf8JsonWriter schema) => kind.WriteSchema(schema, Meaning);

    private string Description =>
        IsRequired || kind.IsSwitch
            ? $"{char.ToUpperInvariant(Meaning[0])}{Meaning[1..]}."
            : $"{char.ToUpperInvariant(Meaning[0])}{Meaning[1..]}. [default: {Otherwise}]";
}
