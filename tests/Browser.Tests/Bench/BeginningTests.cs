using System.Globalization;
using AirColumn;
using AirColumn.Workshop;
using AirColumn.Workshop.Instruments;
using UnitsNet;

namespace Browser.Tests.Bench;

/// <summary>What the bench can begin with besides a drone tube.</summary>
[Collection(BenchTests.Name)]
public class BeginningTests(BenchBrowser browser)
{
    private static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(20),
        RelativeHumidity.FromPercent(50)
    );

    [BrowserFact]
    public async Task Pan_pipes_come_one_by_one()
    {
        await using var visit = await browser.Visit(360);
        await visit.Press("Pan pipes");
        await visit.Page.Locator(".pipes tbody tr").Nth(7).WaitForAsync();
        var sawn = await visit.Page.Locator(".pipes tbody strong").AllInnerTextsAsync();
        var notes = Scale.Major.From(Pitch.Parse("G4"), 8);
        Assert.Equal(
            notes.Select(note =>
                LengthText.Tape(
                    PanPipe
                        .For(
                            note,
                            Tuning.Concert,
                            Room,
                            Length.FromMillimeters(13),
                            Length.FromMillimeters(15)
                        )
                        .Cut,
                    LengthUnits.Both
                )
            ),
            sawn
        );
        await visit.AxeFindsNothing();
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_flute_gets_its_holes_and_a_template()
    {
        await using var visit = await browser.Visit(360, isDark: true);
        await visit.Press("Flute");
        await visit.Press("Place the holes");
        await visit.Page.Locator(".holes tbody tr").Nth(5).WaitForAsync();
        Assert.Equal(
            ["C#5", "B4", "A4", "G4", "F#4", "E4"],
            await visit.Page.Locator(".holes tbody td:last-child").AllInnerTextsAsync()
        );
        await visit.AxeFindsNothing();
        await visit.Press("Template, full size");
        var circles = visit.Page.FrameLocator("dialog iframe").Locator("circle.hole");
        await circles.First.WaitForAsync();
        Assert.Equal(6, await circles.CountAsync());
        visit.NothingWentWrong();
    }

    [BrowserFact]
    [Trait(Amount.Trait, Amount.Long)]
    public async Task Placing_holes_can_be_stopped_and_begun_again()
    {
        await using var visit = await browser.Visit();
        await visit.Press("Flute");
        await visit.Press("Place the holes");
        await visit.Press("Cancel");
        await visit.Page.GetByText("Stopped.").WaitForAsync();
        Assert.Equal(0, await visit.Page.Locator(".holes").CountAsync());
        await visit.Press("Place the holes");
        await visit.Page.Locator(".holes").WaitForAsync();
        visit.NothingWentWrong();
    }

    [BrowserFact]
    public async Task A_horn_is_a_tube_with_a_cut()
    {
        await using var visit = await browser.Visit();
        await visit.Press("Horn");
        await visit.Settled();
        Assert.EndsWith("in", await visit.FirstCut(), StringComparison.Ordinal);
        visit.NothingWentWrong();
    }

    // What is printed is as large as it says: the ruler's svg is 104 mm wide, at 96 dots an inch.
    [BrowserFact]
    [Trait(Amount.Trait, Amount.Long)]
    public async Task The_saw_line_is_as_long_as_its_pipe_is_round()
    {
        await using var visit = await browser.Visit();
        await visit.Page.ClickAsync("#part-1 .card-title");
        await visit.Press("Saw line, full size");
        var frame = visit.Page.FrameLocator("dialog iframe");
        var ruler = await frame.Locator("svg").First.BoundingBoxAsync();
        Assert.Equal(104 / 25.4 * 96, ruler!.Width, 0.5);
        var text = await frame.Locator("section").First.InnerTextAsync();
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"{Math.PI * 48.26:0.#} mm"),
            text,
            StringComparison.Ordinal
        );
        visit.NothingWentWrong();
    }
}
