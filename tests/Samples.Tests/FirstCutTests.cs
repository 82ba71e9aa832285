using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using AirColumn;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace Samples.Tests;

/// <summary>One tube has one first cut, whichever verb is asked, and no mark on the tape is below it.</summary>
public sealed partial class FirstCutTests : IDisposable
{
    private static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(20),
        RelativeHumidity.FromPercent(50)
    );

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("first-cut-");

    public void Dispose() => folder.Delete(true);

    // Tubes of our own, ten to a test so that a failure is found again by its number; 200 in the long run.
    public static TheoryData<int> Tens => [.. Enumerable.Range(0, Amount.Of(1, 20))];

    [Theory]
    [MemberData(nameof(Tens))]
    public void Every_verb_says_the_same_safe_cut(int ten)
    {
        for (var i = 10 * ten; i < 10 * ten + 10; i++)
        {
            Check(new RandomTube(i));
        }
    }

    private void Check(RandomTube tube)
    {
        var parts = Path.Combine(folder.FullName, "tube.json");
        File.WriteAllText(parts, tube.Json);
        var note = tube.Note.ToString();
        var sheet = Sample.DroneTube("sheet", parts, "--note", note, "--out", "-").Output;
        var said = new List<(string Verb, Cut Cut)>
        {
            ("sheet", Read(sheet, "<td>open one</td>")),
            (
                "table",
                Read(Sample.DroneTube("table", parts, "--from", note, "--to", note).Output, $"{note} ", 1)
            ),
            ("compare", Read(Sample.DroneTube("compare", parts, "--note", note).Output, "cut first:")),
            (
                "cuts",
                Read(
                    Sample.DroneTube("cuts", parts, "--notes", note, "--stock", "6 m").Output,
                    $"1: {note} open one"
                )
            ),
        };
        if (tube.PlanOptions is { } options)
        {
            using var document = JsonDocument.Parse(
                Sample.DroneTube(["plan", "--note", note, .. options, "--json"]).Output
            );
            var plan = document.RootElement;
            var first = plan.GetProperty("cutFirst");
            var inches = plan.GetProperty("cutFirstSixteenthInch");
            said.Add(
                (
                    "plan",
                    new Cut(
                        1000 * first.GetProperty("cutMetres").GetDouble(),
                        1000 * inches.GetProperty("cutMetres").GetDouble()
                    )
                )
            );
        }

        Assert.All(
            said,
            one =>
            {
                Assert.Equal(said[0].Cut.Millimetres, one.Cut.Millimetres, 1e-6);
                Assert.Equal(said[0].Cut.Inches, one.Cut.Inches, 1e-6);
            }
        );

        // Safe, and one mark less would not be: so it was rounded once.
        var assembly = PartsFile.Read(tube.Json, Catalogue.Standard).Assembly;
        var target = Tuning.Concert.FrequencyOf(tube.Note);
        foreach (var (cut, mark) in new[] { (said[0].Cut.Millimetres, 1), (said[0].Cut.Inches, 25.4 / 16) })
        {
            Assert.Equal(0, Math.IEEERemainder(cut, mark), 1e-6);
            Assert.True(Sharpest(assembly, cut, target) <= 1e-4, $"tube {tube.Number}: {cut} mm is not safe");
            Assert.True(
                Sharpest(assembly, cut - mark, target) > 0,
                $"tube {tube.Number}: {cut} mm is too long"
            );
        }
    }

    // The upper end of the range in which the drone is expected, cents from the note.
    private static double Sharpest(TubeAssembly assembly, double cut, Frequency target)
    {
        var tube = assembly.Assemble(Length.FromMillimeters(cut));
        var open = Enumerable
            .Range(0, tube.SectionParts.Count)
            .First(i => ReferenceEquals(tube.SectionParts[i], assembly.FreePipe));
        var options = new BuildOptions();
        var row = TrimTable
            .For(
                new Column(tube.Bore, Room),
                new TrimQuestion(open, target)
                {
                    Rows = 2,
                    Correction = options.Correction,
                    Tolerances = TubeBuilder.Tolerances(tube, Room, options),
                }
            )
            .Rows[0];
        return row.Cents + row.PlusMinusCents;
    }

    private static Cut Read(string page, string after, int which = 0)
    {
        var start = page.IndexOf(after, StringComparison.Ordinal);
        Assert.True(start >= 0, page);
        var text = page[start..].ReplaceLineEndings(" ");
        text = Regex.Replace(
            Regex.Replace(text[..Math.Min(400, text.Length)], "<[^>]*>", ""),
            "[ \u00a0]+",
            " "
        );
        var found = Both().Matches(text);
        Assert.True(found.Count > which, text);
        return new Cut(
            double.Parse(found[which].Groups["mm"].Value, CultureInfo.InvariantCulture),
            25.4
                * found[which]
                    .Groups["in"]
                    .Value.Split(' ')
                    .Sum(part =>
                        part.Split('/') is [var top, var bottom]
                            ? double.Parse(top, CultureInfo.InvariantCulture)
                                / double.Parse(bottom, CultureInfo.InvariantCulture)
                            : double.Parse(part, CultureInfo.InvariantCulture)
                    )
        );
    }

    private sealed record Cut(double Millimetres, double Inches);

    [GeneratedRegex(@"(?<mm>\d+(\.\d+)?) mm( or | \()(?<in>(\d+ )?\d+/\d+|\d+) in")]
    private static partial Regex Both();
}
