namespace Browser.Tests;

/// <summary>The browser of this machine that the tests look with: chromium or one made from it.</summary>
internal static class InstalledBrowser
{
    public const string Missing =
        "No browser was found: install chromium (Debian: apt-get install chromium), or name one made from it in AIRCOLUMN_BROWSER.";

    private static readonly string[] Names =
    [
        "chromium",
        "chromium-browser",
        "google-chrome",
        "chrome.exe",
        "msedge.exe",
    ];

    /// <summary>Where it is; null if there is none.</summary>
    public static string? Path { get; } = Find();

    /// <summary>Whether it is a failure that there is none.</summary>
    public static bool IsRequired =>
        Environment.GetEnvironmentVariable("CI") == "true"
        || Environment.GetEnvironmentVariable("AIRCOLUMN_BROWSER") is { Length: > 0 };

    private static string? Find() =>
        Environment.GetEnvironmentVariable("AIRCOLUMN_BROWSER") is { Length: > 0 } named
            ? File.Exists(named)
                ? named
                : null
            : Folders()
                .SelectMany(folder => Names.Select(name => System.IO.Path.Combine(folder, name)))
                .Concat(["/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"])
                .FirstOrDefault(File.Exists);

    private static IEnumerable<string> Folders()
    {
        foreach (
            var folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(
                System.IO.Path.PathSeparator,
                StringSplitOptions.RemoveEmptyEntries
            )
        )
        {
            yield return folder;
        }

        foreach (
            var programs in new[]
            {
                Environment.SpecialFolder.ProgramFiles,
                Environment.SpecialFolder.ProgramFilesX86,
            }
        )
        {
            if (Environment.GetFolderPath(programs) is { Length: > 0 } folder)
            {
                yield return System.IO.Path.Combine(folder, "Google", "Chrome", "Application");
                yield return System.IO.Path.Combine(folder, "Microsoft", "Edge", "Application");
            }
        }
    }
}
