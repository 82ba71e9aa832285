using System.Text;
using AirColumn;
using AirColumn.Documents;
using AirColumn.Recordings;
using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;

namespace Fuzzing.Tests;

/// <summary>
/// A million inputs, a twentieth of them in the test command, over all readers of text and files: each is read, or refused with the
/// exception that the reader states, within seconds. From fixed seeds; raise <c>AIRCOLUMN_FUZZ_TIMES</c> to go on for longer, from others.
/// </summary>
public class ReaderTests
{
    private const double LongestSeconds = 5;

    internal static readonly int Times =
        int.TryParse(Environment.GetEnvironmentVariable("AIRCOLUMN_FUZZ_TIMES"), out var times) && times > 0
            ? times
            : 1;

    /// <summary>How many of so many inputs are made: all in the long run, and where more are asked for.</summary>
    internal static int Share(int inputs) =>
        Environment.GetEnvironmentVariable("AIRCOLUMN_FUZZ_TIMES") is { Length: > 0 }
            ? inputs
            : Amount.Of(inputs / 20, inputs);

    private static readonly string[] JsonWords =
    [
        "{",
        "}",
        "[",
        "]",
        "\"",
        ":",
        ",",
        "null",
        "true",
        "1e999",
        "-0",
        "NaN",
        "1e-320",
        "\\ud800",
        "\\u0000",
        "//",
        "[[[[[[[[[[[[[[[[[[",
        "\"1e300 mm\"",
        "\"-5 mm\"",
        "\"0 mm\"",
        "\"5 furlongs\"",
        "\"1/0 in\"",
        "\"NaN mm\"",
        "\"∞ mm\"",
        "\"5,5 mm\"",
        "\"open\"",
        "\"column\"",
        "\"column\": 2",
        "\"x-\": ",
        "\"holes\": ",
        "\"all open\"",
        "\"-90 °\"",
        "\"1e-3 mm\"",
    ];

    internal static readonly string[] ColumnDocuments =
    [
        """{ "column": 1, "name": "stepped", "air": { "temperature": "20 °C", "humidity": "50 %", "pressure": "101.325 kPa", "co2": "400 ppm" }, "losses": "full", "blownEnd": "closed", "sections": [ { "shape": "cylinder", "diameter": "30 mm", "length": "25 mm" }, { "shape": "cone", "from": "38 mm", "to": "70 mm", "length": "90 mm" } ], "farEnd": { "kind": "open", "wall": "3 mm" } }""",
        """{ "column": 1, "sections": [ { "shape": "horn", "law": "exponential", "from": "38 mm", "to": "90 mm", "length": "120 mm" }, { "shape": "profile", "points": [["0 mm", "38 mm"], ["40 mm", "44 mm"]], "join": "smooth" } ], "farEnd": { "kind": "baffle" } }""",
        """{ "column": 2, "$schema": "a", "x-a": [1], "air": { "from": { "state": "breath" }, "to": { "temperature": "20 °C" }, "decay": "200 mm" }, "radiation": "dalmont2001", "tolerance": 1e-9, "blownEnd": "free", "blownWall": "2 mm", "sections": [ { "shape": "cylinder", "diameter": "18 mm", "length": "300 mm" }, { "shape": "bend", "diameter": "18 mm", "curvatureRadius": "60 mm", "angle": "90 °" } ], "farEnd": { "kind": "open", "wall": "2 mm" }, "holes": [ { "position": "200 mm", "diameter": "7 mm", "height": "5 mm", "chimneyWall": "1 mm", "pad": { "diameter": "11 mm", "height": "2 mm" } } ], "branches": [ { "position": "60 mm", "sections": [ { "shape": "cylinder", "diameter": "2 mm", "length": "4 mm" } ], "farEnd": { "kind": "closed" }, "branches": [] } ], "fingering": "o", "fingerings": [ { "name": "G4", "holes": "x" } ] }""",
        """{ "column": 2, "air": { "points": [["0 mm", { "state": "breath" }], ["90 mm", { "temperature": "20 °C", "co2": "1 %" }]] }, "sections": [ { "shape": "bend", "diameter": "30 mm", "curvatureRadius": "60 mm", "length": "25 mm" } ], "farEnd": { "kind": "closed" } }""",
        """{ "column": 1, "air": { "speedOfSound": "343.37 m/s", "density": "1.2045 kg/m³", "viscosity": "1.814e-5 Pa·s", "conductivity": "0.0258 W/(m·K)", "heatCapacity": "1006 J/(kg·K)", "heatCapacityRatio": 1.4019 }, "sections": [ { "shape": "cylinder", "diameter": "30 mm", "length": "25 mm" } ], "farEnd": { "kind": "ideal" } }""",
    ];

    public static TheoryData<string, int> Readers =>
        new()
        {
            { "pitch", 300_000 },
            { "length", 200_000 },
            { "temperature", 100_000 },
            { "column document", 120_000 },
            { "parts file", 100_000 },
            { "history", 60_000 },
            { "pipes", 40_000 },
            { "sockets", 40_000 },
            { "recording", 60_000 },
        };

    [Theory]
    [MemberData(nameof(Readers))]
    public void Anything_is_read_or_refused(string reader, int inputs)
    {
        var (read, examples, words) = Of(reader);
        var seed = reader.Sum(c => c);
        for (var time = 0; time < Times; time++)
        {
            var mutator = new Mutator(
                seed + 1000 * time,
                [.. examples.Select(Encoding.UTF8.GetBytes)],
                [.. words.Select(Encoding.UTF8.GetBytes)]
            );
            Run(read, mutator, Share(inputs));
        }
    }

    // Sound in binary form has its own examples.
    private static void Run(Action<byte[]> read, Mutator mutator, int inputs)
    {
        for (var i = 0; i < inputs; i++)
        {
            var input = mutator.Next();
            var effort = new Effort();
            try
            {
                read(input);
            }
            catch (Exception problem)
                when (problem is FormatException or ColumnDocumentException or RecordingException)
            {
                Assert.False(string.IsNullOrWhiteSpace(problem.Message));
            }
            catch (Exception problem)
            {
                Assert.Fail($"Input {i}, {Convert.ToBase64String(input)}: {problem}");
            }

            var seconds = effort.Seconds;
            Assert.True(seconds < LongestSeconds, $"Input {i}, {Convert.ToBase64String(input)}: {seconds} s");
        }
    }

    [Fact]
    public void The_budget_is_a_million_inputs() => Assert.True(Readers.Sum(row => (int)row[1]) >= 1_000_000);

    // An example that is refused would fuzz the first line of the reader only.
    [Theory]
    [MemberData(nameof(Readers))]
    public void Examples_are_sound(string reader, int inputs)
    {
        Assert.True(inputs > 0);
        var (read, examples, _) = Of(reader);
        foreach (var example in examples)
        {
            read(Encoding.UTF8.GetBytes(example));
        }
    }

    private static (Action<byte[]> Read, string[] Examples, string[] Words) Of(string reader) =>
        reader switch
        {
            "pitch" => (
                Text(text => Pitch.Parse(text)),
                ["C4", "F#2", "Eb-1", "B♭3", "G♯9", "Cb0"],
                ["#", "b", "♯", "♭", "-", "99999999999", "H", " ", "4", "A", "\0", "💥"]
            ),
            "length" => (
                Text(text => QuantityText.ParseLength(text)),
                ["25 mm", "1.24 m", "46.5 in", "46 15/16 in", "1.5\"", "12 cm"],
                ["mm", "in", "/", "-", "1e400", "NaN", "∞", "0", " ", ".", ",", "°", "\"", "1/0", "\0", "٣"]
            ),
            "temperature" => (
                Text(text => QuantityText.ParseTemperature(text)),
                ["20 °C", "68 °F", "293.15 K", "20 C"],
                ["°", "C", "K", "-300", "1e400", "NaN", " ", "\0", "٣"]
            ),
            "column document" => (Text(text => ColumnDocument.Parse(text)), ColumnDocuments, JsonWords),
            "parts file" => (
                Text(text => PartsFile.Read(text, Catalogue.Standard)),
                [
                    """{ "tube": 1, "name": "Stepped", "wall": "3 mm", "parts": [ { "part": "insert", "inside": "30 mm", "outside": "40 mm", "inserted": "25 mm", "protrudes": "12 mm", "price": 4 }, { "part": "pipe", "stock": "pvc-40 1-1/2", "length": "open" }, { "part": "coupling", "before": "pvc-40 1-1/2", "after": "pvc-40 2", "gap": "1 mm", "inside": "41 mm", "between": "14 mm" }, { "part": "pipe", "stock": "pvc-40 2", "inside": "52.2 mm", "length": "150 mm" }, { "part": "bell", "inside": "72 mm", "length": "60 mm" } ] }""",
                    """{ "tube": 1, "parts": [ { "part": "pipe", "inside": "38 mm", "outside": "44 mm", "length": "open" }, { "part": "fitting", "adds": "30 mm", "inside": "40 mm" } ] }""",
                ],
                JsonWords
            ),
            "history" => (
                Text(text => MeasurementHistory.Read(text)),
                [
                    """{ "measurements": 1, "taken": [ { "when": "2026-05-02T09:30:00+00:00", "cut": "1120 mm", "heard": "70.31 Hz", "standardUncertaintyCents": 0.4, "temperature": "20 °C", "humidity": "50 %", "recording": "a" } ] }""",
                ],
                JsonWords
            ),
            "pipes" => (
                Text(text => Catalogue.Standard.WithPipes(text)),
                [
                    "series,size,material,outside,outside_tolerance,wall_min,wall_max,inside,unit,standard,edition,source,certainty\npvc-40,1/2,PVC,21.34,0.10,2.77,3.28,,mm,ASTM D1785,1988,leaflet,read\nown,40,ABS,43,0.1,,,38,mm,own,none,caliper,read\n",
                ],
                [",", "\n", "\r\n", "\"", "\"\"", "-1", "1e400", "NaN", "in", "mm", "memory", "\0", ",,,,,,,"]
            ),
            "sockets" => (
                Text(text => Catalogue.Standard.WithSockets(text)),
                [
                    "series,size,entrance,bottom,depth,unit,standard,edition,source,certainty\npvc-40,1,1.325,1.310,0.875,in,ASTM D2466,not stated,table,read\n",
                ],
                [",", "\n", "\r\n", "\"", "-1", "1e400", "NaN", "in", "mm", "memory", "\0", ",,,,,,,"]
            ),
            _ => (
                Sound,
                Waves,
                [
                    "RIFF",
                    "RF64",
                    "WAVE",
                    "fmt ",
                    "data",
                    "LIST",
                    "\0\0\0\0",
                    "\u0001\0",
                    "\u0003\0",
                    "\u007f\u007f\u007f\u007f",
                    "\u0010\0\0\0",
                ]
            ),
        };

    private static Action<byte[]> Text(Action<string> read) => bytes => read(Encoding.UTF8.GetString(bytes));

    // Headers of 7-bit bytes, so that they are text like the others: 8 kHz and 16 kHz are 0x1F40 and 0x3E80; 0x3E00 is 15872.
    private static string[] Waves { get; } =
    [
        Wave("\u0001\0", "\u0001\0", "\u0008\0", "\u0001\0"),
        Wave("\u0001\0", "\u0001\0", "\u0010\0", "\u0002\0"),
        Wave("\u0001\0", "\u0002\0", "\u0018\0", "\u0006\0"),
        Wave("\u0003\0", "\u0001\0", "\u0020\0", "\u0004\0"),
    ];

    private static string Wave(string encoding, string channels, string bits, string frame) =>
        $"RIFF\u0054\0\0\0WAVEfmt \u0010\0\0\0{encoding}{channels}\0\u003e\0\0\0\u003e\0\0{frame}{bits}data\u0030\0\0\0{new string('\u0012', 48)}";

    private static void Sound(byte[] bytes)
    {
        using var recording = Recording.Open(new MemoryStream(bytes));
        var samples = new double[(int)Math.Min(recording.Frames, 1000)];
        recording.Read(recording.Channels - 1, recording.Frames - samples.Length, samples);
    }
}
