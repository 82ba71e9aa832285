namespace Browser.Tests.Bench;

/// <summary>The page as it is seen: by day and by night, on a phone and on a desk.</summary>
[Collection(BenchTests.Name)]
public class ScreenTests(BenchBrowser browser)
{
    // What is light on a desk and what is dark on a phone are the same rules as in the other two.
    public static TheoryData<int, bool> Views =>
        Amount.Of(
            new TheoryData<int, bool> { { 360, true }, { 1280, false } },
            new TheoryData<int, bool>
            {
                { 360, true },
                { 1280, false },
                { 360, false },
                { 1280, true },
            }
        );

    [BrowserTheory]
    [MemberData(nameof(Views))]
    public async Task Axe_finds_nothing(int width, bool isDark)
    {
        await using var visit = await browser.Visit(width, isDark);
        await visit.Page.ClickAsync("#part-1 .card-title");
        await visit.AxeFindsNothing();
        visit.NothingWentWrong();
    }
}
