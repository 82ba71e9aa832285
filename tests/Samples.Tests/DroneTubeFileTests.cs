using AirColumn.Recordings;
using UnitsNet;

namespace Samples.Tests;

/// <summary>The files that DroneTube writes, and those it must not write over.</summary>
public sealed class DroneTubeFileTests : IDisposable
{
    private const string Mine = "mine, with pencil notes";

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("drone-tube-");
    private readonly string parts;

    public DroneTubeFileTests()
    {
        parts = In("plain.json");
        File.WriteAllText(
            parts,
            """{ "tube": 1, "name": "Plain", "wall": "3 mm", "parts": [ { "part": "pipe", "inside": "38 mm", "outside": "44 mm", "length": "open" } ] }"""
        );
    }

    public void Dispose() => folder.Delete(true);

    [Theory]
    [InlineData("D2", "plain-D2.html")]
    [InlineData("C#2", "plain-Csharp2.html")]
    [InlineData("Eb2", "plain-Eflat2.html")]
    public void A_sheet_is_named_after_its_note(string note, string name)
    {
        var said = Sample.DroneTube("sheet", parts, "--note", note).Succeeded();
        Assert.Contains(
            $"The build sheet is {In(name)}. Open it in a browser;",
            said,
            StringComparison.Ordinal
        );
        Assert.Equal([name, "plain.json"], Names());
    }

    [Fact]
    public void Previews_are_named_after_their_note()
    {
        Sample.DroneTube("preview", parts, "--note", "D2", "--overblown", "0").Succeeded();
        Assert.Equal(["plain-D2.wav", "plain.json"], Names());
        File.Copy(parts, In("other.json"));
        Sample.DroneTube("preview", parts, In("other.json"), "--note", "D2", "--overblown", "0").Succeeded();
        Assert.Equal(["other.json", "plain-D2.wav", "plain-and-others-D2.wav", "plain.json"], Names());
    }

    [Theory]
    [InlineData("plain-D2.html", "--out", "sheet", "--note", "D2")]
    [InlineData("mine.html", "--out", "sheet", "--note", "D2", "--out", "mine.html")]
    [InlineData("plain-D2.wav", "--out", "preview", "--note", "D2", "--overblown", "0")]
    [InlineData("mine.wav", "--out", "preview", "--note", "D2", "--overblown", "0", "--out", "mine.wav")]
    [InlineData("mine.wav", "--write-sweep", "ring", "--cut", "1180 mm", "--write-sweep", "mine.wav")]
    public void A_file_that_is_there_stays_as_it_is_unless_forced(
        string file,
        string option,
        string verb,
        params string[] more
    )
    {
        File.WriteAllText(In(file), Mine);
        string[] arguments = [verb, parts, .. more.Select(text => text == file ? In(file) : text)];
        Sample
            .DroneTube(arguments)
            .Refused(
                2,
                $"'{In(file)}' is there already; --force writes over it, or name another file with {option}."
            );
        Assert.Equal(Mine, File.ReadAllText(In(file)));

        Sample.DroneTube([.. arguments, "--force"]).Succeeded();
        Assert.NotEqual(Mine, File.ReadAllText(In(file)));
        Assert.Equal(new[] { file, "plain.json" }.Order(StringComparer.Ordinal), Names());
    }

    [Theory]
    [InlineData("sheet.docx", ".html", "sheet.html", "sheet", "--note", "D2", "--out")]
    [InlineData("sheet.pdf", ".html", "sheet.html", "sheet", "--note", "D2", "--out")]
    [InlineData("sheet", ".html", "sheet.html", "sheet", "--note", "D2", "--out")]
    [InlineData("a.mp3", ".wav", "a.wav", "preview", "--note", "D2", "--out")]
    [InlineData("a.mp3", ".wav", "a.wav", "ring", "--cut", "1180 mm", "--write-sweep")]
    public void Another_kind_of_file_is_refused(
        string name,
        string kinds,
        string such,
        string verb,
        params string[] more
    )
    {
        Sample
            .DroneTube([verb, parts, .. more, In(name)])
            .Refused(2, $"{more[^1]} is '{In(name)}'; the name must end in {kinds}, such as '{In(such)}'.");
        Assert.Equal(["plain.json"], Names());
    }

    [Fact]
    public void No_file_of_ones_own_is_written_over_even_by_force()
    {
        File.Move(parts, In("plain.html"));
        Sample
            .DroneTube("sheet", In("plain.html"), "--note", "D2", "--out", In("plain.html"), "--force")
            .Refused(2, $"--out would be the parts file itself, '{In("plain.html")}'; name another file.");
    }

    [Fact]
    public void A_folder_that_is_not_there_is_told_before_anything_is_computed()
    {
        var path = Path.Combine(In("none"), "sheet.html");
        Sample
            .DroneTube("sheet", parts, "--note", "D2", "--out", path)
            .Refused(
                2,
                $"There is no folder '{In("none")}'; make it first, or name another file with --out."
            );
        Directory.CreateDirectory(In("plain-D2.html"));
        Sample
            .DroneTube("sheet", parts, "--note", "D2", "--force")
            .Refused(2, $"'{In("plain-D2.html")}' is a folder; name a file with --out.");
    }

    // Nobody can make a file there, be it the owner of the machine.
    [UnixFact]
    public void What_was_computed_is_shown_even_if_it_cannot_be_kept()
    {
        var sheet = Sample.DroneTube("sheet", parts, "--note", "D2", "--out", "/proc/sheet.html");
        Assert.Equal(1, sheet.ExitCode);
        Assert.Contains(" first, then play and trim.", sheet.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("/proc", sheet.Output, StringComparison.Ordinal);
        Assert.StartsWith(
            "error: '/proc/sheet.html' cannot be written: ",
            sheet.Error,
            StringComparison.Ordinal
        );

        var preview = Sample.DroneTube(
            "preview",
            parts,
            "--note",
            "D2",
            "--overblown",
            "0",
            "--out",
            "/proc/a.wav"
        );
        Assert.Equal(1, preview.ExitCode);
        Assert.Contains("drone", preview.Output, StringComparison.Ordinal);

        foreach (var json in new string[][] { [], ["--json"] })
        {
            var heard = Sample.DroneTube([
                "listen",
                parts,
                "--note",
                "D2",
                "--cut",
                "1180 mm",
                "--recording",
                Take(),
                "--history",
                "/proc/heard.json",
                .. json,
            ]);
            Assert.Equal(0, heard.ExitCode);
            Assert.Contains(
                json.Length == 0 ? "Cut " : "\"kept\": false",
                heard.Output,
                StringComparison.Ordinal
            );
            Assert.DoesNotContain("/proc", heard.Output, StringComparison.Ordinal);
            Assert.Matches(
                "^warning: This measurement is not kept: '/proc/heard.json' cannot be written: .* Name another file with --history.\n$",
                heard.Error
            );
        }
    }

    private string Take()
    {
        using var stream = new FileStream(In("take.wav"), FileMode.Create, FileAccess.ReadWrite);
        double[] samples =
        [
            .. Enumerable
                .Range(0, 88_200)
                .Select(i => 2 * Math.PI * 71.6 * i / 44_100)
                .Select(a => 0.1 * Math.Sin(a) + 0.06 * Math.Sin(2 * a + 1) + 0.04 * Math.Sin(3 * a + 2)),
        ];
        WaveFile.Write16(stream, samples, Frequency.FromHertz(44_100));
        return In("take.wav");
    }

    private IEnumerable<string> Names() =>
        folder.GetFiles().Select(file => file.Name).Order(StringComparer.Ordinal);

    private string In(string name) => Path.Combine(folder.FullName, name);
}
