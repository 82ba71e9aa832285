using System.Reflection;

namespace Docs.Tests;

/// <summary>The files of the repository.</summary>
internal static class Repository
{
    private static readonly string[] Unread = ["bin", "obj", "artifacts", "TestResults"];

    /// <summary>Its folder.</summary>
    public static string Top { get; } =
        Path.GetFullPath(
            typeof(Repository)
                .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
                .Single(a => a.Key == "Top")
                .Value!
        );

    /// <summary>Where a file is whose path is written with slashes.</summary>
    public static string File(string path) => Path.Combine([Top, .. path.Split('/')]);

    /// <summary>The pages in a folder and below it, by their paths written with slashes.</summary>
    public static IEnumerable<string> Pages(string folder) =>
        Directory
            .EnumerateFiles(File(folder), "*.md", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Top, file).Replace('\\', '/'))
            .Where(path => !path.Split('/')[..^1].Any(part => Unread.Contains(part) || part.StartsWith('.')))
            .Order(StringComparer.Ordinal);
}
