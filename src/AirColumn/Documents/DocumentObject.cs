using System.Text.Json;

namespace AirColumn.Documents;

/// <summary>A JSON object of a document and where it is: hands out members by name and refuses all others.</summary>
internal sealed class DocumentObject
{
    private readonly Dictionary<string, DocumentValue> members = new(StringComparer.Ordinal);

    private DocumentObject(string path)
    {
        Path = path;
    }

    /// <summary>Where it is; empty for the document itself.</summary>
    public string Path { get; }

    /// <summary>Its keys, in the order written.</summary>
    public IEnumerable<string> Keys => members.Keys;

    /// <summary>Reads the members of a value that must be an object.</summary>
    /// <param name="value">The value.</param>
    /// <param name="example">What one looks like, for the message.</param>
    public static DocumentObject Of(DocumentValue value, string example)
    {
        if (value.Json.ValueKind != JsonValueKind.Object)
        {
            throw value.Wrong($"it must be an object, such as {example}.");
        }

        var result = new DocumentObject(value.Path);
        foreach (var property in value.Json.EnumerateObject())
        {
            var key = KeyOf(property, value.Path);
            var path = result.PathOf(key);
            if (!result.members.TryAdd(key, new DocumentValue(path, property.Value)))
            {
                throw new ColumnDocumentException(path, $"{Quote.Cut(path)} is given twice; give it once.");
            }
        }

        return result;
    }

    /// <summary>The path of a member.</summary>
    public string PathOf(string key) => Path.Length == 0 ? key : $"{Path}.{key}";

    /// <summary>Refuses members other than these.</summary>
    public void AllowOnly(params string[] known)
    {
        foreach (var key in Keys)
        {
            if (!known.Contains(key, StringComparer.Ordinal))
            {
                var where = Path.Length == 0 ? "" : $" in {Path}";
                throw new ColumnDocumentException(
                    PathOf(Quote.Cut(key)),
                    $"{Quote.Of(key)}{where} is not a known key; did you mean '{Nearest.To(key, known)}'? "
                        + $"Known here: {string.Join(", ", known)}."
                );
            }
        }
    }

    /// <summary>Whether there is such a member.</summary>
    public bool Has(string key) => members.ContainsKey(key);

    /// <summary>A member that must be there.</summary>
    /// <param name="key">Its name.</param>
    /// <param name="example">What one looks like, for the message.</param>
    public DocumentValue Required(string key, string example) =>
        Optional(key)
        ?? throw new ColumnDocumentException(
            PathOf(key),
            $"{PathOf(key)} is missing; write \"{key}\": {example}."
        );

    /// <summary>A member, or null.</summary>
    public DocumentValue? Optional(string key) => members.GetValueOrDefault(key);

    private static string KeyOf(JsonProperty property, string path)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException problem)
        {
            // Half of a surrogate pair, written as an escape.
            throw new ColumnDocumentException(path, "A key holds half a character; write it whole.", problem);
        }
    }
}
