using System.Text.Json;
using AirColumn;
using AirColumn.Recordings;
using AirColumn.Recordings.Previews;
using UnitsNet;

namespace Samples.Tests;

/// <summary>The verbs of DroneTube that read or write sound, with recordings made here.</summary>
public sealed class DroneTubeSoundTests : IDisposable
{
    private const double Rate = 44_100;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("drone-tube-");
    private readonly string parts;

    public DroneTubeSoundTests()
    {
        parts = In("plain.json");
        File.WriteAllText(
            parts,
            """{ "tube": 1, "name": "Plain", "wall": "3 mm", "parts": [ { "part": "pipe", "inside": "38 mm", "outside": "44 mm", "length": "open" } ] }"""
        );
    }

    public void Dispose() => folder.Delete(true);

    // The difference is that of what was made from what the engine says of the same tube.
    [Fact]
    public void A_flat_tube_is_to_be_trimmed_by_less_than_it_is_flat()
    {
        var resonance = Plain(1180).FirstResonances(1)[0].Frequency.Hertz;
        var heard = resonance * Math.Pow(2, 15 / 1200.0);
        var take = Save("take.wav", [.. Tone(heard, 2), .. Tone(3.02 * heard, 1)]);
        var json = Sample
            .DroneTube("listen", parts, "--note", "D2", "--cut", "1180 mm", "--recording", take, "--json")
            .Json();

        Assert.Equal(heard, Number(json, "heardHz"), 1e-3);
        Assert.Equal(resonance, Number(json, "resonanceHz"), 1e-6);
        Assert.Equal(15, Number(json, "differenceCents"), 0.02);
        // The prior of 21.5 ± 12 and the tolerances of the tube, less what was heard.
        Assert.InRange(Number(json, "correctionCents"), 15, 17);
        var other = Assert.Single(json.GetProperty("otherNotes").EnumerateArray());
        Assert.Equal(2, Number(other, "resonance"));
        Assert.Equal(1, Number(json, "measurements"));

        // The 95 % range of the note after the cut ends at the target.
        var pipe = 1000 * Number(json, "safePipeMetres");
        Assert.InRange(pipe, 1100, 1175);
        var expected =
            1200 * Math.Log2(Plain(pipe).FirstResonances(1)[0].Frequency.Hertz / 73.41619)
            + Number(json, "correctionCents");
        // One take differs from the next by 5 cents, one day by 3.
        var nextTake = double.Hypot(Number(json, "correctionStandardDeviationCents"), double.Hypot(5, 3));
        Assert.Equal(-1.96 * nextTake, expected, 0.05);
        Assert.True(File.Exists(In("plain-heard.json")));
    }

    [Fact]
    public void What_was_heard_before_makes_the_next_cut_surer()
    {
        var first = Listen(1180, 20, "a.wav");
        var second = Listen(1165, 22, "b.wav");
        Assert.Equal(2, Number(second, "measurements"));
        Assert.True(
            Number(second, "correctionStandardDeviationCents")
                < Number(first, "correctionStandardDeviationCents")
        );
        Assert.InRange(Number(second, "correctionCents"), 20, 22);
        // Expected from the first: so much above the resonance of the shorter tube.
        var expected =
            Plain(1165).FirstResonances(1)[0].Frequency.Hertz
            * Math.Pow(2, Number(first, "correctionCents") / 1200);
        Assert.Equal(expected, Number(second, "expectedHz"), 1e-6);

        // The same recording again is no further measurement.
        Assert.Equal(2, Number(Listen(1165, 22, "b.wav"), "measurements"));
        var kept = File.ReadAllText(In("plain-heard.json"));
        Assert.Equal(1, Number(Listen(1165, 22, "b.wav", "--forget"), "measurements"));
        Assert.Equal(kept, File.ReadAllText(In("plain-heard.json")));
    }

    [Fact]
    public void A_sharp_tube_is_to_be_lengthened()
    {
        var json = Listen(1120, 30, "sharp.wav");
        Assert.Equal(JsonValueKind.Null, json.GetProperty("safeCutMetres").ValueKind);
        Assert.Contains(
            "Cut no more.",
            json.GetProperty("explanation").GetString(),
            StringComparison.Ordinal
        );
        var pipe = 1000 * Number(json.GetProperty("lengthening"), "pipeMetres");
        var beyond = 1000 * Number(json.GetProperty("lengthening"), "beyondEndMetres");
        Assert.Equal(pipe, 1120 + beyond, 0.01);
        var note =
            Plain(pipe).FirstResonances(1)[0].Frequency.Hertz
            * Math.Pow(2, Number(json, "correctionCents") / 1200);
        Assert.Equal(73.41619, note, 1e-4);

        var text = Sample
            .DroneTube("listen", parts, "--note", "D2", "--cut", "1120 mm", "--recording", In("sharp.wav"))
            .Succeeded();
        Assert.Contains("To lower it, choose one of these:", text, StringComparison.Ordinal);
        Assert.Contains("a ring 20 mm", text, StringComparison.Ordinal);
    }

    public static TheoryData<string, int, string> Unheard =>
        new()
        {
            { "silent", 1, "No steady pitch: it is silent." },
            { "empty", 2, "The file is empty. Record again." },
            { "text", 2, "This is not a WAV file that can be read" },
            { "noise", 1, "No steady pitch: it is noise" },
            {
                "glide",
                1,
                "No steady pitch: the pitch glides by 60 cents a second. Play one note and hold it."
            },
            { "another note", 2, "that is not its drone. Check the recording, the cut and the parts." },
        };

    [Theory]
    [MemberData(nameof(Unheard))]
    public void Where_no_drone_is_heard_it_says_why_and_keeps_nothing(string what, int code, string says)
    {
        var random = new Random(1);
        var take = what switch
        {
            "empty" => Text("take.wav", ""),
            "text" => Text("take.wav", "no sound at all"),
            "silent" => Save("take.wav", new double[44_100]),
            "glide" => Save("take.wav", Tone(t => 66 * Math.Pow(2, 60 * t / 1200), 5)),
            "noise" => Save(
                "take.wav",
                [.. Enumerable.Range(0, 44_100).Select(_ => random.NextDouble() - 0.5)]
            ),
            _ => Save("take.wav", Tone(110, 2)),
        };
        var outcome = Sample.DroneTube(
            "listen",
            parts,
            "--note",
            "D2",
            "--cut",
            "1150 mm",
            "--recording",
            take
        );
        Assert.Equal(code, outcome.ExitCode);
        Assert.Equal("", outcome.Output);
        Assert.Contains(says, outcome.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", outcome.Error, StringComparison.Ordinal);
        Assert.Equal(["plain.json", "take.wav"], folder.GetFiles().Select(f => f.Name).Order());
    }

    [Fact]
    public void A_history_that_cannot_be_read_is_left_as_it_is()
    {
        var take = Save("take.wav", Tone(73, 2));
        var history = Text("plain-heard.json", """{ "measurements": 1, "taken": [ { "when": "once" } ] }""");
        var outcome = Sample.DroneTube(
            "listen",
            parts,
            "--note",
            "D2",
            "--cut",
            "1150 mm",
            "--recording",
            take
        );
        outcome.Refused(
            2,
            $"{history}: taken[0].when: 'once' is not a time; write, for example, 2026-05-02T09:30:00+00:00. Mend it, or name another file with --history."
        );
        Assert.Contains("once", File.ReadAllText(history), StringComparison.Ordinal);
    }

    // Every other period a tenth stronger: the resonances of the tube say which octave it is.
    [Fact]
    public void The_tube_says_which_octave_was_played()
    {
        var heard = Plain(1180).FirstResonances(1)[0].Frequency.Hertz * Math.Pow(2, 15 / 1200.0);
        double[] rough = [.. Tone(heard, 2).Zip(Tone(heard / 2, 2), (whole, half) => whole + 0.25 * half)];
        using (var recording = Recording.FromSamples(rough, Frequency.FromHertz(Rate)))
        {
            Assert.NotEmpty(Take.Of(recording).Drone!.Alternatives);
        }

        var outcome = Sample.DroneTube(
            "listen",
            parts,
            "--note",
            "D2",
            "--cut",
            "1180 mm",
            "--recording",
            Save("rough.wav", rough),
            "--json"
        );
        Assert.Equal(heard, Number(outcome.Json(), "heardHz"), 0.01);
        Assert.Equal(0, outcome.Json().GetProperty("alternativesHz").GetArrayLength());
        Assert.DoesNotContain("octave", outcome.Error, StringComparison.Ordinal);
    }

    // A tone that is held, and a ring of something else.
    [Fact]
    public void What_is_no_ring_of_this_tube_is_refused()
    {
        double[] held = [.. new double[(int)(2 * Rate)], .. Tone(73, 4)];
        var tone = Sample.DroneTube("ring", parts, "--cut", "1150 mm", "--recording", Save("held.wav", held));
        Assert.Equal(1, tone.ExitCode);
        Assert.Contains("does not die away", tone.Error, StringComparison.Ordinal);

        var glass = new double[(int)(1.5 * Rate)];
        for (var i = 4410; i < glass.Length; i++)
        {
            var t = (i - 4410) / Rate;
            glass[i] = 0.3 * Math.Exp(-12 * t) * Math.Sin(2 * Math.PI * 146 * t);
        }

        var other = Sample.DroneTube(
            "ring",
            parts,
            "--cut",
            "1150 mm",
            "--recording",
            Save("glass.wav", glass)
        );
        Assert.Equal(1, other.ExitCode);
        Assert.Contains("lies near no resonance of this tube", other.Error, StringComparison.Ordinal);
    }

    // Both ends of the same tube: the palm on one, the other open.
    [Fact]
    public void A_slap_is_compared_with_the_resonances()
    {
        var column = Plain(1150);
        var modes = column.FirstResonances(3).Select(r => r.Pole).ToArray();
        var sound = new double[(int)(1.5 * Rate)];
        for (var i = 4410; i < sound.Length; i++)
        {
            var t = (i - 4410) / Rate;
            foreach (var pole in modes)
            {
                sound[i] +=
                    0.2
                    * Math.Exp(-2 * Math.PI * pole.Imaginary * t)
                    * Math.Sin(2 * Math.PI * 1.01 * pole.Real * t);
            }
        }

        var tap = Save("tap.wav", sound);
        var json = Sample.DroneTube("ring", parts, "--cut", "1150 mm", "--recording", tap, "--json").Json();
        var pairs = json.GetProperty("resonances").EnumerateArray().Take(3).ToList();
        Assert.All(pairs, pair => Assert.Equal(1200 * Math.Log2(1.01), Number(pair, "cents"), 0.05));
        var text = Sample.DroneTube("ring", parts, "--cut", "1150 mm", "--recording", tap).Succeeded();
        Assert.Contains("+17.2 c", text, StringComparison.Ordinal);
        Sample
            .DroneTube("ring", parts, "--cut", "1150 mm", "--recording", tap, "--by", "fire")
            .Refused(2, "--by: 'fire' is not allowed; write tap or noise or sweep.");
        Assert.Equal(
            1,
            Sample
                .DroneTube(
                    "ring",
                    parts,
                    "--cut",
                    "1150 mm",
                    "--recording",
                    Save("silent.wav", new double[9000])
                )
                .ExitCode
        );
    }

    [Fact]
    public void The_sweep_to_play_is_written_and_understood()
    {
        var path = In("sweep.wav");
        Sample.DroneTube("ring", parts, "--cut", "1150 mm", "--write-sweep", path).Succeeded();
        using var sweep = Recording.Open(path);
        Assert.Equal(10, sweep.Duration.Seconds, 1e-6);
        Assert.Equal(48_000, sweep.SampleRate.Hertz);
        var written = File.ReadAllText(parts);
        Sample
            .DroneTube("ring", parts, "--cut", "1150 mm", "--write-sweep", parts)
            .Refused(2, $"--write-sweep would be the parts file itself, '{parts}'; name another file.");
        Assert.Equal(written, File.ReadAllText(parts));
        Sample
            .DroneTube("ring", parts, "--cut", "1150 mm")
            .Refused(2, "Name what to listen to with --recording, or a file to write with --write-sweep.");
    }

    [Fact]
    public void A_measurement_that_cannot_be_is_named_with_its_file()
    {
        var take = Save("take.wav", Tone(73, 2));
        var history = Text(
            "plain-heard.json",
            """{ "measurements": 1, "taken": [ { "when": "2026-05-02", "cut": "400 mm", "heard": "72 Hz", "standardUncertaintyCents": 0.4, "temperature": "20 °C", "humidity": "50 %" } ] }"""
        );
        var outcome = Sample.DroneTube(
            "listen",
            parts,
            "--note",
            "D2",
            "--cut",
            "1150 mm",
            "--recording",
            take
        );
        Assert.Equal(2, outcome.ExitCode);
        Assert.StartsWith($"error: {history}: taken[0] is 72 Hz, ", outcome.Error, StringComparison.Ordinal);
        Assert.Contains(
            "Mend it, or name another file with --history.",
            outcome.Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Previews_of_two_tubes_stand_one_after_the_other()
    {
        var other = In("wide.json");
        File.WriteAllText(
            other,
            File.ReadAllText(parts)
                .Replace("38 mm", "40 mm", StringComparison.Ordinal)
                .Replace("Plain", "Wide", StringComparison.Ordinal)
        );
        var path = In("both.wav");
        var text = Sample
            .DroneTube("preview", parts, other, "--note", "D2", "--out", path, "--overblown", "0")
            .Succeeded();
        Assert.Contains("Plain, cut", text, StringComparison.Ordinal);
        Assert.Contains("Wide, cut", text, StringComparison.Ordinal);
        using var sound = Recording.Open(path);
        var take = Take.Of(sound);
        Assert.Equal(2, take.Notes.Count);
        var preview = DronePreview.Of(Plain(1000 * SafePlain()));
        Assert.Equal(0, 1200 * Math.Log2(take.Notes[0].Fundamental / preview.PlayingFrequency!.Value), 1.0);
        Sample
            .DroneTube("preview", parts, "--note", "D2", "--out", parts)
            .Refused(2, $"--out would be the parts file itself, '{parts}'; name another file.");
    }

    private double SafePlain() =>
        Number(
            Sample
                .DroneTube("table", parts, "--from", "D2", "--to", "D2", "--json")
                .Json()
                .GetProperty("notes")[0]
                .GetProperty("onTheNote"),
            "cutMetres"
        );

    private JsonElement Listen(double cut, double above, string name, params string[] more)
    {
        var hertz = Plain(cut).FirstResonances(1)[0].Frequency.Hertz * Math.Pow(2, above / 1200);
        string[] arguments =
        [
            "listen",
            parts,
            "--note",
            "D2",
            "--cut",
            FormattableString.Invariant($"{cut} mm"),
            "--recording",
            Save(name, Tone(hertz, 1.5)),
            "--json",
            .. more,
        ];
        return Sample.DroneTube(arguments).Json();
    }

    private static Column Plain(double millimetres) =>
        new(
            Bore.Build()
                .Cylinder(Length.FromMillimeters(38), Length.FromMillimeters(millimetres))
                .OpenEnd(Length.FromMillimeters(3)),
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
        );

    // Eight harmonics of a pitch that changes.
    private static double[] Tone(Func<double, double> hertzAt, double seconds)
    {
        var sound = new double[(int)(seconds * Rate)];
        var turns = 0.0;
        for (var i = 0; i < sound.Length; i++)
        {
            turns += hertzAt(i / Rate) / Rate;
            for (var h = 1; h <= 8; h++)
            {
                sound[i] += 0.1 / h * Math.Sin(2 * Math.PI * h * turns);
            }
        }

        return sound;
    }

    private static double[] Tone(double hertz, double seconds) =>
        [
            .. Enumerable
                .Range(0, (int)(seconds * Rate))
                .Select(i => 2 * Math.PI * hertz * i / Rate)
                .Select(a => 0.1 * Math.Sin(a) + 0.06 * Math.Sin(2 * a + 1) + 0.04 * Math.Sin(3 * a + 2)),
        ];

    private string Save(string name, double[] samples)
    {
        using var stream = new FileStream(In(name), FileMode.Create, FileAccess.ReadWrite);
        WaveFile.Write16(stream, samples, Frequency.FromHertz(Rate));
        return In(name);
    }

    private string Text(string name, string text)
    {
        File.WriteAllText(In(name), text);
        return In(name);
    }

    private string In(string name) => Path.Combine(folder.FullName, name);

    private static double Number(JsonElement json, string name) => json.GetProperty(name).GetDouble();
}
