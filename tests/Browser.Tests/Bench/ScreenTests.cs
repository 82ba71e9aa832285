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
        await visit.AxeFindsNothing();
        visit.NothingWentWrong();
    }
}
