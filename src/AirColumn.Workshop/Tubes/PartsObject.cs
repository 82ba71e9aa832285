using System.Text.Json;
using AirColumn.Documents;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>An object of a parts file or a history: hands out members by name, and refuses those that nobody asked for.</summary>
internal sealed class PartsObject
{
    private readonly Dictionary<string, JsonElement> members = new(StringComparer.Ordinal);
    private readonly HashSet<string> asked = new(StringComparer.Ordinal);
    private readonly string path;

    public PartsObject(JsonElement json, string path, string whole = "")
    {
        this.path = path;
        if (json.ValueKind != JsonValueKind.Object)
        {
            throw new FormatException(path.Length == 0 ? whole : $"{path} must be an object, {{ … }}.");
        }

        foreach (var member in json.EnumerateObject())
        {
            var name = Readable(() => member.Name, path);
            if (!members.TryAdd(name, member.Value))
            {
                throw Wrong(name, "it is given twice; give it once");
            }
        }
    }

    public string Text(string key) => TextIfAny(key) ?? throw Missing(key, "write a text");

    public string? TextIfAny(string key) =>
        Member(key) is not { } value ? null
        : value.ValueKind == JsonValueKind.String ? Readable(value.GetString, PathOf(key))
        : throw Wrong(key, "it must be a text in quotes, such as \"40.6 mm\"");

    public double Number(string key) => NumberIfAny(key) ?? throw Missing(key, "write a number");

    public double? NumberIfAny(string key) =>
        Member(key) is not { } value ? null
        : value.ValueKind == JsonValueKind.Number && double.IsFinite(value.GetDouble()) ? value.GetDouble()
        : throw Wrong(key, "it must be a number, without a unit and without quotes");

    public Length Size(string key) =>
        SizeIfAny(key) ?? throw Missing(key, "write a size, such as \"40.6 mm\"");

    public Length? SizeIfAny(string key) =>
        TextIfAny(key) is { } text ? Read(key, text, QuantityText.ParseLength) : null;

    /// <summary>One of a few words; the first where there is none.</summary>
    public string Choice(string key, params string[] words)
    {
        var word = TextIfAny(key) ?? words[0];
        return words.Contains(word)
            ? word
            : throw Wrong(
                key,
                $"'{Quote.Cut(word)}' is not known; "
                    + (
                        Nearest.IfNear(word, words) is { } meant
                            ? $"did you mean \"{meant}\"?"
                            : $"write {string.Join(" or ", words)}"
                    )
            );
    }

    /// <summary>A quantity that must be there.</summary>
    public T Quantity<T>(string key, Func<string, T> parse) => Read(key, Text(key), parse);

    private T Read<T>(string key, string text, Func<string, T> parse)
    {
        try
        {
            return parse(text);
        }
        catch (FormatException problem)
        {
            throw Wrong(key, problem.Message.TrimEnd('.'));
        }
    }

    /// <summary>Whether the member is there, or one with a slip in its name.</summary>
    public bool Has(string key) =>
        members.ContainsKey(key) || members.Keys.Any(written => Nearest.IfNear(written, [key]) is not null);

    public PartsObject? ObjectIfAny(string key)
    {
        asked.Add(key);
        return members.TryGetValue(key, out var value) && value.ValueKind == JsonValueKind.Object
            ? new PartsObject(value, PathOf(key))
            : null;
    }

    public IEnumerable<PartsObject> Objects(string key)
    {
        if (Member(key) is not { ValueKind: JsonValueKind.Array } list)
        {
            throw members.ContainsKey(key)
                ? Wrong(key, "it must be a list, [ … ]")
                : Missing(key, "write a list, [ … ]");
        }

        return list.EnumerateArray().Select((item, i) => new PartsObject(item, $"{PathOf(key)}[{i}]"));
    }

    /// <summary>Makes something of the members; what does not fit is told with the place.</summary>
    public T Make<T>(Func<T> make)
    {
        try
        {
            return make();
        }
        catch (ArgumentException problem)
        {
            throw new FormatException(Told(problem), problem);
        }
    }

    /// <summary>Refuses members that were not asked for.</summary>
    public void Done()
    {
        var unknown = members.Keys.FirstOrDefault(key => !asked.Contains(key));
        if (unknown is not null)
        {
            throw Unknown(
                unknown,
                Nearest.IfNear(unknown, asked),
                $" Known here: {string.Join(", ", asked.Order(StringComparer.Ordinal))}."
            );
        }
    }

    public FormatException Wrong(string key, string what) =>
        new($"{PathOf(Quote.Cut(key))}: {what}{(what.EndsWith('?') ? "" : ".")}");

    /// <summary>A message without the parameter and value that .NET appends.</summary>
    public static string Plain(ArgumentException problem)
    {
        var message = problem.Message;
        var appended = message.IndexOf(" (Parameter '", StringComparison.Ordinal);
        return appended < 0 ? message : message[..appended];
    }

    // A key is missing that is there with a slip in it, perhaps.
    private FormatException Missing(string key, string advice) =>
        members.Keys.FirstOrDefault(written =>
            !asked.Contains(written) && Nearest.IfNear(written, [key]) is not null
        )
            is { } slip
            ? Unknown(slip, key)
            : Wrong(key, $"it is missing; {advice}");

    private FormatException Unknown(string key, string? meant, string known = "") =>
        new(
            $"{(path.Length == 0 ? "" : $"{path}: ")}unknown key \"{Quote.Cut(key)}\""
                + (meant is null ? "." : $"; did you mean \"{meant}\"?")
                + known
        );

    // What is called otherwise in a file than in the code.
    private static string KeyOf(string parameter) =>
        parameter switch
        {
            "endInside" => "inside",
            "formed" or "cut" => "length",
            "Price" => "price",
            _ => parameter,
        };

    private string Told(ArgumentException problem)
    {
        var message = Plain(problem);
        return
            problem.ParamName is { Length: > 0 } parameter
            && message.StartsWith($"{parameter} ", StringComparison.Ordinal)
            ? $"{PathOf(KeyOf(parameter))}{message[parameter.Length..]}"
            : $"{path}: {message}";
    }

    // Half of a pair of characters cannot be read as text.
    private static T Readable<T>(Func<T> text, string where)
    {
        try
        {
            return text();
        }
        catch (InvalidOperationException problem)
        {
            throw new FormatException(
                $"{where}: it holds only half of a surrogate pair (\\ud800 to \\udfff); write both halves.",
                problem
            );
        }
    }

    private string PathOf(string key) => path.Length == 0 ? key : $"{path}.{key}";

    private JsonElement? Member(string key)
    {
        asked.Add(key);
        return members.TryGetValue(key, out var value) ? value : null;
    }
}
