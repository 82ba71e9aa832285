using System.Globalization;
using System.Text.Json.Nodes;

namespace Samples.Tests;

public sealed class ColumnToolSweepTests : IDisposable
{
    private const string Header = "file,resonance,frequency_hz,magnitude,q,pitch,cents";

    private readonly string folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void Every_document_gives_its_rows_together_and_as_the_resonances_verb_does()
    {
        string[] files = [.. Enumerable.Range(0, 12).Select(i => Document($"tube {i},a.json", 400 + 50 * i))];
        var rows = Lines(Sample.ColumnTool("", ["sweep", .. files, "--count", "3"]).Succeeded());
        Assert.Equal(Header, rows[0]);
        Assert.Equal(1 + 3 * files.Length, rows.Length);
        // The documents in any order; the comma in their names makes quotes necessary.
        var begun = rows[1..].Chunk(3).ToDictionary(each => each[0].Split(",1,")[0]);
        Assert.Equal(files.Select(file => $"\"{file}\"").Order(), begun.Keys.Order());
        foreach (var (name, each) in begun)
        {
            Assert.All(
                each,
                (row, i) => Assert.StartsWith($"{name},{i + 1},", row, StringComparison.Ordinal)
            );
        }

        var alone = Sample.ColumnTool("", "resonances", files[4], "--count", "3", "--json").Json();
        var cells = begun[$"\"{files[4]}\""][2].Split(',');
        var third = alone.GetProperty("resonances")[2];
        Assert.Equal(
            third.GetProperty("frequencyHz").GetDouble(),
            double.Parse(cells[3], CultureInfo.InvariantCulture)
        );
        Assert.Equal(third.GetProperty("pitch").GetString(), cells[6]);
    }

    [Fact]
    public void Names_may_come_from_a_list()
    {
        var names = $"{Document("a.json", 500)}\n\n  {Document("b.json", 600)}  \n";
        var rows = Lines(Sample.ColumnTool(names, "sweep", "--list", "-", "--count", "1").Succeeded());
        Assert.Equal(3, rows.Length);
        Assert.Contains(rows, row => row.Contains("a.json", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.Contains("b.json", StringComparison.Ordinal));
    }

    // A list that is still being written: what is named is answered at once.
    [Fact]
    public async Task Answers_do_not_wait_for_the_end_of_the_list()
    {
        using var tool = Sample.ColumnToolStarted("sweep", "--list", "-", "--count", "1");
        tool.StandardInput.AutoFlush = true;
        Assert.Equal(Header, await Next());
        for (var i = 1; i < 4; i++)
        {
            var name = Document($"{i}.json", 300 * i);
            tool.StandardInput.Write($"{name}\n");
            Assert.StartsWith($"{name},1,", await Next(), StringComparison.Ordinal);
        }

        tool.StandardInput.Close();
        Assert.True(tool.WaitForExit(20_000));

        async Task<string?> Next()
        {
            try
            {
                return await tool.StandardOutput.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(30));
            }
            catch (TimeoutException)
            {
                tool.Kill();
                throw;
            }
        }
    }

    [Fact]
    public void Lines_of_JSON_name_the_document_answered_or_not()
    {
        var tube = Document("a.json", 500);
        var outcome = Sample.ColumnTool("", "sweep", tube, "none.json", "--count", "1", "--json");
        Assert.Equal((1, ""), (outcome.ExitCode, outcome.Error));
        var lines = Lines(outcome.Output).Select(line => JsonNode.Parse(line)!).ToList();
        Assert.Equal(2, lines.Count);
        Assert.Equal(
            "file",
            (string?)lines.Single(line => (string?)line["id"] == "none.json")["error"]!["code"]
        );
        Assert.Single(lines.Single(line => (string?)line["id"] == tube)["answer"]!["resonances"]!.AsArray());
    }

    [Fact]
    public void A_document_that_cannot_be_answered_does_not_stop_the_others()
    {
        var broken = Path.Combine(folder, "broken.json");
        File.WriteAllText(broken, "{ \"column\": 1 }");
        var outcome = Sample.ColumnTool(
            "",
            "sweep",
            broken,
            Document("a.json", 500),
            Path.Combine(folder, "none.json"),
            "--count",
            "1"
        );
        Assert.Equal(1, outcome.ExitCode);
        Assert.Equal(2, Lines(outcome.Output).Length);
        var errors = Lines(outcome.Error);
        Assert.Equal(2, errors.Length);
        Assert.Contains(errors, error => error.Contains("broken.json", StringComparison.Ordinal));
        Assert.Contains(errors, error => error.Contains("none.json", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_any_name_nothing_is_written() =>
        Sample
            .ColumnTool("", "sweep")
            .Refused(2, "Name column documents, or a file that lists them with --list.");

    // Whatever vectors a machine has, the answer is the same to 1e-12.
    [Theory]
    [InlineData("DOTNET_EnableAVX512")]
    [InlineData("DOTNET_EnableAVX2")]
    [InlineData("DOTNET_EnableHWIntrinsic")]
    public void Narrower_vectors_give_the_same_impedance(string setting)
    {
        var file = Document("tube.json", 900);
        string[] arguments = ["impedance", file, "--from", "30", "--to", "1500", "--points", "60"];
        const string Columns = "frequency_hz,re,im";
        var widest = Sample.ColumnTool("", arguments).Rows(Columns);
        var narrow = Sample
            .ColumnToolWith(new Dictionary<string, string> { [setting] = "0" }, "", arguments)
            .Rows(Columns);
        foreach (var (a, b) in widest.Zip(narrow))
        {
            var size = Math.Sqrt(a[1] * a[1] + a[2] * a[2]);
            Assert.Equal(a[1], b[1], 1e-12 * size);
            Assert.Equal(a[2], b[2], 1e-12 * size);
        }
    }

    private string Document(string name, int millimetres)
    {
        var path = Path.Combine(folder, name);
        var length = millimetres.ToString(CultureInfo.InvariantCulture);
        File.WriteAllText(
            path,
            $$"""
            {
              "column": 1,
              "sections": [
                { "shape": "cylinder", "diameter": "28 mm", "length": "{{length}} mm" },
                { "shape": "cone", "from": "28 mm", "to": "50 mm", "length": "120 mm" }
              ],
              "farEnd": { "kind": "open", "wall": "2 mm" }
            }
            """
        );
        return path;
    }

    private static string[] Lines(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
