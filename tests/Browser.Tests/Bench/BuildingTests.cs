namespace Browser.Tests.Bench;

/// <summary>Tubes built by the pointer and by keys alone, and what is said of impossible ones.</summary>
[Collection(BenchTests.Name)]
public class BuildingTests(BenchBrowser browser)
{
    [BrowserFact]
    public async Task A_tube_is_built_by_clicks()
    {
        await using var visit = await browser.Visit();
        foreach (var part in (string[])["bell", "end pipe", "reducer"])
        {
            await visit.Page.ClickAsync($"[aria-label='Remove: {part}']");
        }

        await visit.Settled();
        var bare = await visit.Cut();
        await visit.Page.SelectOptionAsync("#add-part", "bell");
        await visit.Press("+ Add a part");
        await visit.Settled();
        Assert.NotEqual(bare, await visit.Cut());
        Assert.Equal(3, await visit.Page.Locator(".card").CountAsync());
        // The part in hand is coloured in the drawing.
        Assert.NotEqual(
            await Colour(visit, ".side [data-part='1'].bore"),
            await Colour(visit, ".side [data-part='2'].heat")
        );
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_tube_is_built_by_keys_alone()
    {
        await using var visit = await browser.Visit();
        var before = await visit.Cut();
        await Reach(visit, "[aria-label='Remove: bell']");
        await visit.Page.Keyboard.PressAsync("Enter");
        await visit.Settled();
        Assert.NotEqual(before, await visit.Cut());
        await Reach(visit, "#add-part");
        await visit.Page.Keyboard.TypeAsync("bell");
        await Reach(visit, ".add button");
        await visit.Page.Keyboard.PressAsync("Space");
        await visit.Settled();
        Assert.Equal(5, await visit.Page.Locator(".card").CountAsync());
        await Reach(visit, "#part-4-length");
        await visit.Page.Keyboard.PressAsync("Control+a");
        await visit.Page.Keyboard.TypeAsync("60");
        await visit.Page.Keyboard.PressAsync("Tab");
        await visit.Settled();
        Assert.Equal("60 mm", await visit.Page.InputValueAsync("#part-4-length"));
        // The slider too.
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await visit.Settled();
        Assert.NotEqual("60 mm", await visit.Page.InputValueAsync("#part-4-length"));
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task What_cannot_be_is_said_and_can_be_mended()
    {
        await using var visit = await browser.Visit(360);
        var cut = await visit.FirstCut();
        await visit.Page.ClickAsync("#part-0 .card-title");
        await visit.Page.FillAsync("#part-0-outside", "45 mm");
        await visit.Page.PressAsync("#part-0-outside", "Tab");
        await visit.Settled();
        foreach (var place in (string[])[".answer .error", "#part-0 .error"])
        {
            Assert.Contains(
                "does not go into the pipe",
                await visit.Page.InnerTextAsync(place),
                StringComparison.Ordinal
            );
        }

        await visit.Page.FillAsync("#part-0-outside", "a thumb");
        await visit.Page.PressAsync("#part-0-outside", "Tab");
        await visit.Settled();
        Assert.Contains(
            "parts[0]",
            await visit.Page.InnerTextAsync("#part-0 .error"),
            StringComparison.Ordinal
        );
        await visit.AxeFindsNothing();
        await visit.Page.FillAsync("#part-0-outside", "40");
        await visit.Page.PressAsync("#part-0-outside", "Tab");
        await visit.Settled();
        Assert.Equal(cut, await visit.FirstCut());
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task Holes_are_drilled_drawn_and_fingered()
    {
        await using var visit = await browser.Visit(360);
        await visit.Drill(2);
        Assert.Equal(2, await visit.Page.Locator(".side circle.hole").CountAsync());
        Assert.NotEqual(
            await Colour(visit, ".side [data-part='2'].hole"),
            await Colour(visit, ".side [data-part='3'].hole")
        );
        Assert.Equal(
            ["hole 1", "hole 2, hole 1"],
            await visit.Page.Locator(".notes").Nth(1).Locator("tbody td:last-child").AllInnerTextsAsync()
        );
        Assert.Contains(
            "drill it when the drone is in tune",
            await visit.Page.InnerTextAsync("#part-3"),
            StringComparison.Ordinal
        );
        // A vent sounds in the drone, and no finger opens it.
        var cut = await visit.Cut();
        await visit.Page.SelectOptionAsync("#part-3-drone", "open");
        await visit.Settled();
        Assert.NotEqual(cut, await visit.Cut());
        Assert.Equal(1, await visit.Page.Locator(".notes").Nth(1).Locator("tbody tr").CountAsync());
        await visit.AxeFindsNothing();
        // Under the reducer's socket there can be none: told at its card.
        await visit.Page.FillAsync("#part-3-at", "20");
        await visit.Page.PressAsync("#part-3-at", "Tab");
        await visit.Settled();
        Assert.Contains(
            "hidden in the socket of 'reducer'",
            await visit.Page.InnerTextAsync("#part-3 .error"),
            StringComparison.Ordinal
        );
        await visit.Page.FillAsync("#part-3-at", "200");
        await visit.Page.PressAsync("#part-3-at", "Tab");
        await visit.Settled();
        await visit.Press("Holes, full size");
        var circles = visit.Page.FrameLocator("dialog iframe").Locator("circle.hole");
        await circles.First.WaitForAsync();
        Assert.Equal(2, await circles.CountAsync());
        visit.NothingWentWrong();
    }

    private static Task<string> Colour(BenchVisit visit, string shape) =>
        visit.Page.Locator(shape).First.EvaluateAsync<string>("shape => getComputedStyle(shape).fill");

    // By the Tab key, as somebody without a pointer does.
    private static async Task Reach(BenchVisit visit, string control)
    {
        for (var presses = 0; presses < 120; presses++)
        {
            if (
                await visit.Page.EvaluateAsync<bool>(
                    "control => document.activeElement?.matches(control) ?? false",
                    control
                )
            )
            {
                return;
            }

            await visit.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"The Tab key does not reach {control}.");
    }
}
