using Microsoft.Playwright;

namespace Browser.Tests.Bench;

/// <summary>The served page and a browser to open it with, for all tests of it.</summary>
public sealed class BenchBrowser : BrowserFixture
{
    private readonly Lazy<BenchSite> site = new(() => new BenchSite());

    public BenchSite Site => site.Value;

    public override async Task DisposeAsync()
    {
        await base.DisposeAsync();
        if (site.IsValueCreated)
        {
            site.Value.Dispose();
        }
    }

    /// <summary>The page as a new visitor meets it.</summary>
    internal Task<BenchVisit> Visit(
        int width = 1280,
        bool isDark = false,
        string fragment = "",
        bool isKept = false
    ) => Visit(Started, width, isDark, fragment, isKept);

    /// <summary>The page of a visitor whose microphone hears a file, or is not to be used.</summary>
    internal async Task<BenchVisit> VisitWithMicrophone(string sound, bool isAllowed) =>
        await Visit(
            await Launch(
                "--use-fake-device-for-media-stream",
                $"--use-file-for-fake-audio-capture={sound}",
                isAllowed ? "--use-fake-ui-for-media-stream" : "--deny-permission-prompts"
            ),
            360,
            false,
            "",
            false
        );

    private async Task<BenchVisit> Visit(IBrowser of, int width, bool isDark, string fragment, bool isKept)
    {
        var context = await of.NewContextAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 800 },
                ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
                AcceptDownloads = true,
                // To keep all files takes time, and only one test is about it.
                ServiceWorkers = isKept ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
            }
        );
        var visit = new BenchVisit(context, await context.NewPageAsync(), Site.Address);
        await visit.Open(fragment);
        return visit;
    }
}

[CollectionDefinition(Name)]
public sealed class BenchTests : ICollectionFixture<BenchBrowser>
{
    public const string Name = "bench";
}
