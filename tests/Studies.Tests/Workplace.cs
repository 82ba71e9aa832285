using System.Text;
using Shared;
using Shared.Studies;

namespace Studies.Tests;

/// <summary>A folder for a test, and ColumnTool within this process.</summary>
internal sealed class Workplace : IDisposable
{
    // In memory where the system has such a place: a thousand parts are put on the disk two thousand times.
    private static readonly string Root = Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();

    private readonly string folder = Path.Combine(Root, Path.GetRandomFileName());

    public Workplace() => Directory.CreateDirectory(folder);

    public void Dispose() => Directory.Delete(folder, true);

    /// <summary>A place in it.</summary>
    public string this[string name] => Path.Combine(folder, name);

    /// <summary>Writes a study of so many items there.</summary>
    public string Study(string name, int count, int seed = 1)
    {
        File.WriteAllText(this[name], Text(count, seed));
        return this[name];
    }

    /// <summary>A study of so many items, of which some have an error.</summary>
    public static string Text(
        int count,
        int seed = 1,
        string answers = "\"resonances\": 3, \"qualityFactors\": true"
    ) =>
        $$"""
            {
              "study": 1,
              "column": {
                "column": 2, "wavefronts": "plane",
                "sections": [{ "shape": "cylinder", "diameter": "40 mm", "length": "500 mm" }],
                "farEnd": { "kind": "open" }
              },
              "parameters": [
                { "parameter": "length of section 1", "normal": { "mean": "100 mm", "deviation": "40 mm" } },
                { "parameter": "diameter of section 1", "uniform": { "from": "10 mm", "to": "40 mm" } }
              ],
              "points": { "by": "random", "count": {{count}}, "seed": {{seed}} },
              "answers": { {{answers}} }
            }
            """;

    /// <summary>Runs ColumnTool.</summary>
    public static (int Code, string Output, string Error) Run(params string[] arguments)
    {
        using var output = new MemoryStream();
        using var error = new MemoryStream();
        var code = ConsoleProgram.Run(global::ColumnTool.CommandLine.Root.Create(), arguments, output, error);
        return (code, Encoding.UTF8.GetString(output.ToArray()), Encoding.UTF8.GetString(error.ToArray()));
    }

    /// <summary>The same, of a run that must go well.</summary>
    public static string Ran(params string[] arguments)
    {
        var (code, output, error) = Run(arguments);
        Assert.True(code == 0, error);
        return output;
    }

    /// <summary>The bytes of a merged file.</summary>
    public byte[] Merged(string folder, string name = "merged.csv")
    {
        Ran("merge", this[folder], "--out", this[name], "--force");
        return File.ReadAllBytes(this[name]);
    }

    /// <summary>What a study must make, computed one after the other without a folder.</summary>
    public static byte[] Expected(string text, RowFormat? format = null)
    {
        var study = AirColumn.Studies.Study.Parse(text);
        using var bytes = new MemoryStream();
        (format ?? RowFormat.Csv).Write(bytes, study, Rows(study));
        return bytes.ToArray();
    }

    /// <summary>All rows, one after the other.</summary>
    public static IEnumerable<AirColumn.Studies.StudyRow> Rows(AirColumn.Studies.Study study)
    {
        for (var i = 0L; i < study.Count; i++)
        {
            yield return study.Answer(i);
        }
    }
}
