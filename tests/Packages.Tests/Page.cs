using NotebookRunner;

namespace Packages.Tests;

/// <summary>A page with code, what it prints, and commands, each between fences.</summary>
internal sealed class Page
{
    private const string Language = "csharp\n";
    private readonly string[] parts;

    private Page(params string[] path)
    {
        Text = File.ReadAllText(Path.Combine([Repository.Top, .. path])).ReplaceLineEndings("\n");
        parts = Text.Split("```");
    }

    public string Text { get; }

    /// <summary>The program on it.</summary>
    public string Code => parts.Single(IsCode)[Language.Length..];

    /// <summary>What stands below the program: what it prints.</summary>
    public string Output =>
        parts
            .SkipWhile(part => !IsCode(part))
            .Skip(1)
            .First(part => part.StartsWith('\n') && part.Trim().Length > 0)[1..];

    /// <summary>Of the first page of the repository.</summary>
    public static Page First => new("README.md");

    /// <summary>Of a package.</summary>
    public static Page Of(string package) => new("src", package, "README.md");

    /// <summary>The commands of the block that has a word in it.</summary>
    public string[] Commands(string word) =>
        parts
            .Single(part => !IsCode(part) && part.StartsWith('\n') && part.Contains($"\n{word}"))
            .Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private static bool IsCode(string part) => part.StartsWith(Language, StringComparison.Ordinal);
}
