using System.Text.Json;

namespace AirColumn.Documents;

/// <summary>
/// A JSON object of a document and where it is: hands out members by name and refuses all others, but for those that are left alone.
/// </summary>
internal sealed class DocumentObject
{
    private readonly Dictionary<string, DocumentValue> members = new(StringComparer.Ordinal);

    private DocumentObject(string path, int version)
    {
        Path = path;
        Version = version;
    }

    /// <summary>Where it is; empty for the document itself.</summary>
    public string Path { get; }

    /// <summary>The version of the format that the document is written in.</summary>
    public int Version { get; }

    /// <summary>Reads the members of a value that must be an object.</summary>
    /// <param name="value">The value.</param>
    /// <param name="example">What one looks like, for the message.</param>
    public static DocumentObject Of(DocumentValue value, string example)
    {
        if (value.Json.ValueKind != JsonValueKind.Object)
        {
            throw value.Wrong($"it must be an object, such as {example}.");
        }

        var result = new DocumentObject(value.Path, value.Version);
        foreach (var property in value.Json.EnumerateObject())
        {
            var key = KeyOf(property, value.Path);
            if (value.Version > 1 && IsLeftAlone(key, value.Path))
            {
                continue;
            }

            var path = result.PathOf(key);
            if (!result.members.TryAdd(key, new DocumentValue(path, property.Value, value.Version)))
            {
                throw new ColumnDocumentException(path, $"{Quote.Cut(path)} is given twice; give it once.");
            }
        }

        return result;
    }

    /// <summary>The path of a member.</summary>
    public string PathOf(string key) => Path.Length == 0 ? key : $"{Path}.{key}";

    /// <summary>Refuses members other than these.</summary>
    /// <param name="known">Keys of every version.</param>
    /// <param name="new">Keys that version 1 does not know.</param>
    public void AllowOnly(string[] known, params string[] @new)
    {
        foreach (var key in members.Keys)
        {
            var isNew = @new.Contains(key, StringComparer.Ordinal);
            if (known.Contains(key, StringComparer.Ordinal) || (isNew && Version > 1))
            {
                continue;
            }

            string[] here = Version > 1 ? [.. known, .. @new] : known;
            throw new ColumnDocumentException(
                PathOf(Quote.Cut(key)),
                Quote.Of(key)
                    + (Path.Length == 0 ? "" : $" in {Path}")
                    + (
                        isNew
                            ? " is a key of version 2 of the format; write \"column\": 2."
                            : $" is not a known key; did you mean '{Nearest.To(key, here)}'? "
                                + $"Known here: {string.Join(", ", here)}."
                    )
            );
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

    // Notes of other programs, and the name of the schema for editors: of the document, or of that of a column in a study.
    private static bool IsLeftAlone(string key, string path) =>
        key.StartsWith("x-", StringComparison.Ordinal) || (path is "" or "column" && key == "$schema");

    private static string KeyOf(JsonProperty property, string path)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException problem)
        {
            // Half of a surrogate pair, written as an escape.
            throw new ColumnDocumentException(
                path,
                "A key holds only half of a surrogate pair; write both halves.",
                problem
            );
        }
    }
}
