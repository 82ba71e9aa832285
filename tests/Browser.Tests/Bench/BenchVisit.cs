using System.Globalization;
using Microsoft.Playwright;
using Xunit.Sdk;

namespace Browser.Tests.Bench;

/// <summary>One visitor's page: what went wrong in it, and what it says.</summary>
internal sealed class BenchVisit : IAsyncDisposable
{
    // Nothing is timed by this: it only ends a test that hangs, on a machine that does other work too.
    private const float Patience = 60_000;

    private const string UndoAll = """
        async () => {
          const undo = [...document.querySelectorAll('header button')].find((one) => one.textContent === 'Undo');
          while (!undo.disabled) {
            undo.click();
            await new Promise((then) => setTimeout(then));
          }
        }
        """;

    private readonly IBrowserContext context;
    private readonly string address;
    private readonly Func<BenchVisit, Task> leave;
    private readonly List<string> wrong = [];
    private string beginning = "";

    /// <param name="context">The visitor's browser.</param>
    /// <param name="page">An empty page in it.</param>
    /// <param name="address">Where the page is.</param>
    /// <param name="leave">What is done with it when a test is done with it.</param>
    public BenchVisit(IBrowserContext context, IPage page, string address, Func<BenchVisit, Task> leave)
    {
        this.leave = leave;
        (this.context, Page, this.address) = (context, page, address);
        page.SetDefaultTimeout(Patience);
        page.Console += (_, message) =>
        {
            // Most visits do without the service worker, which takes time.
            if (
                message.Type is "error" or "warning"
                && !message.Text.StartsWith("Service Worker registration blocked", StringComparison.Ordinal)
            )
            {
                wrong.Add(message.Text);
            }
        };
        page.PageError += (_, problem) => wrong.Add(problem);
        context.Request += (_, request) =>
        {
            if (
                !request.Url.StartsWith(address, StringComparison.Ordinal)
                && !request.Url.StartsWith("blob:", StringComparison.Ordinal)
                && !request.Url.StartsWith("data:", StringComparison.Ordinal)
            )
            {
                wrong.Add($"asked of another place: {request.Url}");
            }
        };
    }

    public IPage Page { get; }

    public IBrowserContext Context => context;

    public async Task Open(string fragment = "")
    {
        await Page.GotoAsync(address + fragment);
        await Settled();
        beginning = await Seen();
    }

    /// <summary>Opens a link in the page, which is not loaded again.</summary>
    public async Task OpenLink(string fragment)
    {
        const string Message = "(document.querySelector('.message')?.innerText ?? '')";
        var before = await Page.EvaluateAsync<string>($"() => {Message}");
        await Page.EvaluateAsync("link => { location.hash = link; }", fragment);
        // What is opened takes the message before away.
        await Page.WaitForFunctionAsync(
            $"before => document.querySelector('.busy') || {Message} !== before",
            before
        );
        await Settled();
    }

    /// <summary>
    /// Brings the page back to what a new visitor meets, without starting it again, which takes seconds: every change is undone, and what its parts
    /// remember goes with them while something else is made.
    /// </summary>
    /// <returns>Whether it is as it was when it was opened.</returns>
    public async Task<bool> BeginAnew(int width, bool isDark)
    {
        try
        {
            foreach (var other in context.Pages.Where(page => page != Page).ToList())
            {
                await other.CloseAsync();
            }

            await context.ClearPermissionsAsync();
            await Page.SetViewportSizeAsync(width, 800);
            await Page.EmulateMediaAsync(
                new() { Media = Media.Screen, ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light }
            );
            await Page.EvaluateAsync("() => document.querySelectorAll('dialog').forEach(one => one.close())");
            await Press("Flute");
            await Page.EvaluateAsync(UndoAll);
            await Settled();
            await Page.SelectOptionAsync("#add-part", "pipe");
            await Page.EvaluateAsync("() => { document.activeElement?.blur(); scrollTo(0, 0); }");
            wrong.Clear();
            return await Seen() == beginning;
        }
        catch (Exception problem) when (problem is PlaywrightException or TimeoutException or XunitException)
        {
            return false;
        }
    }

    // All that is written, and what stands in its fields.
    private async Task<string> Seen() =>
        await Page.EvaluateAsync<string>(
            "() => document.body.innerText + [...document.querySelectorAll('input, select')].map(one => one.value).join('; ')"
        );

    /// <summary>Waits until all is computed.</summary>
    public async Task Settled()
    {
        await Told(
            Page.WaitForFunctionAsync(
                "() => document.querySelector('.answer') && !document.querySelector('.busy')"
            )
        );
    }

    // What never comes is told with all that the page says instead.
    private async Task<T> Told<T>(Task<T> waited)
    {
        try
        {
            return await waited;
        }
        catch (TimeoutException)
        {
            throw new XunitException($"{await Page.InnerTextAsync("body")}\n{string.Join('\n', wrong)}");
        }
    }

    public Task<string> Cut() => Told(Page.InnerTextAsync("#exact-cut"));

    /// <summary>As the sheet says it: "1093 mm or 43 1/16 in".</summary>
    public async Task<string> FirstCut() =>
        string.Join(
            ' ',
            (await Page.Locator("#first-cut > span").AllInnerTextsAsync()).Select(text => text.Trim())
        );

    /// <summary>Whether it says of the cut that it is this sure: in a browser as to the printed digit elsewhere.</summary>
    public async Task IsSureTo(double cents) =>
        Assert.Contains(
            $"or ±{cents.ToString("0.#", CultureInfo.InvariantCulture)} cents,",
            await Page.InnerTextAsync(".answer .exact"),
            StringComparison.Ordinal
        );

    public Task Press(string button) =>
        Page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();

    /// <summary>Drills holes in the open pipe, the last of them in hand.</summary>
    public async Task Drill(int holes)
    {
        await Page.SelectOptionAsync("#add-part", "hole");
        for (var i = 0; i < holes; i++)
        {
            await Press("+ Add a part");
            await Settled();
        }
    }

    /// <summary>What is shown to be printed, as a page of its own.</summary>
    public async Task<IPage> Printed()
    {
        var page = await context.NewPageAsync();
        await page.SetContentAsync((await Page.GetAttributeAsync("dialog iframe", "srcdoc"))!);
        return page;
    }

    /// <summary>Opens a file as a visitor does.</summary>
    public async Task OpenFile(string button, string path)
    {
        var chooser = await Page.RunAndWaitForFileChooserAsync(() => Press(button));
        await chooser.SetFilesAsync(path);
    }

    public async Task AxeFindsNothing()
    {
        var axe = await AxePage.Of(Page);
        Assert.Contains("color-contrast", axe.Passed);
        Assert.Empty(axe.Broken);
        Assert.True(
            await Page.EvaluateAsync<bool>(
                "() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"
            ),
            "the page is wider than its window"
        );
    }

    /// <summary>Nothing was said on the console, and nobody else was asked.</summary>
    public void NothingWentWrong() => Assert.Empty(wrong);

    public async ValueTask DisposeAsync() => await leave(this);
}
