using Deque.AxeCore.Playwright;

namespace Browser.Tests.Bench;

/// <summary>The page as it is seen: by day and by night, on a phone and on a desk.</summary>
[Collection(BenchTests.Name)]
public class ScreenTests(BenchBrowser browser)
{
    [BrowserTheory]
    [InlineData(360, false)]
    [InlineData(360, true)]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    public async Task Axe_finds_nothing(int width, bool isDark)
    {
        await using var visit = await browser.Visit(width, isDark);
        await visit.Page.ClickAsync("#part-1 .card-title");
        var result = await visit.Page.RunAxe();
        Assert.Contains(result.Passes, rule => rule.Id == "color-contrast");
        Assert.Empty(
            result.Violations.SelectMany(rule => rule.Nodes.Select(node => $"{rule.Id}: {node.Html}"))
        );
        Assert.True(
            await visit.Page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"
            ),
            "the page is wider than its window"
        );
        visit.NothingWentWrong();
    }
}
