namespace Browser.Tests.Bench;

/// <summary>How much is fetched, and that nothing is when it is there.</summary>
[Collection(BenchTests.Name)]
public class OfflineTests(BenchBrowser browser)
{
    // Bytes, compressed; they are three times as many before.
    private static readonly long Most = BenchSite.IsCompressed ? 4_000_000 : 13_800_000;

    [BrowserFact]
    public async Task It_opens_again_without_a_network()
    {
        var before = browser.Site.Sent;
        await using var visit = await browser.Visit(isKept: true);
        // A new visitor's browser has all by then, and once more for the time without a network.
        await visit.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        var twice = browser.Site.Sent - before;
        Assert.InRange(twice / 2, 1_000_000, Most);
        var cut = await visit.FirstCut();
        await visit.Context.SetOfflineAsync(true);
        await visit.Page.ReloadAsync();
        await visit.Settled();
        Assert.Equal(cut, await visit.FirstCut());
    }
}
