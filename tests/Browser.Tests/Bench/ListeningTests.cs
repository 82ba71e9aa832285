using AirColumn.Recordings;
using UnitsNet;

namespace Browser.Tests.Bench;

/// <summary>What the page hears: a file, the microphone, a tuner's reading.</summary>
[Collection(BenchTests.Name)]
public sealed class ListeningTests(BenchBrowser browser) : IDisposable
{
    private const int Rate = 44_100;
    private const double Drone = 71.5; // Hz, whole periods in the length of the file, so that it can be repeated
    private readonly string folder = Directory.CreateTempSubdirectory("sounds").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [BrowserFact]
    public async Task A_file_gives_the_note_that_DroneTube_hears()
    {
        var path = Save("drone.wav", t => Harmonics(Drone, t));
        var said = Programs.DroneTube(
            "listen",
            Path.Combine(Sheet.Top, "samples", "DroneTube", "workshop-tube.json"),
            "--note",
            "D2",
            "--cut",
            "1093 mm",
            "--recording",
            path,
            "--forget"
        );
        await using var visit = await browser.Visit(360);
        await visit.OpenFile("Open a WAV file", path);
        var heard = await visit.Page.InnerTextAsync("#heard");
        Assert.Contains(heard["Heard: ".Length..], said, StringComparison.Ordinal);
        var verdict = await visit.Page.InnerTextAsync("#verdict strong");
        Assert.Contains(
            verdict,
            string.Join(' ', said.Split(['\n', ' '], StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal
        );
        await visit.AxeFindsNothing();
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task The_microphone_hears_the_same_note()
    {
        File.Copy(Save("drone.wav", t => Harmonics(Drone, t)), BenchBrowser.Sound, true);
        await using var visit = await browser.Visit(360);
        await visit.Context.GrantPermissionsAsync(["microphone"]);
        await visit.Press("Listen");
        var heard = await visit.Page.InnerTextAsync("#heard");
        Assert.StartsWith("Heard: 71.5", heard, StringComparison.Ordinal);
        Assert.Contains(
            "One measurement",
            await visit.Page.InnerTextAsync(".listen"),
            StringComparison.Ordinal
        );
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_microphone_that_is_refused_is_said()
    {
        await using var visit = await browser.Visit(360);
        await visit.Press("Listen");
        Assert.Contains(
            "may not be used",
            await visit.Page.InnerTextAsync(".listen .error"),
            StringComparison.Ordinal
        );
        visit.NothingWentWrong();
    }

    [BrowserFact]
    [Trait(Amount.Trait, Amount.Long)]
    public async Task Silence_and_a_glide_are_no_notes()
    {
        await using var visit = await browser.Visit(360);
        foreach (
            var path in (string[])
                [
                    Save("silence.wav", _ => 0),
                    // Up a fifth in eight seconds.
                    Save("glide.wav", t => Math.Sin(2 * Math.PI * (60 * t + 30 * t * t / 16)), 8),
                ]
        )
        {
            await visit.OpenFile("Open a WAV file", path);
            await visit
                .Page.Locator(".listen progress")
                .WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Detached });
            Assert.NotEmpty(await visit.Page.InnerTextAsync(".listen .error"));
            Assert.Equal(0, await visit.Page.Locator("#heard").CountAsync());
        }

        visit.NothingWentWrong();
    }

    // The drone for five seconds and then its twelfth, as when a player overblows too soon; and two that go together with no single one.
    [BrowserFact]
    [Trait(Amount.Trait, Amount.Long)]
    public async Task Of_two_notes_the_drone_is_heard_or_the_doubt_is_said()
    {
        await using var visit = await browser.Visit(360);
        await visit.OpenFile(
            "Open a WAV file",
            Save("one-after-the-other.wav", t => Harmonics(t < 5 ? Drone : 3 * Drone, t), 8)
        );
        Assert.StartsWith(
            "Heard: 71.50 Hz",
            await visit.Page.InnerTextAsync("#heard"),
            StringComparison.Ordinal
        );
        await visit.OpenFile(
            "Open a WAV file",
            Save("at-once.wav", t => (Harmonics(Drone, t) + 0.9 * Harmonics(1.68 * Drone, t)) / 2)
        );
        await visit.Page.Locator(".listen .error").GetByText("two sound at once").WaitForAsync();
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_reading_of_a_tuner_does_as_well()
    {
        var said = Programs.DroneTube(
            "trim",
            Path.Combine(Sheet.Top, "samples", "DroneTube", "workshop-tube.json"),
            "--note",
            "D2",
            "--cut",
            "1093 mm",
            "--heard",
            "D2 -26 cents"
        );
        await using var visit = await browser.Visit();
        await visit.Page.FillAsync("#tuner", "D2 -26 cents");
        await visit.Page.PressAsync("#tuner", "Tab");
        await visit.Press("What to trim");
        var verdict = await visit.Page.InnerTextAsync("#verdict strong");
        Assert.Contains(
            verdict,
            string.Join(' ', said.Split(['\n', ' '], StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal
        );
        await visit.Page.FillAsync("#tuner", "quite low");
        await visit.Page.PressAsync("#tuner", "Tab");
        await visit.Press("What to trim");
        Assert.Contains(
            "D2 -26 cents",
            await visit.Page.InnerTextAsync(".listen .error"),
            StringComparison.Ordinal
        );
        visit.NothingWentWrong();
    }

    private static double Harmonics(double hertz, double t) =>
        Enumerable.Range(1, 7).Sum(k => Math.Sin(2 * Math.PI * k * hertz * t) / k) / 3;

    // A drone has whole periods in four seconds, and in eight.
    private string Save(string name, Func<double, double> sound, int seconds = 4)
    {
        var path = Path.Combine(folder, name);
        using var stream = File.Create(path);
        double[] samples =
        [
            .. Enumerable.Range(0, seconds * Rate).Select(i => 0.5 * sound((double)i / Rate)),
        ];
        WaveFile.Write16(stream, samples, Frequency.FromHertz(Rate));
        return path;
    }
}
