using System.Text.Json;

namespace Samples.Tests;

public class ColumnToolAnswerTests
{
    private const string Header = "frequency_hz,re,im";

    [Fact]
    public void Impedance_of_an_ideal_closed_tube_is_the_textbook_formula_in_the_order_asked_for()
    {
        double[] asked = [33.17, 30, 800.5, 30];
        var rows = Sample
            .ColumnTool(IdealTube.Closed, "impedance", "-", "--at", "33.17, 30,800.5,30")
            .Rows(Header);
        Assert.Equal(asked, rows.Select(row => row[0]));
        foreach (var row in rows)
        {
            var expected = -IdealTube.CharacteristicImpedance / Math.Tan(IdealTube.WaveNumber(row[0]));
            Assert.Equal(0, row[1], 1e-9 * Math.Abs(expected));
            // Rounding of kL up to 15, magnified by the slope of the cotangent.
            Assert.Equal(expected, row[2], 1e-11 * Math.Abs(expected));
        }
    }

    [Fact]
    public void Wave_fronts_and_the_number_of_modes_can_be_named()
    {
        const string Steep =
            "{\"column\":1,\"sections\":[{\"shape\":\"cone\",\"from\":\"20 mm\",\"to\":\"220 mm\",\"length\":\"500 mm\"}],\"farEnd\":{\"kind\":\"baffle\"}}";
        var plain = First();
        Assert.Equal(plain, First("--wavefronts", "multimodal"));
        Assert.InRange(1200 * Math.Log2(First("--modes", "2") / plain), -1, 1);
        Assert.NotEqual(plain, First("--modes", "2"));

        double First(params string[] options) =>
            Number(
                Sample
                    .ColumnTool(Steep, ["resonances", "-", "--count", "1", "--json", .. options])
                    .Json()
                    .GetProperty("resonances")
                    .EnumerateArray()
                    .First(),
                "frequencyHz"
            );
    }

    [Fact]
    public void Impedance_over_a_span_is_equally_spaced()
    {
        var rows = Sample
            .ColumnTool(IdealTube.Open, "impedance", "-", "--from", "20", "--to", "60", "--points", "5")
            .Rows(Header);
        Assert.Equal([20, 30, 40, 50, 60], rows.Select(row => row[0]));
        foreach (var row in rows)
        {
            var expected = IdealTube.CharacteristicImpedance * Math.Tan(IdealTube.WaveNumber(row[0]));
            Assert.Equal(expected, row[2], 1e-11 * Math.Abs(expected));
        }
    }

    [Fact]
    public void Resonances_of_an_ideal_open_tube_are_odd_quarter_waves()
    {
        var json = Sample.ColumnTool(IdealTube.Open, "resonances", "-", "--count", "4", "--json").Json();
        Assert.Empty(json.GetProperty("warnings").EnumerateArray());
        var resonances = json.GetProperty("resonances").EnumerateArray().ToArray();
        Assert.Equal(4, resonances.Length);
        for (var i = 0; i < 4; i++)
        {
            var expected = (2 * i + 1) * IdealTube.SpeedOfSound / (4 * IdealTube.Length);
            Assert.Equal(expected, Number(resonances[i], "frequencyHz"), 1e-9 * expected);
            // Without losses the peak has neither height nor width.
            Assert.Equal(JsonValueKind.Null, resonances[i].GetProperty("q").ValueKind);
            Assert.Equal(JsonValueKind.Null, resonances[i].GetProperty("magnitude").ValueKind);
        }

        // 85 Hz: F2 is 440·2^(−28/12) = 87.307 Hz (iso16).
        Assert.Equal("F2", resonances[0].GetProperty("pitch").GetString());
        var cents = 1200 * Math.Log2(85 / (440 * Math.Pow(2, -28 / 12.0)));
        Assert.Equal(cents, Number(resonances[0], "cents"), 1e-6);
    }

    // A tube that came out 12 mm longer, measured by its textbook impedance or by its odd quarter waves.
    [Fact]
    public void What_was_measured_is_fitted()
    {
        const double Longer = IdealTube.Length + 0.012;
        var csv = Path.GetTempFileName();
        try
        {
            File.WriteAllLines(
                csv,
                Enumerable
                    .Range(0, 60)
                    .Select(i => 31.7 + 10 * i)
                    .Select(f =>
                        FormattableString.Invariant(
                            $"{f},0,{IdealTube.CharacteristicImpedance * Math.Tan(IdealTube.WaveNumber(f) * Longer)}"
                        )
                    )
            );
            Fits("--impedance", csv, "--noise", "0.001");
        }
        finally
        {
            File.Delete(csv);
        }

        Fits("--resonance", Quarters(1), "--resonance", Quarters(3), "--resonance", Quarters(5));
        Sample
            .ColumnTool(IdealTube.Open, "fit", "-", "--tolerance", "length of section 2 ± 20 mm")
            .Refused(2, "--resonance or --impedance must be given, whichever was measured, but not both.");
        Sample
            .ColumnTool(
                IdealTube.Open,
                "fit",
                "-",
                "--tolerance",
                "length of section 2 ± 20 mm",
                "--resonance",
                "1 at 99 kHz ± 1 cents"
            )
            .Refused(
                2,
                FormattableString.Invariant(
                    // The first radial mode: its cut-on is at ka = 3.8317060, the first zero of J₁ (DLMF 10.21, from memory).
                    $"--resonance goes up to 99000 Hz; the column answers up to {3.8317060 * IdealTube.SpeedOfSound / (2 * Math.PI * 0.02):0.0} Hz. Leave out the higher frequencies."
                )
            );

        void Fits(params string[] measured)
        {
            var fit = Sample
                .ColumnTool(
                    IdealTube.Open,
                    ["fit", "-", "--tolerance", "length of section 2 ± 20 mm", .. measured, "--json"]
                )
                .Json();
            Assert.True(fit.GetProperty("solved").GetBoolean());
            var value = Assert.Single(fit.GetProperty("values").EnumerateArray());
            Assert.Equal(0.762, Number(value, "value"), 2e-6);
            Assert.True(value.GetProperty("isOff").GetBoolean());
            Assert.InRange(Number(fit, "misfit"), 0, 0.1);
        }

        static string Quarters(int odd) =>
            FormattableString.Invariant(
                $"{(odd + 1) / 2} at {odd * IdealTube.SpeedOfSound / (4 * Longer)} Hz ± 0.1 cents"
            );
    }

    [Fact]
    public void A_lossy_tube_has_finite_quality_factors_and_a_reference_moves_the_cents()
    {
        var text = IdealTube.Open.Replace("\"none\"", "\"full\"", StringComparison.Ordinal);
        var concert = First(Sample.ColumnTool(text, "resonances", "-", "--count", "1", "--json").Json());
        var sharp = First(
            Sample
                .ColumnTool(text, "resonances", "-", "--below", "100 Hz", "--reference", "442", "--json")
                .Json()
        );
        Assert.InRange(Number(concert, "q"), 10, 1000);
        Assert.True(Number(concert, "magnitude") > IdealTube.CharacteristicImpedance);
        // Boundary layers slow the wave: below c/4L, by less than 5 % in a tube this wide.
        Assert.InRange(Number(concert, "frequencyHz"), 0.95 * 85, 85);
        Assert.Equal(Number(concert, "frequencyHz"), Number(sharp, "frequencyHz"), 1e-9);
        Assert.Equal(-1200 * Math.Log2(442 / 440.0), Number(sharp, "cents") - Number(concert, "cents"), 1e-6);
    }

    [Fact]
    public void Without_json_the_resonances_are_a_table()
    {
        var lines = Sample
            .ColumnTool(IdealTube.Open, "resonances", "-", "--count", "2")
            .Succeeded()
            .Split('\n');
        Assert.Equal(
            [
                "#  frequency/Hz  magnitude/(Pa·s/m³)         q  pitch  cents",
                "1        85.000             Infinity  Infinity  F2     -46.4",
                "2       255.000             Infinity  Infinity  C4     -44.4",
                "",
            ],
            lines
        );
    }

    // Three quarters of a wave.
    [Fact]
    public void The_length_for_an_overblown_note_is_that_of_its_resonance()
    {
        var json = Sample
            .ColumnTool(
                IdealTube.Open,
                "length",
                "-",
                "--section",
                "2",
                "--pitch",
                "A3",
                "--resonance",
                "2",
                "--json"
            )
            .Json();
        Assert.Equal(3 * IdealTube.SpeedOfSound / (4 * 220) - 0.25, Number(json, "lengthMetres"), 1e-8);
        Assert.Equal(220, Number(json, "frequencyHz"), 1e-6);
    }

    [Theory]
    [InlineData("1")]
    [InlineData("2")]
    public void The_length_that_sounds_a_pitch_is_a_quarter_wave(string section)
    {
        var json = Sample
            .ColumnTool(
                IdealTube.Open,
                "length",
                "-",
                "--section",
                section,
                "--pitch",
                "A2",
                "--reference",
                "440 Hz",
                "--json"
            )
            .Json();
        var total = IdealTube.SpeedOfSound / (4 * 110); // A2 is two octaves below A4
        var other = section == "1" ? 0.75 : 0.25;
        Assert.Equal(total - other, Number(json, "lengthMetres"), 1e-8);
        Assert.Equal(110, Number(json, "frequencyHz"), 1e-6);
        // d(1200·log2(c/4L))/dL, per millimetre.
        Assert.Equal(-1200 / (Math.Log(2) * total * 1000), Number(json, "centsPerMillimetre"), 1e-5);
    }

    [Fact]
    public void Air_is_that_of_the_published_table()
    {
        // IEC 61094-2:2009, table F.1: 23 °C, 101.325 kPa, 50 %, 400 ppm.
        var json = Sample
            .ColumnTool("", "air", "--temperature", "23 °C", "--humidity", "50 %", "--json")
            .Json();
        AssertQuantity(json, "speedOfSound", 345.86652, "m/s", 1e-5);
        AssertQuantity(json, "density", 1.1860848, "kg/m³", 1e-7);
        AssertQuantity(json, "viscosity", 1.826566e-5, "Pa·s", 1e-11);
        AssertQuantity(json, "heatCapacityRatio", 1.4007573, "1", 1e-7);
        AssertQuantity(json, "thermalDiffusivity", 2.115317e-5, "m²/s", 1e-11);
        Assert.Equal("IEC 61094-2:2009, Annex F", json.GetProperty("model").GetString());
        Assert.True(json.GetProperty("insideStatedRange").GetBoolean());
        Assert.Empty(json.GetProperty("warnings").EnumerateArray());
        var state = json.GetProperty("state");
        AssertQuantity(state, "temperature", 23, "°C", 1e-12);
        AssertQuantity(state, "humidity", 50, "%", 1e-12);
        AssertQuantity(state, "pressure", 101.325, "kPa", 1e-12);
        AssertQuantity(state, "co2", 400, "ppm", 1e-9);
    }

    [Fact]
    public void Air_outside_the_stated_range_warns_on_the_error_stream_and_in_the_JSON()
    {
        var outcome = Sample.ColumnTool("", "air", "--temperature", "12 °C", "--humidity", "95 %", "--json");
        Assert.Equal(0, outcome.ExitCode);
        using var json = JsonDocument.Parse(outcome.Output);
        Assert.False(json.RootElement.GetProperty("insideStatedRange").GetBoolean());
        var warnings = json
            .RootElement.GetProperty("warnings")
            .EnumerateArray()
            .Select(w => w.GetString())
            .ToArray();
        Assert.NotEmpty(warnings);
        Assert.Equal(
            warnings.Select(warning => $"warning: {warning}"),
            outcome.Error.TrimEnd('\n').Split('\n')
        );
    }

    [Fact]
    public void Played_air_is_computed_by_the_model_that_reaches_it()
    {
        var outcome = Sample.ColumnTool("", "air", "--temperature", "97 F", "--co2", "4 %", "--json");
        Assert.Equal("", outcome.Error);
        using var json = JsonDocument.Parse(outcome.Output);
        Assert.Equal("mixture of gases", json.RootElement.GetProperty("model").GetString());
        Assert.True(json.RootElement.GetProperty("insideStatedRange").GetBoolean());
    }

    [Fact]
    public void A_file_is_read_like_the_standard_input()
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, IdealTube.Closed);
            Assert.Equal(
                Sample.ColumnTool(IdealTube.Closed, "impedance", "-", "--at", "30").Succeeded(),
                Sample.ColumnTool("", "impedance", path, "--at", "30").Succeeded()
            );
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_process_of_its_own_answers_as_it_does_within_these_tests()
    {
        string[] asked = ["resonances", "-", "--below", "300.5"];
        Assert.Equal(
            Sample.ColumnTool(IdealTube.Open, asked).Succeeded(),
            Sample.ColumnToolProcess(IdealTube.Open, asked).Succeeded()
        );
        string[] wrong = ["resonances", "-", "--count", "0"];
        Assert.Equal(Sample.ColumnTool("", wrong), Sample.ColumnToolProcess("", wrong));
        Assert.Equal(2, Sample.ColumnTool("", wrong).ExitCode);
    }

    // Otherwise the runs in a country's culture would prove nothing.
    [Theory]
    [InlineData("ColumnTool")]
    [InlineData("DroneTube")]
    public void Programs_run_in_the_culture_of_the_machine(string program) =>
        Assert.True(Sample.HasCultures(program));

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("th-TH")]
    [InlineData("ar-SA")]
    public void Answers_are_the_same_in_every_culture(string culture)
    {
        string[] air = ["air", "--temperature", "20.5 °C"];
        Assert.Equal(
            Sample.ColumnTool("", air).Succeeded(),
            Sample.ColumnToolIn(culture, "", air).Succeeded()
        );
        string[] resonances = ["resonances", "-", "--below", "300.5"];
        Assert.Equal(
            Sample.ColumnTool(IdealTube.Open, resonances).Succeeded(),
            Sample.ColumnToolIn(culture, IdealTube.Open, resonances).Succeeded()
        );
    }

    [Theory]
    [InlineData("impedance")]
    [InlineData("shape")]
    [InlineData("sweep")]
    [InlineData("lines")]
    public void Help_is_no_error(string verb) =>
        Assert.Contains(
            "--help",
            Sample.ColumnTool("", verb, "--help").Succeeded(),
            StringComparison.Ordinal
        );

    private static JsonElement First(JsonElement json) => json.GetProperty("resonances")[0];

    private static double Number(JsonElement json, string name) => json.GetProperty(name).GetDouble();

    private static void AssertQuantity(
        JsonElement json,
        string name,
        double value,
        string unit,
        double tolerance
    )
    {
        var quantity = json.GetProperty(name);
        Assert.Equal(value, Number(quantity, "value"), tolerance);
        Assert.Equal(unit, quantity.GetProperty("unit").GetString());
    }
}
