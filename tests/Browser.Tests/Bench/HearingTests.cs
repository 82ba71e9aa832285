namespace Browser.Tests.Bench;

/// <summary>Two shapes to listen to, and cuts to try.</summary>
[Collection(BenchTests.Name)]
public class HearingTests(BenchBrowser browser)
{
    // The effective value of the second half of the drone; both sounds are brought to the same.
    private const string Levels = """
        async () => Promise.all([...document.querySelectorAll('.hear audio')].map(async (sound) => {
          const bytes = await (await fetch(sound.src)).arrayBuffer();
          const samples = (await new OfflineAudioContext(1, 1, 44100).decodeAudioData(bytes)).getChannelData(0);
          const steady = samples.slice(44100, 80000);
          return Math.sqrt(steady.reduce((sum, sample) => sum + sample * sample, 0) / steady.length);
        }))
        """;

    [BrowserFact]
    public async Task Two_shapes_sound_and_are_as_loud()
    {
        await using var visit = await browser.Visit(360);
        await visit.Press("Keep this tube as A");
        await visit.Page.ClickAsync("[aria-label='Remove: bell']");
        await visit.Settled();
        await visit.Press("Keep this tube as B");
        await visit.Press("Hear A and B");
        await visit.Page.Locator("#sound-A audio").WaitForAsync();
        await visit.Page.Locator("#sound-B audio").WaitForAsync();
        var levels = await visit.Page.EvaluateAsync<double[]>(Levels);
        Assert.Equal(2, levels.Length);
        // 0.5 dB: what is steady is measured a little differently here.
        Assert.InRange(20 * Math.Log10(levels[0] / levels[1]), -0.5, 0.5);
        await visit.AxeFindsNothing();
        visit.NothingWentWrong();
    }

    [BrowserFact]
    [Trait(Amount.Trait, Amount.Long)]
    public async Task Rendering_can_be_stopped()
    {
        await using var visit = await browser.Visit();
        await visit.Press("Keep this tube as A");
        await visit.Press("Keep this tube as B");
        await visit.Press("Hear A and B");
        await visit.Press("Cancel");
        await visit
            .Page.Locator(".hear progress")
            .WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Detached });
        Assert.Equal(0, await visit.Page.Locator(".hear audio").CountAsync());
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_cut_that_is_tried_moves_the_notes_and_the_drawing()
    {
        await using var visit = await browser.Visit();
        var notes = await visit.Page.InnerTextAsync(".notes tbody");
        var side = await visit.Page.InnerHTMLAsync(".drawing .side");
        await visit.Page.FocusAsync("#try-cut");
        await visit.Page.Keyboard.PressAsync("PageUp");
        await visit.Page.Locator("#tried").WaitForAsync();
        Assert.NotEqual(notes, await visit.Page.InnerTextAsync(".notes tbody"));
        Assert.NotEqual(side, await visit.Page.InnerHTMLAsync(".drawing .side"));
        await visit.Press("Back to the computed cut");
        Assert.Equal(notes, await visit.Page.InnerTextAsync(".notes tbody"));
        visit.NothingWentWrong();
    }
}
