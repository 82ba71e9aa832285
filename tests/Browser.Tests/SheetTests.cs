using System.Text;
using Microsoft.Playwright;

namespace Browser.Tests;

/// <summary>Build sheets as a browser shows them: on a phone, on a desk, at night, on paper.</summary>
public class SheetTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const int Phone = 360;
    private const int Desk = 1280;

    // Smaller letters are not read on a phone: our choice, near the 11 points that makers of phones ask for.
    private const double SmallestLetters = 11;

    public static TheoryData<string, int, bool> Views
    {
        get
        {
            var views = new TheoryData<string, int, bool>();
            foreach (var name in Amount.Of(["workshop", "folded"], Sheet.Names))
            {
                // What is light on a desk and what is dark on a phone are the same rules again.
                if (Amount.IsLong || name == "workshop")
                {
                    views.Add(name, Phone, false);
                }

                if (Amount.IsLong || name == "folded")
                {
                    views.Add(name, Desk, true);
                }
            }

            return views;
        }
    }

    public static TheoryData<string, int> Windows
    {
        get
        {
            var windows = new TheoryData<string, int>();
            foreach (var name in Sheet.Names)
            {
                windows.Add(name, Phone);
                windows.Add(name, Desk);
            }

            return windows;
        }
    }

    public static TheoryData<string> Names => [.. Amount.Of(["workshop", "folded"], Sheet.Names)];

    // All rules of axe-core: WCAG 2 A and AA, contrast among them, and its best practices.
    [BrowserTheory]
    [MemberData(nameof(Views))]
    public async Task Axe_finds_nothing(string sheet, int width, bool isDark)
    {
        var page = await browser.Open(sheet, width, isDark);
        var axe = await AxePage.Of(page);
        // As many rules as that did look at something: an empty page breaks none.
        Assert.True(axe.Passed.Count >= 20, $"{axe.Passed.Count} rules passed");
        Assert.Contains("color-contrast", axe.Passed);
        Assert.Empty(axe.Broken);
        await page.CloseAsync();
    }

    // The rules are not blind: they see what is wrong with this.
    [BrowserFact]
    public async Task Axe_finds_what_is_wrong()
    {
        var page = await browser.Open("metal", Phone);
        await page.EvaluateAsync(
            "() => { const svg = document.querySelector('svg'); svg.removeAttribute('aria-labelledby'); svg.querySelector('title').remove(); document.querySelector('.note').style.color = '#999'; }"
        );
        var broken = (await AxePage.Of(page)).Broken;
        Assert.Contains(broken, place => place.StartsWith("svg-img-alt: ", StringComparison.Ordinal));
        Assert.Contains(broken, place => place.StartsWith("color-contrast: ", StringComparison.Ordinal));
    }

    [BrowserTheory]
    [MemberData(nameof(Windows))]
    public async Task It_can_be_read(string sheet, int width)
    {
        var page = await browser.Open(sheet, width);
        await NothingSticksOut(page);
        await LettersAreLarge(page);
        await TextsKeepApart(page);
        await NumbersKeepTheirUnits(page);
        if (width == Phone)
        {
            await FirstCutIsSeenAtOnce(page);
        }

        await page.CloseAsync();
    }

    // As many pages as make two sheets; nobody prints more of them than that for one tube.
    [BrowserTheory]
    [MemberData(nameof(Names))]
    public async Task It_prints_on_two_sheets(string sheet)
    {
        var page = await browser.Open(sheet, Desk, isDark: true);
        var pdf = await page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true });
        var pages = Encoding.Latin1.GetString(pdf).Split("/Type /Page\n").Length - 1;
        Assert.InRange(pages, 1, 4);
        // Ink on paper, also from a window that is dark.
        await page.EmulateMediaAsync(new() { Media = Media.Print, ColorScheme = ColorScheme.Dark });
        Assert.Equal(
            "rgb(255, 255, 255)",
            await page.EvaluateAsync<string>("() => getComputedStyle(document.body).backgroundColor")
        );
        Assert.Equal(
            "rgb(0, 0, 0)",
            await page.EvaluateAsync<string>("() => getComputedStyle(document.body).color")
        );
    }

    private static async Task NothingSticksOut(IPage page)
    {
        Assert.Empty(
            await page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll('body *')].filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && (r.right > innerWidth + 0.5 || r.left < -0.5); }).map(e => e.outerHTML.slice(0, 120))"
            )
        );
        // What is drawn stays in its picture.
        Assert.Empty(
            await page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll('svg text, svg circle')].filter(e => { const r = e.getBoundingClientRect(), s = e.ownerSVGElement.getBoundingClientRect(); return r.left < s.left - 1 || r.right > s.right + 1 || r.top < s.top - 1 || r.bottom > s.bottom + 1; }).map(e => e.ownerSVGElement.querySelector('title').textContent + ': ' + e.outerHTML)"
            )
        );
    }

    private static async Task LettersAreLarge(IPage page)
    {
        var smallest = await page.EvaluateAsync<double>(
            "() => Math.min(...[...document.querySelectorAll('svg text')].map(e => parseFloat(getComputedStyle(e).fontSize) * e.getScreenCTM().a))"
        );
        Assert.True(smallest >= SmallestLetters, $"{smallest:0.0} px");
    }

    // No text of a drawing lies on another.
    private static async Task TextsKeepApart(IPage page)
    {
        Assert.Empty(
            await page.EvaluateAsync<string[]>(
                """
                () => [...document.querySelectorAll('svg')].flatMap(svg => {
                  const texts = [...svg.querySelectorAll('text')].map(e => [e.textContent, e.getBoundingClientRect()]);
                  const found = [];
                  for (let i = 0; i < texts.length; i++) for (let j = 0; j < i; j++) {
                    const [a, r] = texts[i], [b, s] = texts[j];
                    // Lines of letters are taller than the letters: a quarter of the line may lie in another.
                    const x = Math.min(r.right, s.right) - Math.max(r.left, s.left), y = Math.min(r.bottom, s.bottom) - Math.max(r.top, s.top);
                    if (x > 0.5 && y > 0.25 * Math.min(r.height, s.height)) found.push(svg.querySelector('title').textContent + ': ' + a + ' on ' + b);
                  }
                  return found;
                })
                """
            )
        );
    }

    private static async Task NumbersKeepTheirUnits(IPage page)
    {
        Assert.Empty(
            await page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll('.q')].filter(e => e.getClientRects().length !== 1).map(e => e.textContent)"
            )
        );
    }

    // On the first screen of a phone, in letters twice as large as others.
    private static async Task FirstCutIsSeenAtOnce(IPage page)
    {
        var (bottom, size, body) = (
            await page.EvaluateAsync<double>(
                "() => document.querySelector('.cut').getBoundingClientRect().bottom"
            ),
            await page.EvaluateAsync<double>(
                "() => parseFloat(getComputedStyle(document.querySelector('.cut')).fontSize)"
            ),
            await page.EvaluateAsync<double>("() => parseFloat(getComputedStyle(document.body).fontSize)")
        );
        Assert.InRange(bottom, 1, 740);
        Assert.True(size >= 2 * body, $"{size} px beside {body} px");
    }
}
