using Microsoft.Playwright;

namespace Browser.Tests;

/// <summary>One browser for all tests that share it.</summary>
public class BrowserFixture : IAsyncLifetime
{
    private IBrowser? started;
    private IPlaywright? playwright;

    public async Task InitializeAsync()
    {
        if (InstalledBrowser.Path is not null)
        {
            playwright = await Playwright.CreateAsync();
            started = await playwright.Chromium.LaunchAsync(
                new() { ExecutablePath = InstalledBrowser.Path, Args = Arguments }
            );
        }
    }

    public virtual async Task DisposeAsync()
    {
        if (started is not null)
        {
            await started.CloseAsync();
        }

        playwright?.Dispose();
    }

    /// <summary>A page in a window, by day or night.</summary>
    internal async Task<IPage> Open(string sheet, int width, bool isDark = false)
    {
        var page = await Started.NewPageAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 740 },
                ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
            }
        );
        await page.SetContentAsync(Sheet.Html(sheet));
        return page;
    }

    /// <summary>What it is started with.</summary>
    protected virtual string[] Arguments => [];

    /// <summary>The browser.</summary>
    protected IBrowser Started
    {
        get
        {
            Assert.True(started is not null, InstalledBrowser.Missing);
            return started;
        }
    }
}
