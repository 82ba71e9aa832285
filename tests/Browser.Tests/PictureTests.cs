namespace Browser.Tests;

/// <summary>The pictures of docs/sheet.</summary>
public class PictureTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    public static TheoryData<string, string, int, int, bool> Shown =>
        new()
        {
            { "phone.png", "workshop", 360, 1500, false },
            { "phone-dark.png", "workshop", 360, 740, true },
            { "phone-bends.png", "folded", 360, 1700, false },
            { "desk.png", "workshop", 1280, 900, false },
        };

    [BrowserTheory]
    [MemberData(nameof(Shown))]
    public async Task Pictures_of_the_pages_show_the_sheet(
        string file,
        string sheet,
        int width,
        int height,
        bool isDark
    )
    {
        var page = await browser.Open(sheet, width, isDark);
        await page.SetViewportSizeAsync(width, height);
        if (sheet == "folded")
        {
            await page.EvaluateAsync("() => document.querySelector('figure').scrollIntoView()");
        }

        await Pictures.Keep(await page.ScreenshotAsync(), "sheet", file);
    }

    [BrowserFact]
    public async Task Paper_shows_the_sheet() =>
        await Pictures.KeepPaper(await browser.Open("workshop", 1280), 2, "sheet", "paper");
}
