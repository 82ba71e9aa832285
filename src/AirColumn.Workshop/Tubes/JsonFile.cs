using System.Text;
using System.Text.Json;
using AirColumn.Documents;

namespace AirColumn.Workshop.Tubes;

/// <summary>Files that makers write or keep: JSON, and what is wrong with it told as an editor counts.</summary>
internal static class JsonFile
{
    private const int Longest = 1_000_000;
    private const int Deepest = 8;

    /// <summary>Reads a file.</summary>
    /// <param name="text">What is in it.</param>
    /// <param name="whole">What it is, such as "The parts file".</param>
    /// <param name="begins">How it begins.</param>
    /// <param name="read">Makes something of its object.</param>
    /// <exception cref="FormatException">It is too long, empty, no JSON or no object, or <paramref name="read"/> says so.</exception>
    public static T Read<T>(string text, string whole, string begins, Func<PartsObject, T> read)
    {
        if (text.Length > Longest)
        {
            throw new FormatException(
                $"{whole} has {text.Length} characters; at most {Longest} are allowed."
            );
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            throw new FormatException($"{whole} is empty; it must begin with {begins}.");
        }

        var utf8 = Encoding.UTF8.GetBytes(text);
        try
        {
            using var document = JsonDocument.Parse(utf8, new JsonDocumentOptions { MaxDepth = Deepest });
            return read(
                new PartsObject(document.RootElement, "", $"{whole} must be an object, {begins}, … }}.")
            );
        }
        catch (JsonException problem)
        {
            throw new FormatException(JsonErrorText.Of(utf8, Deepest, whole), problem);
        }
    }
}
