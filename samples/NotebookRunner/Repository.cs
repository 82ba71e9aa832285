using System.Reflection;

namespace NotebookRunner;

/// <summary>Where things are, and in which configuration this was built.</summary>
public static class Repository
{
    public static string Top { get; } = Path.GetFullPath(Metadata("Top"));

    public static string Configuration { get; } = Metadata("Configuration");

    /// <summary>Of the packages, as they would be released.</summary>
    public static string Version { get; } = Metadata("Version");

    public static string NotebookFolder { get; } = Path.Combine(Top, "samples", "Notebooks");

    public static IReadOnlyList<string> Notebooks =>
        [.. Directory.EnumerateFiles(NotebookFolder, "*.ipynb").Order(StringComparer.Ordinal)];

    private static string Metadata(string key) =>
        typeof(Repository)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == key)
            .Value!;
}
