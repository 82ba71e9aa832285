namespace Browser.Tests.Bench;

/// <summary>The pictures of docs/bench.</summary>
[Collection(BenchTests.Name)]
public class BenchPictures(BenchBrowser browser)
{
    [BrowserTheory]
    [Trait(Amount.Trait, Amount.Long)]
    [InlineData("desk.png", 1280, 900, false, "")]
    [InlineData("phone.png", 360, 740, false, "")]
    [InlineData("phone-dark.png", 360, 740, true, "")]
    [InlineData("flute.png", 1280, 900, false, "Flute")]
    public async Task Pictures_show_the_page(string file, int width, int height, bool isDark, string begin)
    {
        await using var visit = await browser.Visit(width, isDark);
        await visit.Page.SetViewportSizeAsync(width, height);
        if (begin.Length > 0)
        {
            await visit.Press(begin);
            await visit.Press("Place the holes");
            await visit.Page.Locator(".holes").WaitForAsync();
        }
        else
        {
            await visit.Page.ClickAsync("#part-1 .card-title");
        }

        await Pictures.Keep(await visit.Page.ScreenshotAsync(), "bench", file);
        visit.NothingWentWrong();
    }

    [BrowserTheory]
    [Trait(Amount.Trait, Amount.Long)]
    [InlineData("holes.png", 1280, 900)]
    [InlineData("holes-phone.png", 360, 1400)]
    public async Task Pictures_show_finger_holes(string file, int width, int height)
    {
        await using var visit = await browser.Visit(width);
        await visit.Page.SetViewportSizeAsync(width, height);
        await visit.Drill(3);
        await visit.Page.EvaluateAsync(
            width < 700
                ? "() => document.querySelector('.drawing').scrollIntoView({ block: 'center' })"
                : "() => scrollTo(0, 0)"
        );
        await Pictures.Keep(await visit.Page.ScreenshotAsync(), "bench", file);
        visit.NothingWentWrong();
    }

    [BrowserFact]
    [Trait(Amount.Trait, Amount.Long)]
    public async Task Paper_shows_the_page_and_a_template()
    {
        await using var visit = await browser.Visit(isDark: true);
        await visit.Drill(3);
        await Pictures.KeepPaper(visit.Page, 1, "bench", "paper");
        await visit.Press("Holes, full size");
        await Pictures.KeepPaper(await visit.Printed(), 1, "bench", "paper-holes");
        visit.NothingWentWrong();
    }
}
