using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Words;

/// <summary>Parts by their names within a sentence, in English.</summary>
internal static class Named
{
    private static readonly string[] Owned = ["the ", "my ", "our ", "a ", "an "];

    /// <summary>"the main pipe"; a name that has its article, or ends in a number like "pipe 2", as it is.</summary>
    public static string The(TubePart part) =>
        char.IsDigit(part.Name[^1])
        || Owned.Any(word => part.Name.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            ? part.Name
            : $"the {part.Name}";

    /// <summary>The same at the beginning of a sentence.</summary>
    public static string Begin(TubePart part)
    {
        var name = The(part);
        return char.ToUpperInvariant(name[0]) + name[1..];
    }
}
