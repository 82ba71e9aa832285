using System.Globalization;

namespace Browser.Tests.Bench;

/// <summary>The page and DroneTube say the same of the same tube, to the printed digit.</summary>
[Collection(BenchTests.Name)]
public class AgreementTests(BenchBrowser browser)
{
    private const int Tubes = 10;

    private static readonly string[] Notes = ["B1", "C2", "C#2", "D2", "D#2", "E2", "F2"];

    [BrowserFact]
    public async Task Ten_tubes_get_the_same_cuts()
    {
        await using var visit = await browser.Visit();
        var folder = Directory.CreateTempSubdirectory("tubes");
        try
        {
            var random = new Random(20);
            for (var i = 0; i < Tubes; i++)
            {
                var path = Path.Combine(folder.FullName, $"tube-{i}.json");
                await File.WriteAllTextAsync(path, Tube(random));
                var note = Notes[random.Next(Notes.Length)];
                await visit.OpenFile("Open a file", path);
                await visit.Page.WaitForFunctionAsync(
                    "name => document.querySelector('#tube-name').value === name",
                    $"tube {i}"
                );
                await visit.Page.SelectOptionAsync("#note", note);
                await visit.Settled();
                var row = (await Programs.DroneTube("table", path, "--from", note, "--to", note)).Split('\n')[
                    1
                ];
                Assert.Contains(await visit.Cut(), row, StringComparison.Ordinal);
                Assert.Contains(await visit.FirstCut(), row, StringComparison.Ordinal);
            }
        }
        finally
        {
            folder.Delete(true);
        }

        visit.NothingWentWrong();

        string Tube(Random random)
        {
            var number = count++;
            string Size(double least, double most) =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"\"{least + (most - least) * random.NextDouble():0.0} mm\""
                );

            var bell =
                random.Next(2) == 0
                    ? $$""", { "part": "bell", "name": "bell", "inside": {{Size(55, 80)}}, "length": {{Size(40, 120)}} }"""
                    : "";
            var middle =
                random.Next(2) == 0
                    ? $$""", { "part": "coupling", "name": "reducer", "before": "pvc-40 1-1/2", "after": "pvc-40 2", "gap": "1 mm", "inside": "41 mm", "between": {{Size(5, 20)}} }, { "part": "pipe", "name": "end", "stock": "pvc-40 2", "length": {{Size(120, 300)}} }"""
                    : "";
            return $$"""
                { "tube": 1, "name": "tube {{number}}", "parts": [
                  { "part": "insert", "name": "mouthpiece", "inside": {{Size(
                    26,
                    32
                )}}, "outside": "40 mm", "inserted": {{Size(15, 30)}}, "protrudes": {{Size(5, 20)}} },
                  { "part": "pipe", "name": "main", "stock": "pvc-40 1-1/2", "inside": {{Size(
                    40.1,
                    40.8
                )}}, "length": "open" }{{middle}}{{bell}} ] }
                """;
        }
    }

    private int count;
}
