namespace Browser.Tests.Bench;

/// <summary>The way from the open page to a printed sheet, as the page's README lists it, with its pictures.</summary>
[Collection(BenchTests.Name)]
public class NewcomerTests(BenchBrowser browser)
{
    private const int Most = 12;

    [BrowserFact]
    public async Task A_newcomer_prints_a_sheet_in_few_actions()
    {
        // What the README lists, in order; the first is to open the page.
        var actions = new (string What, Func<BenchVisit, Task> Do)[]
        {
            ("Remove: bell", visit => visit.Page.ClickAsync("[aria-label='Remove: bell']")),
            ("Remove: end pipe", visit => visit.Page.ClickAsync("[aria-label='Remove: end pipe']")),
            ("Remove: reducer", visit => visit.Page.ClickAsync("[aria-label='Remove: reducer']")),
            ("main pipe", visit => visit.Page.ClickAsync("#part-1 .card-title")),
            ("inside diameter", visit => visit.Page.FillAsync("#part-1-inside", "40.6 mm")),
            ("E2", visit => visit.Page.SelectOptionAsync("#note", "E2")),
            ("Build sheet", visit => visit.Press("Build sheet")),
            ("Print", visit => visit.Press("Print")),
        };
        Assert.True(1 + actions.Length <= Most);
        await using var visit = await browser.Visit(360);
        await visit.Page.EvaluateAsync(
            "() => { window.printed = 0; new MutationObserver(() => { const frame = document.querySelector('dialog iframe'); if (frame?.contentWindow) frame.contentWindow.print = () => window.printed++; }).observe(document.body, { childList: true, subtree: true }); }"
        );
        var page = await File.ReadAllTextAsync(Path.Combine(Sheet.Top, "samples", "BenchPage", "README.md"));
        var at = page.IndexOf("1. Open the page", StringComparison.Ordinal);
        for (var i = 0; i < actions.Length; i++)
        {
            var (what, act) = actions[i];
            await act(visit);
            await visit.Settled();
            var line = page.IndexOf($"{i + 2}. ", at, StringComparison.Ordinal);
            Assert.True(line > at, $"The README has no action {i + 2}.");
            at = line;
            Assert.Contains(what, page[at..page.IndexOf('\n', at)], StringComparison.Ordinal);
            if (what is "Build sheet" or "E2" or "inside diameter")
            {
                await visit.Page.SetViewportSizeAsync(360, 640);
                await Pictures.Keep(await visit.Page.ScreenshotAsync(), "bench", $"newcomer-{i + 2}.png");
            }
        }

        await visit.Page.WaitForFunctionAsync("() => window.printed === 1");
        var sheet = visit.Page.FrameLocator("dialog iframe");
        Assert.Contains("E2", await sheet.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(
            await visit.FirstCut(),
            (await sheet.Locator(".cut").InnerTextAsync()).ReplaceLineEndings(" ")
        );
        visit.NothingWentWrong();
    }
}
