using Microsoft.Playwright;

namespace Browser.Tests.Bench;

/// <summary>What comes out of a printer: the page itself, the build sheet, a template.</summary>
[Collection(BenchTests.Name)]
public class PrintingTests(BenchBrowser browser)
{
    private const double PixelsPerMillimetre = 96 / 25.4;

    // What cannot be pressed on paper is not printed, and paper is white by night too.
    [BrowserFact]
    public async Task The_page_prints_what_can_be_read()
    {
        await using var visit = await browser.Visit(isDark: true);
        await visit.Page.EmulateMediaAsync(new() { Media = Media.Print, ColorScheme = ColorScheme.Dark });
        foreach (
            var control in (string[])
                ["button:not(.card-title)", "select:not(.note)", "input[type=range]", ".listen", ".hear"]
        )
        {
            foreach (var one in await visit.Page.Locator(control).AllAsync())
            {
                Assert.False(await one.IsVisibleAsync(), $"{control}: {await one.InnerTextAsync()}");
            }
        }

        foreach (var seen in (string[])["#first-cut", "#exact-cut", ".side", ".notes", ".card strong"])
        {
            Assert.True(await visit.Page.Locator(seen).First.IsVisibleAsync(), seen);
        }

        Assert.Equal(
            "rgb(255, 255, 255)",
            await visit.Page.EvaluateAsync<string>("() => getComputedStyle(document.body).backgroundColor")
        );
        Assert.InRange(Pages(await visit.Page.PdfAsync(new() { PreferCSSPageSize = true })), 1, 3);
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task The_sheet_prints_alone_and_a_template_at_full_size()
    {
        await using var visit = await browser.Visit(360);
        await visit.Press("Build sheet");
        var sheet = await visit.Printed();
        Assert.InRange(Pages(await sheet.PdfAsync(new() { PreferCSSPageSize = true })), 2, 4);
        Assert.Equal(0, await sheet.Locator("button").CountAsync());
        await visit.Press("Close");
        await visit.Page.ClickAsync("#part-1 .card-title");
        await visit.Press("Saw line, full size");
        var template = await visit.Printed();
        await template.EmulateMediaAsync(new() { Media = Media.Print });
        var lines = await template
            .Locator("line.saw")
            .EvaluateAllAsync<double[]>(
                "lines => lines.map(line => Math.hypot(line.getBoundingClientRect().width, line.getBoundingClientRect().height))"
            );
        // The line to measure first, and once round a pipe of 48.26 mm.
        Assert.Equal(100 * PixelsPerMillimetre, lines[0], 0.5);
        Assert.Equal(Math.PI * 48.26 * PixelsPerMillimetre, lines[1], 0.5);
        Assert.Equal(1, Pages(await template.PdfAsync(new() { PreferCSSPageSize = true })));
        visit.NothingWentWrong();
    }

    // Of a PDF as this browser writes it.
    private static int Pages(byte[] pdf) =>
        System.Text.Encoding.Latin1.GetString(pdf).Split("/Type /Page\n").Length - 1;
}
