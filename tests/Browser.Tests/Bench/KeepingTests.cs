using System.IO.Compression;
using System.Text;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;

namespace Browser.Tests.Bench;

/// <summary>What is kept, linked, saved, undone, and what is refused.</summary>
[Collection(BenchTests.Name)]
public class KeepingTests(BenchBrowser browser)
{
    [BrowserFact]
    public async Task The_bench_is_there_again_after_a_reload()
    {
        await using var visit = await browser.Visit();
        await visit.Page.SelectOptionAsync("#note", "E2");
        await visit.Settled();
        var cut = await visit.FirstCut();
        await visit.Page.ReloadAsync();
        await visit.Settled();
        Assert.Equal("E2", await visit.Page.InputValueAsync("#note"));
        Assert.Equal(cut, await visit.FirstCut());
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_link_carries_the_whole_tube()
    {
        await using var visit = await browser.Visit();
        await visit.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        await visit.Page.FillAsync("#tube-name", "Žofie's tube");
        await visit.Page.PressAsync("#tube-name", "Tab");
        await visit.Page.SelectOptionAsync("#note", "C2");
        await visit.Settled();
        await visit.Press("Copy a link");
        await visit.Page.GetByText("The link is copied").WaitForAsync();
        var link = await visit.Page.EvaluateAsync<string>("() => navigator.clipboard.readText()");
        Assert.StartsWith($"{browser.Site.Address}#tube=", link, StringComparison.Ordinal);
        await using var other = await browser.Visit(360, fragment: link[browser.Site.Address.Length..]);
        Assert.Equal("Žofie's tube", await other.Page.InputValueAsync("#tube-name"));
        Assert.Equal(await visit.FirstCut(), await other.FirstCut());
        // What was linked is not asked of any server, nor left in the address.
        Assert.Equal(browser.Site.Address, other.Page.Url);
        other.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_saved_file_is_a_parts_file()
    {
        await using var visit = await browser.Visit();
        await visit.Page.ClickAsync("#part-4 .card-title");
        await visit.Page.FillAsync("#part-4-length", "2 1/2 in");
        await visit.Page.PressAsync("#part-4-length", "Tab");
        await visit.Settled();
        var download = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Press("Save as a file"));
        Assert.Equal("stepped-workshop-tube.json", download.SuggestedFilename);
        var text = await File.ReadAllTextAsync(await download.PathAsync());
        var bell = Assert.IsType<BellPart>(PartsFile.Read(text, Catalogue.Standard).Assembly.Parts[4]);
        Assert.Equal(63.5, bell.Formed.Millimeters, 1e-9);
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_bad_file_is_refused_with_a_reason_and_changes_nothing()
    {
        await using var visit = await browser.Visit();
        var cut = await visit.FirstCut();
        await Refuses("""{ "tube": 1, "parts": [ { "part": "pipe", "lenght": "open" } ] }""", "parts[0]");
        await Refuses("not a file at all", "parts file is not JSON");
        await Refuses("", "parts file is empty");
        visit.NothingWentWrong();

        async Task Refuses(string text, string said)
        {
            var path = Path.GetTempFileName();
            await File.WriteAllTextAsync(path, text);
            await visit.OpenFile("Open a file", path);
            await visit.Page.Locator(".message").GetByText(said).WaitForAsync();
            File.Delete(path);
            Assert.Equal(cut, await visit.FirstCut());
        }
    }

    [BrowserTheory]
    [MemberData(nameof(BadLinks))]
    public async Task A_bad_link_is_said_and_a_good_one_then_opens_in_the_same_page(string link)
    {
        await using var usual = await browser.Visit();
        await using var visit = await browser.Visit(fragment: Fragment(link));
        Assert.Contains(
            "the bench starts anew",
            await visit.Page.InnerTextAsync(".message"),
            StringComparison.Ordinal
        );
        Assert.Equal(await usual.FirstCut(), await visit.FirstCut());

        // As of a version that knew of nothing else: what the link does not say is as usual.
        var parts = await File.ReadAllTextAsync(
            Path.Combine(Sheet.Top, "samples", "DroneTube", "workshop-tube.json")
        );
        await visit.OpenLink(
            Fragment(System.Text.Json.JsonSerializer.Serialize(new { Parts = parts, Note = "E2" }))
        );
        Assert.Equal("E2", await visit.Page.InputValueAsync("#note"));
        Assert.Equal(browser.Site.Address, visit.Page.Url);
        Assert.Equal(0, await visit.Page.Locator(".message").CountAsync());
        await usual.Page.SelectOptionAsync("#note", "E2");
        await usual.Settled();
        Assert.Equal(await usual.Cut(), await visit.Cut());
        Assert.Equal(await usual.FirstCut(), await visit.FirstCut());
        var cut = await visit.FirstCut();

        await visit.OpenLink(Fragment(link));
        Assert.Contains(
            "nothing is changed",
            await visit.Page.InnerTextAsync(".message"),
            StringComparison.Ordinal
        );
        Assert.Equal(cut, await visit.FirstCut());

        // Back to the tube that was there before the good link.
        await visit.Press("Undo");
        await visit.Settled();
        Assert.Equal("D2", await visit.Page.InputValueAsync("#note"));
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task Each_change_is_undone_and_done_again()
    {
        await using var visit = await browser.Visit();
        var before = await visit.FirstCut();
        await visit.Page.ClickAsync("[aria-label='Remove: bell']");
        await visit.Settled();
        var after = await visit.FirstCut();
        Assert.NotEqual(before, after);
        await visit.Press("Undo");
        await visit.Settled();
        Assert.Equal(before, await visit.FirstCut());
        await visit.Press("Redo");
        await visit.Settled();
        Assert.Equal(after, await visit.FirstCut());
        visit.NothingWentWrong();
    }

    // Packed but no tube; what else may be wrong takes a visit each.
    public static TheoryData<string> BadLinks =>
        [
            "{ \"Parts\": \"{ \\\"tube\\\": 1 }\", \"Note\": \"H9\" }",
            .. Amount.Of((string[])[], ["#tube=%%%", "#tube=AAAA", "{ \"Parts\": \"{\", \"Note\": \"D2\" }"]),
        ];

    private static string Fragment(string link) => link.StartsWith('#') ? link : $"#tube={Packed(link)}";

    private static string Packed(string text)
    {
        using var bytes = new MemoryStream();
        using (var stream = new DeflateStream(bytes, CompressionLevel.Optimal, true))
        {
            stream.Write(Encoding.UTF8.GetBytes(text));
        }

        return Convert.ToBase64String(bytes.ToArray()).Replace('+', '-').Replace('/', '_').TrimEnd('=');
    }
}
