using AirColumn;
using AirColumn.Workshop;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace Browser.Tests.Bench;

/// <summary>What the page says to cut: the same as the library, whoever asks and however the tube came in.</summary>
[Collection(BenchTests.Name)]
public class CutTests(BenchBrowser browser)
{
    [BrowserFact]
    public async Task It_opens_with_a_tube_and_its_cut()
    {
        await using var visit = await browser.Visit();
        var build = Build("D2");
        Assert.Equal(LengthText.Tape(build.Exact!.Cut, LengthUnits.Both), await visit.Cut());
        Assert.Equal(build.FirstLength!.In(LengthUnits.Both), await visit.FirstCut());
        await visit.IsSureTo(build.Budget!.PlusMinusCents);
        Assert.Equal("D2", await visit.Page.Locator(".notes tbody th").First.InnerTextAsync());
        visit.NothingWentWrong();
        Assert.Empty(browser.Site.Missing);
    }

    [BrowserFact]
    public async Task Another_note_gives_another_cut()
    {
        await using var visit = await browser.Visit(360);
        await visit.Page.SelectOptionAsync("#note", "C2");
        await visit.Settled();
        Assert.Equal(Build("C2").FirstLength!.In(LengthUnits.Both), await visit.FirstCut());
        await visit
            .Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Undo" })
            .ClickAsync();
        await visit.Settled();
        Assert.Equal(Build("D2").FirstLength!.In(LengthUnits.Both), await visit.FirstCut());
        visit.NothingWentWrong();
    }

    private static TubeBuild Build(string note) =>
        TubeBuilder.Plan(
            PartsFile
                .Read(
                    File.ReadAllText(Path.Combine(Sheet.Top, "samples", "DroneTube", "workshop-tube.json")),
                    Catalogue.Standard
                )
                .Assembly,
            Pitch.Parse(note),
            Tuning.Concert,
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
        );
}
