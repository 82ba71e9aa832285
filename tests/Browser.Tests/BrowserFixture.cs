using Microsoft.Playwright;

namespace Browser.Tests;

/// <summary>One browser for all tests, started when the first asks for it.</summary>
public sealed class BrowserFixture : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? browser;

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
    }

    /// <summary>A page in a window, by day or night.</summary>
    internal async Task<IPage> Open(string sheet, int width, bool isDark = false)
    {
        Assert.True(browser is not null, InstalledBrowser.Missing);
        var page = await browser.NewPageAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 740 },
                ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
            }
        );
        await page.SetContentAsync(Sheet.Html(sheet));
        return page;
    }
}
