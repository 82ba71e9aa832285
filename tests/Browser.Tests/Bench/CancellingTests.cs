using System.Globalization;

namespace Browser.Tests.Bench;

/// <summary>What takes long can be cancelled and begun again, and the page answers meanwhile.</summary>
[Collection(BenchTests.Name)]
public class CancellingTests(BenchBrowser browser)
{
    [BrowserFact]
    public async Task A_plan_that_takes_long_can_be_cancelled_and_begun_again()
    {
        var path = Path.GetTempFileName();
        await File.WriteAllTextAsync(path, Long());
        await using var visit = await browser.Visit(360);
        await visit.Page.SelectOptionAsync("#note", "A0");
        await visit.OpenFile("Open a file", path);
        await visit.Press("Cancel");
        await visit.Page.GetByText("Stopped.").WaitForAsync();
        Assert.Equal(0, await visit.Page.Locator(".busy").CountAsync());
        // What was known by then stands; the chart, which comes last, is not there.
        Assert.Equal(1, await visit.Page.Locator(".drawing svg").CountAsync());
        await visit.AxeFindsNothing();
        // Another tube is computed as ever.
        await visit.Press("Drone tube");
        await visit.Page.Locator("#first-cut > span").First.WaitForAsync();
        await visit.Settled();
        Assert.NotEmpty(await visit.FirstCut());
        visit.NothingWentWrong();
        File.Delete(path);
    }

    [BrowserFact]
    [Trait(Amount.Trait, Amount.Long)]
    public async Task A_sheet_can_be_cancelled()
    {
        await using var visit = await browser.Visit();
        await visit.Press("Build sheet");
        await visit.Press("Cancel");
        await visit
            .Page.Locator(".busy")
            .WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Detached });
        Assert.Equal(0, await visit.Page.Locator("dialog").CountAsync());
        var cut = await visit.FirstCut();
        Assert.NotEmpty(cut);
        await visit.Press("Build sheet");
        await visit.Page.FrameLocator("dialog iframe").Locator(".cut").WaitForAsync();
        visit.NothingWentWrong();
    }

    // 2.6 m of so many parts, for the lowest note, that no machine is done within half a second.
    private static string Long()
    {
        var joints = string.Concat(
            Enumerable
                .Range(0, 40)
                .Select(i =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $$""", { "part": "coupling", "name": "c{{i}}", "before": "pvc-40 1-1/2", "after": "pvc-40 1-1/2", "gap": "1 mm", "inside": "{{40 + 0.002 * i:0.000}} mm", "between": "3 mm" }, { "part": "pipe", "name": "p{{i}}", "stock": "pvc-40 1-1/2", "inside": "{{40.3 + 0.002 * i:0.000}} mm", "length": "60 mm" }"""
                    )
                )
        );
        return $$"""{ "tube": 1, "name": "long", "parts": [ { "part": "pipe", "name": "main", "stock": "pvc-40 1-1/2", "length": "open" }{{joints}} ] }""";
    }
}
