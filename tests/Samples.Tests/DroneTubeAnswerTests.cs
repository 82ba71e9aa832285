using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Gases;
using AirColumn.Resonances;
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
                .Cylinder(Length.FromMillimeters(50), Length.FromMeters(Number(cut, "pipeLengthMetres")))
                .Cylinder(Length.FromMillimeters(63), Length.FromMillimeters(45))
                .OpenEnd(Length.FromMillimeters(2.4));
            var first = new Column(bore, air).FirstResonances(1)[0].Frequency.Hertz;
            // E2 is 29 semitones below A4 = 440 Hz.
            var cents = 1200 * Math.Log2(first / (440 * Math.Pow(2, -29 / 12.0)));

            Assert.Equal(first, Number(cut, "firstResonanceHz"), 1e-6);
            Assert.Equal(cents, Number(cut, "cents"), 1e-4);
            Assert.Equal(Number(cut, "pipeLengthMetres") + 0.075, Number(cut, "totalLengthMetres"), 1e-9);
        }

        Assert.Equal(0, Number(plan, "cents"), 1e-4);
        Assert.Equal(3, plan.GetProperty("overblown").GetArrayLength());
    }

    [Fact]
    public void Text_and_json_say_the_same()
    {
        var plan = Json();
        var text = Text();
        Says(text, "total length", plan, "totalLength");
        Says(text, "pipe cut length", plan, "pipeLength");
        Says(text, "in whole mm", plan.GetProperty("wholeMillimetre"), "pipeLength");
        Says(text, "in 1/16 in", plan.GetProperty("wholeSixteenthInch"), "pipeLength");
        var trimming = plan.GetProperty("trimming");
        Says(text, "first cut, whole mm", trimming.GetProperty("firstCut"), "pipeLength");
        Says(text, "first cut, 1/16 in", trimming.GetProperty("firstCutSixteenthInch"), "pipeLength");
        Says(text, "Leave", trimming, "allowance");
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

    [Fact]
    public void Every_length_in_the_text_is_metric_and_in_inches()
    {
        var pairs = MetricAndInches().Matches(Text());
        // Two fittings with two sizes each, pipe and wall; six lengths; allowance and tolerance; two of the rule.
        Assert.Equal(16, pairs.Count);
        Assert.All(
            pairs,
            pair =>
            {
                var whole = pair.Groups["whole"] is { Success: true } w ? Read(w.Value) : 0;
                var top = pair.Groups["top"] is { Success: true } t ? Read(t.Value) : 0;
                var bottom = pair.Groups["bottom"] is { Success: true } b ? Read(b.Value) : 1;
                // Half a sixteenth of an inch and half of the last digit in millimetres.
                Assert.Equal(Read(pair.Groups["mm"].Value), (whole + top / bottom) * 25.4, 25.4 / 32 + 0.051);
                Assert.True(bottom <= 16, pair.Value);
            }
        );
    }

    [Fact]
    public void Plan_fits_a_screen_and_ends_with_the_cautions_of_every_step()
    {
        var lines = Text().Split('\n');
        Assert.All(lines, line => Assert.InRange(line.Length, 0, 79));
        Assert.InRange(lines.Length, 30, 60);
        string[] steps =
        [
            "Cutting:",
            "Dust:",
            "Edges:",
            "Heating PVC:",
            "Solvent cement:",
            "Paint:",
            "Playing:",
            "Hygiene:",
        ];
        var cautions = lines.SkipWhile(line =>
            !line.StartsWith("Cautions: Product labels, local codes", Ordinal)
        );
        Assert.Equal(
            steps,
            cautions.SelectMany(line => steps.Where(step => line.StartsWith($"  {step}", Ordinal)))
        );
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
        Assert.Contains("The first resonance and the played note are not the same", text);
        Assert.Contains("11 to 32 cents above", text);
    }

    // Makers publish 117 cm for plain 38 mm pipe on D2 (common practice): longer than the first resonance asks for, and
    // short enough to be trimmed from the first cut. c/4f with 344.0 m/s at 73.416 Hz is 1171.4 mm.
    [Fact]
    public void Plain_pipe_on_d2_agrees_with_published_lengths()
    {
        var plan = Sample.DroneTube("plan", "--note", "D2", "--pipe-diameter", "38 mm", "--json").Json();
        var firstCut = Number(plan.GetProperty("trimming").GetProperty("firstCut"), "totalLengthMetres");
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
            LengthWith("--temperature", "68 °F", "--humidity", "50 %", "--reference", "440 Hz"),
            1e-9
        );
        Assert.True(LengthWith("--temperature", "30 °C") > usual);
        Assert.True(LengthWith("--reference", "444 Hz") < usual);
    }

    [Fact]
    public void Allowance_follows_its_options()
    {
        static double Allowance(params string[] more) =>
            Number(Json(more).GetProperty("trimming"), "allowanceMetres");

        var bare = Allowance("--tolerance", "0 mm");
        Assert.Equal(bare + 0.002, Allowance(), 1e-9);
        Assert.Equal(0.005, Allowance("--trim-cents", "0", "--tolerance", "5 mm"), 1e-9);
        Assert.True(Allowance("--trim-cents", "50") > Allowance());
    }

    private const StringComparison Ordinal = StringComparison.Ordinal;

    private static string Text() => Sample.DroneTube(OnE2).Succeeded();

    private static JsonElement Json(params string[] more) =>
        Sample.DroneTube([.. OnE2, "--json", .. more]).Json();

    private static IEnumerable<JsonElement> Cuts(JsonElement plan) =>
        [
            plan,
            plan.GetProperty("wholeMillimetre"),
            plan.GetProperty("wholeSixteenthInch"),
            plan.GetProperty("trimming").GetProperty("firstCut"),
            plan.GetProperty("trimming").GetProperty("firstCutSixteenthInch"),
        ];

    private static void Says(string text, string label, JsonElement from, string length)
    {
        var line = Assert.Single(text.Split('\n'), line => line.Contains($"{label} ", Ordinal));
        var millimetres = Number(from, $"{length}Metres") * 1000;
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $" {millimetres:0.#} mm"), line);
        Assert.Contains(from.GetProperty($"{length}Inches").GetString()!, line);
    }

    private static double Number(JsonElement from, string name) => from.GetProperty(name).GetDouble();

    private static double Read(string digits) => double.Parse(digits, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"(?<mm>\d+(\.\d)?) mm( \(| +)((?<whole>\d+) )?((?<top>\d+)/(?<bottom>\d+) )?in\b",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex MetricAndInches();
}
