using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace Browser.Tests.Bench;

/// <summary>How long the page takes: measured and written to docs/bench/speed.md when asked for, never judged by a test.</summary>
[Collection(BenchTests.Name)]
public class SpeedPage(BenchBrowser browser)
{
    private const int Warm = 30;
    private const int Cold = 5;

    // A slider is moved step by step; each time until the new cut is there with its drawing and notes, and until the rest is there too.
    private const string Slide = """
        async ([slider, steps]) => {
          const control = document.querySelector(slider);
          const pause = () => new Promise((resolve) => setTimeout(resolve, 1));
          const times = [];
          for (let i = 0; i < steps + 5; i++) {
            const cut = document.querySelector('#exact-cut');
            const before = document.querySelector('.drawing').innerHTML;
            const start = performance.now();
            control.value = Number(control.value) + Number(control.step) * 2;
            control.dispatchEvent(new Event('input', { bubbles: true }));
            while (document.querySelector('.drawing').innerHTML === before) await pause();
            const first = performance.now() - start;
            while (document.querySelector('.busy')) await pause();
            if (i >= 5) times.push([first, performance.now() - start]);
          }
          return times;
        }
        """;

    private const string Long = """
        { "tube": 1, "name": "long", "parts": [
          { "part": "insert", "name": "mouthpiece", "inside": "30 mm", "outside": "40 mm", "inserted": "25 mm", "protrudes": "12 mm" },
          { "part": "pipe", "name": "one", "stock": "pvc-40 1-1/2", "length": "open" },
          { "part": "elbow", "name": "elbow", "before": "pvc-40 1-1/2", "after": "pvc-40 1-1/2", "gap": "1 mm", "inside": "41 mm", "radius": "40 mm", "angle": 90 },
          { "part": "pipe", "name": "two", "stock": "pvc-40 1-1/2", "length": "300 mm" },
          { "part": "hole", "name": "a", "diameter": "8 mm", "at": "100 mm" },
          { "part": "hole", "name": "b", "diameter": "8 mm", "at": "140 mm" },
          { "part": "hole", "name": "c", "diameter": "8 mm", "at": "180 mm" },
          { "part": "coupling", "name": "reducer", "before": "pvc-40 1-1/2", "after": "pvc-40 2", "gap": "1 mm", "inside": "41 mm", "between": "14 mm" },
          { "part": "pipe", "name": "three", "stock": "pvc-40 2", "length": "150 mm" },
          { "part": "bell", "name": "bell", "inside": "72 mm", "length": "60 mm" } ] }
        """;

    [BrowserFact]
    public async Task The_page_of_times_is_written_when_asked_for()
    {
        var path = Path.Combine(Sheet.Top, "docs", "bench", "speed.md");
        if (Environment.GetEnvironmentVariable("AIRCOLUMN_TIMES") == "write")
        {
            await File.WriteAllTextAsync(path, await Measured());
        }

        Assert.Contains(
            "| compressed, over the wire |",
            await File.ReadAllTextAsync(path),
            StringComparison.Ordinal
        );
    }

    private async Task<string> Measured()
    {
        var starts = new List<(double First, double All)>();
        var sent = 0L;
        for (var i = 0; i < Cold; i++)
        {
            var before = browser.Site.Sent;
            await using var visit = await browser.Visit(isKept: true);
            var times = await visit.Page.EvaluateAsync<double[]>(
                "() => [performance.getEntriesByName('first-cut')[0].startTime, performance.getEntriesByName('first-plan')[0].startTime]"
            );
            starts.Add((times[0], times[1]));
            await visit.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
            // Fetched once to be shown, and once to be kept.
            sent = (browser.Site.Sent - before) / 2;
        }

        var (workshop, workshopAll) = await Slid(null);
        var (longer, longerAll) = await Slid(Long);
        var text = new StringBuilder();
        text.Append("# How fast the bench in a browser is\n\n");
        text.Append(
            "Medians, written by `AIRCOLUMN_TIMES=write dotnet test -c Release tests/Browser.Tests --filter SpeedPage`, with the page published and the browser of that machine, headless.\n\n"
        );
        text.Append(
            CultureInfo.InvariantCulture,
            $"{RuntimeInformation.OSDescription}, {Environment.ProcessorCount} processors.{Busy()}\n\n"
        );
        text.Append(
            "| what | until the cut, the drawing and the notes | until the first cut, ± and the chart |\n|---|---:|---:|\n"
        );
        Row("a slider of the workshop tube moved, warm", workshop, workshopAll);
        Row("the same for a tube of 11 sections, bent, with 3 finger holes", longer, longerAll);
        Row(
            "the page opened for the first time",
            Median(starts.Select(one => one.First)),
            Median(starts.Select(one => one.All))
        );
        text.Append(
            CultureInfo.InvariantCulture,
            $"\n| | |\n|---|---:|\n| compressed, over the wire | {sent / 1e6:0.00} MB |\n"
        );
        return text.ToString();

        void Row(string what, double first, double all) =>
            text.Append(CultureInfo.InvariantCulture, $"| {what} | {first:0} ms | {all:0} ms |\n");
    }

    // What else the machine did in the last minute, where the system says so: times of a busy one are times of waiting.
    private static string Busy() =>
        File.Exists("/proc/loadavg")
        && double.Parse(File.ReadAllText("/proc/loadavg").Split(' ')[0], CultureInfo.InvariantCulture)
            is var load
        && load > 1.5 * Environment.ProcessorCount
            ? string.Create(
                CultureInfo.InvariantCulture,
                $" The machine was busy: {load:0} tasks shared its processors while this was measured, so a machine left alone is faster."
            )
            : "";

    private async Task<(double First, double All)> Slid(string? tube)
    {
        await using var visit = await browser.Visit();
        var slider = "#part-4-length ~ input[type=range]";
        if (tube is not null)
        {
            var path = Path.GetTempFileName();
            await File.WriteAllTextAsync(path, tube);
            await visit.OpenFile("Open a file", path);
            await visit.Page.WaitForFunctionAsync(
                "() => document.querySelector('#tube-name').value === 'long'"
            );
            File.Delete(path);
            slider = "#part-9-length ~ input[type=range]";
        }

        await visit.Settled();
        await visit.Page.ClickAsync($"{slider[..7]} .card-title");
        var times = await visit.Page.EvaluateAsync<double[][]>(Slide, new object[] { slider, Warm });
        return (Median(times.Select(one => one[0])), Median(times.Select(one => one[1])));
    }

    private static double Median(IEnumerable<double> times)
    {
        var sorted = times.Order().ToList();
        return sorted[sorted.Count / 2];
    }
}
