using Microsoft.Playwright;

namespace Browser.Tests.Bench;

/// <summary>The served page and a browser to open it with, for all tests of it.</summary>
public sealed class BenchBrowser : IAsyncLifetime
{
    private readonly Lazy<BenchSite> site = new(() => new BenchSite());
    private IPlaywright? playwright;
    private IBrowser? browser;

    public BenchSite Site => site.Value;

    public async Task InitializeAsync()
    {
        if (InstalledBrowser.Path is { } path)
        {
            playwright = await Playwright.CreateAsync();
            browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = path });
        }
    }

    public async Task DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.CloseAsync();
        }

        playwright?.Dispose();
        if (site.IsValueCreated)
        {
            site.Value.Dispose();
        }
    }

    /// <summary>The page as a new visitor meets it.</summary>
    internal async Task<BenchVisit> Visit(int width = 1280, bool isDark = false, string fragment = "")
    {
        Assert.True(browser is not null, InstalledBrowser.Missing);
        var context = await browser.NewContextAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 800 },
                ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
                AcceptDownloads = true,
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
