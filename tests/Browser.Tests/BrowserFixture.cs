using Microsoft.Playwright;

namespace Browser.Tests;

/// <summary>One browser for all tests that share it.</summary>
public class BrowserFixture : IAsyncLifetime
{
    private readonly List<IBrowser> started = [];
    private IPlaywright? playwright;

    public async Task InitializeAsync()
    {
        if (InstalledBrowser.Path is not null)
        {
            playwright = await Playwright.CreateAsync();
            await Launch();
        }
    }

    public virtual async Task DisposeAsync()
    {
        foreach (var one in started)
        {
            await one.CloseAsync();
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

    /// <summary>The browser.</summary>
    protected IBrowser Started
    {
        get
        {
            Assert.True(started.Count > 0, InstalledBrowser.Missing);
            return started[0];
        }
    }

    /// <summary>A browser of its own for a test that needs other settings; it ends with the others.</summary>
    protected async Task<IBrowser> Launch(params string[] arguments)
    {
        Assert.True(playwright is not null, InstalledBrowser.Missing);
        var other = await playwright.Chromium.LaunchAsync(
            new() { ExecutablePath = InstalledBrowser.Path, Args = arguments }
        );
        started.Add(other);
        return other;
    }
}
