using Microsoft.Playwright;

namespace Browser.Tests.Bench;

/// <summary>The served page and a browser to open it with, for all tests of it.</summary>
public sealed class BenchBrowser : BrowserFixture
{
    private readonly Lazy<BenchSite> site = new(() => new BenchSite());

    // Those that tests were done with, by their width: what is drawn is as wide as the window was at first.
    private readonly Dictionary<int, Stack<BenchVisit>> left = [];

    public BenchSite Site => site.Value;

    public override async Task DisposeAsync()
    {
        await base.DisposeAsync();
        if (site.IsValueCreated)
        {
            site.Value.Dispose();
        }

        File.Delete(Sound);
    }

    /// <summary>What its microphone hears where it may be used.</summary>
    public static string Sound { get; } = Path.Combine(Path.GetTempPath(), $"drone-{Guid.NewGuid():N}.wav");

    // A microphone that plays a file, and nobody there to allow it.
    protected override string[] Arguments =>
        [
            "--use-fake-device-for-media-stream",
            $"--use-file-for-fake-audio-capture={Sound}",
            "--deny-permission-prompts",
        ];

    /// <summary>
    /// The page as a new visitor meets it. Most tests take over that of a test before them, brought back to its beginning; with a fragment, or all
    /// kept for the time without a network, it is opened anew.
    /// </summary>
    internal async Task<BenchVisit> Visit(
        int width = 1280,
        bool isDark = false,
        string fragment = "",
        bool isKept = false
    )
    {
        var isUsual = fragment.Length == 0 && !isKept;
        while (isUsual && left.TryGetValue(width, out var visits) && visits.TryPop(out var one))
        {
            if (await one.BeginAnew(width, isDark))
            {
                return one;
            }

            await one.Context.CloseAsync();
        }

        var context = await Started.NewContextAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 800 },
                ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
                AcceptDownloads = true,
                // To keep all files takes time, and only one test is about it.
                ServiceWorkers = isKept ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
            }
        );
        var visit = new BenchVisit(
            context,
            await context.NewPageAsync(),
            Site.Address,
            async done =>
            {
                if (isUsual)
                {
                    Left(width).Push(done);
                }
                else
                {
                    await done.Context.CloseAsync();
                }
            }
        );
        await visit.Open(fragment);
        return visit;
    }

    private Stack<BenchVisit> Left(int width) =>
        left.TryGetValue(width, out var visits) ? visits : left[width] = new();
}

[CollectionDefinition(Name)]
public sealed class BenchTests : ICollectionFixture<BenchBrowser>
{
    public const string Name = "bench";
}
