using System.Globalization;
using System.Text.Json;
using AirColumn;
using AirColumn.Documents;
using AirColumn.Workshop;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;
using Xunit.Abstractions;

namespace Browser.Tests.Bench;

/// <summary>The page, DroneTube and ColumnTool say the same of the same tube, to the printed digit.</summary>
[Collection(BenchTests.Name)]
public sealed class AgreementTests(BenchBrowser browser, ITestOutputHelper output) : IDisposable
{
    private static readonly string[] Notes = ["C2", "D2", "D#2", "E2", "F2"];

    // A tube takes the browser many seconds, one of many parts half a minute. The first two have finger holes and a bell; the tube that the page opens
    // with has a mouthpiece and a coupling.
    private static readonly int Tubes = Number("AIRCOLUMN_TUBES", Amount.Of(2, 50));

    private static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(20),
        RelativeHumidity.FromPercent(50)
    );

    private static readonly int Seed = Number("AIRCOLUMN_SEED", 29);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("tubes");

    public void Dispose() => folder.Delete(true);

    private static int Number(string variable, int usual) =>
        Environment.GetEnvironmentVariable(variable) is { Length: > 0 } text
            ? int.Parse(text, CultureInfo.InvariantCulture)
            : usual;

    [BrowserFact]
    public async Task Random_tubes_get_the_same_cuts_and_notes_of_all_three()
    {
        output.WriteLine($"AIRCOLUMN_SEED={Seed}");
        var tubes = new RandomTubes(Seed);
        await using var visit = await browser.Visit();
        foreach (var (n, note) in Notes.Index())
        {
            var count = Tubes * (n + 1) / Notes.Length - Tubes * n / Notes.Length;
            if (count > 0)
            {
                await visit.Page.SelectOptionAsync("#note", note);
            }

            for (var i = 0; i < count; i++)
            {
                var path = Path.Combine(folder.FullName, "tube.json");
                var text = tubes.Next();
                await File.WriteAllTextAsync(path, text);
                await visit.OpenFile("Open a file", path);
                var file = PartsFile.Read(text, Catalogue.Standard);
                await visit.Page.WaitForFunctionAsync(
                    "name => document.querySelector('#tube-name').value === name",
                    file.Name
                );
                await visit.Settled();
                try
                {
                    await OfDroneTube(visit, path, note);
                    await OfColumnTool(visit, file.Assembly, note);
                }
                catch (Exception problem)
                {
                    throw new InvalidOperationException($"seed {Seed}, {note}: {text}", problem);
                }
            }
        }

        visit.NothingWentWrong();
    }

    private static async Task OfDroneTube(BenchVisit visit, string path, string note)
    {
        string[] question = ["table", path, "--from", note, "--to", note];
        var row = Programs.DroneTube(question).Split('\n')[1];
        Assert.Contains(await visit.Cut(), row, StringComparison.Ordinal);
        Assert.Contains(await visit.FirstCut(), row, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(Programs.DroneTube([.. question, "--json"]));
        var told = json.RootElement.GetProperty("notes")[0];
        Assert.Equal(
            told.TryGetProperty("fingered", out var fingered) ? Shown(fingered) : [],
            await Rows(visit, 1)
        );
    }

    // The same bore as a column document. Its length verb keeps holes where they are, so that of a tube with holes only its notes are asked for.
    private async Task OfColumnTool(BenchVisit visit, TubeAssembly assembly, string note)
    {
        var document = Path.Combine(folder.FullName, "column.json");
        var any = assembly.Assemble(Length.FromMillimeters(1200));
        var cut = await visit.Cut();
        if (any.Holes.Count == 0)
        {
            await Write(document, any);
            var section = any.SectionParts.Index().First(part => part.Item == assembly.FreePipe).Index + 1;
            using var solved = JsonDocument.Parse(
                Programs.ColumnTool(
                    "length",
                    document,
                    "--section",
                    section.ToString(CultureInfo.InvariantCulture),
                    "--pitch",
                    note,
                    "--json"
                )
            );
            Assert.Equal(
                LengthText.Tape(
                    Length.FromMeters(solved.RootElement.GetProperty("lengthMetres").GetDouble())
                        + any.FreeCut!.Hidden,
                    LengthUnits.Both
                ),
                cut
            );
        }

        // As cut, to all digits.
        var exact = TubeBuilder.Exact(assembly, AirColumn.Pitch.Parse(note), AirColumn.Tuning.Concert, Room);
        await visit.IsSureTo(exact.Plan().Budget!.PlusMinusCents);
        await Write(document, exact.Exact!.Tube);
        using var found = JsonDocument.Parse(
            Programs.ColumnTool("resonances", document, "--count", "4", "--json")
        );
        Assert.Equal(Shown(found.RootElement.GetProperty("resonances")), await Rows(visit, 0));
    }

    private static async Task Write(string path, AssembledTube tube)
    {
        var column = tube.ColumnIn(Room);
        await File.WriteAllTextAsync(
            path,
            new ColumnDocument(column.Bore, column.AirProfile, column.Options).ToJson()
        );
    }

    private static string[] Shown(JsonElement notes) =>
        [
            .. notes
                .EnumerateArray()
                .Select(note =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{note.GetProperty("pitch").GetString()} {note.GetProperty("cents").GetDouble():+0.0;-0.0;0.0} {note.GetProperty("frequencyHz").GetDouble():0.00} Hz"
                    )
                ),
        ];

    // Of the table of notes, or of that with holes open.
    private static async Task<string[]> Rows(BenchVisit visit, int table) =>
        await visit.Page.EvaluateAsync<string[]>(
            "table => [...(document.querySelectorAll('.notes')[table]?.querySelectorAll('tbody tr') ?? [])].map(row => [row.cells[0].innerText, row.querySelector('.cents').innerText, row.cells[2].innerText].join(' '))",
            table
        );
}
