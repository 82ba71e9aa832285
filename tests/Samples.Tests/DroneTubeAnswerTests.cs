using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using AirColumn;
using UnitsNet;

namespace Samples.Tests;

public partial class DroneTubeAnswerTests
{
    // A tube of our own: 50 mm pipe on E2, a mouthpiece and a coupler.
    private static readonly string[] OnE2 =
    [
        "plan",
        "--note",
        "E2",
        "--pipe-diameter",
        "50 mm",
        "--wall",
        "2.4 mm",
        "--mouth-adds",
        "30 mm",
        "--mouth-diameter",
        "31 mm",
        "--end-adds",
        "45 mm",
        "--end-diameter",
        "63 mm",
    ];

    [Fact]
    public void Promised_length_gives_the_note_when_the_engine_is_asked()
    {
        var plan = Json();
        var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
        foreach (var cut in Cuts(plan))
        {
            var bore = Bore.Build()
                .Cylinder(Length.FromMillimeters(31), Length.FromMillimeters(30))
                .Cylinder(Length.FromMillimeters(50), Length.FromMeters(Number(cut, "cutMetres")))
                .Cylinder(Length.FromMillimeters(63), Length.FromMillimeters(45))
                .OpenEnd(Length.FromMillimeters(2.4));
            var first = new Column(bore, air).FirstResonances(1)[0].Frequency.Hertz;
            // E2 is 29 semitones below A4 = 440 Hz.
            var cents = 1200 * Math.Log2(first / (440 * Math.Pow(2, -29 / 12.0)));

            Assert.Equal(first, Number(cut, "firstResonanceHz"), 1e-6);
            Assert.Equal(cents, Number(cut, "cents"), 1e-4);
        }

        var exact = plan.GetProperty("onTheNote");
        Assert.Equal(0, Number(exact, "cents"), 1e-4);
        Assert.Equal(Number(exact, "cutMetres") + 0.075, Number(plan, "totalLengthMetres"), 1e-9);
        Assert.Equal(3, plan.GetProperty("overblown").GetArrayLength());
    }

    [Fact]
    public void A_process_of_its_own_answers_as_it_does_within_these_tests() =>
        Assert.Equal(Text(), Sample.DroneTubeProcess(OnE2).Succeeded());

    [Fact]
    public void Text_and_json_say_the_same()
    {
        var plan = Json();
        var text = Text();
        Says(text, "total length", plan, "totalLength");
        Says(text, "pipe cut length", plan.GetProperty("onTheNote"), "cut");
        var cuts = CutList(text);
        JsonElement[] rounded =
        [
            plan.GetProperty("wholeMillimetre"),
            plan.GetProperty("wholeSixteenthInch"),
            plan.GetProperty("cutFirst"),
            plan.GetProperty("cutFirstSixteenthInch"),
        ];
        Assert.All(
            cuts.Zip(rounded),
            pair =>
            {
                var (cut, json) = pair;
                Assert.Equal(Number(json, "cutMetres") * 1000, cut.Pipe * cut.Millimetres, 1e-9);
                Assert.Equal(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Number(json, "firstResonanceHz"):0.00} Hz, {Number(json, "cents"):+0.0;-0.0} cents"
                    ),
                    cut.Resonance
                );
            }
        );
        Says(text, "c/4f:", plan.GetProperty("quarterWaveRule"), "totalLength");
        var overblown = plan.GetProperty("overblown")[0];
        Assert.Contains(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Number(overblown, "frequencyHz"):0.00} Hz   {overblown.GetProperty("pitch")} {Number(overblown, "cents"):+0.0;-0.0} cents"
            ),
            text
        );
    }

    // As a maker adds them up: in the unit that is printed, with nothing left over.
    [Theory]
    [InlineData()]
    [InlineData("--mouth-adds", "30.26 mm", "--end-adds", "44.45 mm")]
    [InlineData("--mouth-adds", "1.31 in", "--end-adds", "1 7/8 in", "--note", "C#2")]
    [InlineData("--mouth-adds", "0.4 mm", "--end-adds", "0.3 mm")]
    public void Printed_columns_add_up(params string[] more)
    {
        var text = Sample.DroneTube(Changed(more)).Succeeded();
        var cuts = CutList(text);
        Assert.Equal([1, 25.4, 1, 25.4], cuts.Select(cut => cut.Millimetres));
        Assert.All(cuts, cut => Assert.Equal(cut.Total, cut.Pipe + cut.Fittings, 1e-9));

        // Millimetres are whole, inches whole sixteenths, and what is left to trim is what the rows differ by.
        Assert.All(
            cuts,
            cut => Assert.Equal(0, Math.IEEERemainder(cut.Pipe * (cut.Millimetres == 1 ? 1 : 16), 1))
        );
        var left = LeftToTrim().Match(text);
        Assert.Equal(cuts[2].Pipe - cuts[0].Pipe, Read(left.Groups["mm"].Value), 1e-9);
        Assert.Equal(cuts[3].Pipe - cuts[1].Pipe, Fraction(left.Groups["in"].Value), 1e-9);
    }

    [Fact]
    public void Every_computed_length_is_metric_and_in_sixteenths()
    {
        var pairs = MetricAndInches().Matches(Text());
        // Total and pipe; total and difference of the rule.
        Assert.Equal(4, pairs.Count);
        Assert.All(
            pairs,
            pair =>
            {
                var inches = Fraction(pair.Groups["in"].Value);
                // Half a sixteenth of an inch and half of the last digit in millimetres.
                Assert.Equal(Read(pair.Groups["mm"].Value), inches * 25.4, 25.4 / 32 + 0.051);
                Assert.Equal(0, Math.IEEERemainder(inches * 16, 1));
            }
        );
    }

    [Fact]
    public void Measured_sizes_are_echoed_as_a_caliper_reads_them()
    {
        var text = Text();
        // 1 in is 25.4 mm.
        Assert.Contains(
            "mouth fitting     30 mm (1.181 in)         31 mm (1.220 in)",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "far-end fitting   45 mm (1.772 in)         63 mm (2.480 in)",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("wall 2.4 mm (0.094 in)", text, StringComparison.Ordinal);
        Assert.Contains(
            " 37.85 mm (1.490 in)\n",
            Sample.DroneTube("plan", "--note", "D2", "--pipe-diameter", "1.49 in").Succeeded(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Page_is_short_and_each_caution_stands_at_its_step()
    {
        var lines = Text().TrimEnd('\n').Split('\n');
        Assert.All(lines, line => Assert.InRange(line.Length, 0, 79));
        // Two pages of a terminal's print: the limits of four plastics take ten lines.
        Assert.InRange(lines.Length, 30, 80);
        string[] marks =
        [
            "Lengths, computed",
            "Cautions: Product labels, local codes",
            "  New pipe only:",
            "  Cutting:",
            "  Power saws:",
            "  Dust:",
            "  Edges:",
            "Trimming:",
            "  Playing:",
            "  Hygiene:",
            "Joining and finishing",
            "  Heating plastic:",
            "  Solvent cement:",
            "  Paint:",
            "  Drilling:",
        ];
        Assert.Equal(marks, lines.SelectMany(line => marks.Where(mark => line.StartsWith(mark, Ordinal))));
    }

    [Fact]
    public void Warnings_are_on_the_page_and_beside_json()
    {
        string[] wide = ["plan", "--note", "D2", "--pipe-diameter", "52 mm"];
        Assert.Contains(
            "\nNote: The blown end is 52 mm (2.047 in) inside;",
            Sample.DroneTube(wide).Succeeded(),
            StringComparison.Ordinal
        );
        var json = Sample.DroneTube([.. wide, "--json"]);
        Assert.Equal(0, json.ExitCode);
        Assert.StartsWith("warning: The blown end is 52 mm", json.Error, Ordinal);
        using var document = JsonDocument.Parse(json.Output);
        Assert.Equal(1, document.RootElement.GetProperty("warnings").GetArrayLength());
    }

    [Fact]
    public void Read_me_shows_what_the_program_prints()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "AirColumn.slnx")))
        {
            folder = folder.Parent;
        }

        var page = File.ReadAllText(Path.Combine(folder!.FullName, "samples", "DroneTube", "README.md"));
        var shown = page.ReplaceLineEndings("\n").Split("```\n");
        Assert.All(OnE2.Skip(1), argument => Assert.Contains(argument, shown[1]));
        Assert.Equal(shown[3], Text());
    }

    [Fact]
    public void Played_note_and_first_resonance_are_kept_apart()
    {
        var text = Text().ReplaceLineEndings(" ");
        Assert.Contains("the played note is not the first resonance.", text, StringComparison.Ordinal);
        Assert.Contains(
            "It usually lies 11 to 32 cents above the resonance computed for the air of the room (common practice)",
            text,
            StringComparison.Ordinal
        );
    }

    // Makers publish 117 cm for plain 38 mm pipe on D2 (common practice): longer than the first resonance asks for, and
    // short enough to be trimmed from the first cut. c/4f with 344.0 m/s at 73.416 Hz is 1171.4 mm.
    [Fact]
    public void Plain_pipe_on_d2_agrees_with_published_lengths()
    {
        var plan = Sample.DroneTube("plan", "--note", "D2", "--pipe-diameter", "38 mm", "--json").Json();
        var firstCut = Number(plan.GetProperty("cutFirst"), "cutMetres");
        Assert.InRange(1.17, Number(plan, "totalLengthMetres"), firstCut);
        var rule = plan.GetProperty("quarterWaveRule");
        Assert.Equal(1.1714, Number(rule, "totalLengthMetres"), 0.0005);
        Assert.True(Number(rule, "differenceMetres") > 0.01);
        Assert.InRange(Number(rule, "cents"), -40, -20);
    }

    [Fact]
    public void Warm_air_makes_a_longer_tube_and_a_higher_reference_a_shorter_one()
    {
        static double LengthWith(params string[] more) => Number(Json(more), "totalLengthMetres");

        var usual = LengthWith();
        Assert.Equal(
            usual,
            LengthWith("--temperature", "68 °F", "--humidity", "50 %", "--reference", "440"),
            1e-9
        );
        Assert.True(LengthWith("--temperature", "25 °C") > usual);
        Assert.True(LengthWith("--reference", "444 Hz") < usual);
    }

    [Fact]
    public void One_unit_is_shown_where_one_is_asked_for()
    {
        static string In(string units) => Sample.DroneTube([.. OnE2, "--units", units]).Succeeded();

        Assert.DoesNotMatch(@"\d in\b", In("mm"));
        Assert.DoesNotContain(" mm", In("in"), StringComparison.Ordinal);
        Assert.Contains("first cut, 1/16 in  39 13/16 in", In("in"), StringComparison.Ordinal);
        Assert.DoesNotContain(
            " mm",
            Sample.DroneTube("plan", "--note", "D2", "--pipe-diameter", "52 mm", "--units", "in").Succeeded(),
            StringComparison.Ordinal
        );
    }

    private const StringComparison Ordinal = StringComparison.Ordinal;

    private static string Text() => Sample.DroneTube(OnE2).Succeeded();

    private static JsonElement Json(params string[] more) =>
        Sample.DroneTube([.. OnE2, "--json", .. more]).Json();

    private static IEnumerable<JsonElement> Cuts(JsonElement plan) =>
        [
            plan.GetProperty("onTheNote"),
            plan.GetProperty("wholeMillimetre"),
            plan.GetProperty("wholeSixteenthInch"),
            plan.GetProperty("cutFirst"),
            plan.GetProperty("cutFirstSixteenthInch"),
        ];

    private static void Says(string text, string label, JsonElement from, string length)
    {
        var line = Assert.Single(text.Split('\n'), line => line.Contains($"{label} ", Ordinal));
        var millimetres = Number(from, $"{length}Metres") * 1000;
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $" {millimetres:0.#} mm"), line);
        if (from.TryGetProperty($"{length}Inches", out var inches))
        {
            Assert.Contains(inches.GetString()!, line);
        }
    }

    private static double Number(JsonElement from, string name) => from.GetProperty(name).GetDouble();

    private static double Read(string digits) => double.Parse(digits, CultureInfo.InvariantCulture);

    // The sample's arguments, some with another value.
    private static string[] Changed(string[] more)
    {
        string[] arguments = [.. OnE2];
        for (var i = 0; i < more.Length; i += 2)
        {
            var at = Array.IndexOf(arguments, more[i]);
            arguments = at < 0 ? [.. arguments, more[i], more[i + 1]] : arguments;
            arguments[at < 0 ? arguments.Length - 1 : at + 1] = more[i + 1];
        }

        return arguments;
    }

    private static CutRow[] CutList(string text)
    {
        CutRow[] rows =
        [
            .. CutRows()
                .Matches(text)
                .Select(row => new CutRow(
                    row.Groups["unit"].Value == "mm" ? 1 : 25.4,
                    Fraction(row.Groups["pipe"].Value),
                    Fraction(row.Groups["fittings"].Value),
                    Fraction(row.Groups["total"].Value),
                    row.Groups["resonance"].Value
                )),
        ];
        Assert.Equal(4, rows.Length);
        return rows;
    }

    // "38 5/8" or "1008".
    private static double Fraction(string text) =>
        text.Split(' ')
            .Sum(part => part.Split('/') is [var top, var bottom] ? Read(top) / Read(bottom) : Read(part));

    private sealed record CutRow(
        double Millimetres,
        double Pipe,
        double Fittings,
        double Total,
        string Resonance
    );

    [GeneratedRegex(
        @"^  (first cut|in)\b.*? (?<pipe>\d[\d /.]*) (?<unit>mm|in) +(?<fittings>\d[\d /.]*) \k<unit> +(?<total>\d[\d /.]*) \k<unit> +(?<resonance>\S+ Hz, \S+ cents)$",
        RegexOptions.CultureInvariant | RegexOptions.Multiline
    )]
    private static partial Regex CutRows();

    [GeneratedRegex(
        @"first cut leaves (?<mm>\d+) mm or (?<in>\d[\d /]*) in to trim",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex LeftToTrim();

    [GeneratedRegex(
        @"(?<mm>\d+(\.\d)?) mm( \(| +)(?<in>\d+|(\d+ )?\d+/\d+) in\b",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex MetricAndInches();
}
