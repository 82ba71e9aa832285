using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Samples.Tests;

/// <summary>No question takes longer than it is given.</summary>
public sealed class TimeLimitTests : IDisposable
{
    private const string Expensive =
        "Steep or jagged profiles, many close steps and many resonances take long, most of all under the wave fronts \"automatic\" and \"multimodal\": try \"curved\", a smoother or coarser profile, or fewer resonances.";

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("time-limit-");

    public void Dispose() => folder.Delete(true);

    // A legal document that is no tube at all, for which eight resonances take minutes.
    [Theory]
    [InlineData("length", "--section", "1", "--pitch", "C4")]
    [InlineData("impedance", "--from", "20", "--to", "20000", "--points", "20000")]
    public void A_wild_document_is_given_up_with_what_to_do(string verb, params string[] options)
    {
        var clock = Stopwatch.StartNew();
        Sample
            .ColumnToolProcess(Wild(), [verb, "-", .. options, "--time-limit", "0.5"])
            .Refused(
                1,
                $"No answer within 0.5 s. {Expensive} Or give it more time, such as --time-limit 10."
            );
        // The start of a program on a busy machine takes most of that.
        Assert.InRange(clock.Elapsed.TotalSeconds, 0.5, 30);
    }

    // One job, so that the tame document waits until the time of the wild one is over. A tame one takes milliseconds, but nobody knows how many on a
    // busy machine: so the limit grows until it is enough. The wild one takes minutes under any of them.
    [Fact]
    public void A_sweep_gives_each_document_its_time()
    {
        var (wild, tame) = (In("wild.json"), In("tame.json"));
        File.WriteAllText(wild, Wild());
        File.WriteAllText(
            tame,
            """{ "column": 1, "sections": [ { "shape": "cylinder", "diameter": "38 mm", "length": "1 m" } ], "farEnd": { "kind": "open" } }"""
        );
        (string Limit, string More)[] limits = [("0.5", "10"), ("3", "15"), ("20", "100")];
        var (limit, more, swept) = limits
            .Select(each => (each.Limit, each.More, Swept: Sweep(each.Limit)))
            .First(each => each.Limit == limits[^1].Limit || IsTameAnswered(each.Swept));
        Assert.True(IsTameAnswered(swept), swept.Error);
        Assert.Equal(1, swept.ExitCode);
        Assert.Equal(
            $"error: {wild}: No answer within {limit} s. {Expensive} Or give it more time, such as --time-limit {more}.\n",
            swept.Error
        );

        Outcome Sweep(string limit) =>
            Sample.ColumnTool(
                "",
                ["sweep", wild, tame, "--count", "1", "--jobs", "1", "--time-limit", limit]
            );
        bool IsTameAnswered(Outcome swept) => swept.Output.Contains($"\n{tame},1,", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("1e9")]
    [InlineData("NaN")]
    public void The_limit_is_a_time(string limit) =>
        Sample
            .ColumnTool(Wild(), "resonances", "-", "--time-limit", limit)
            .Refused(2, $"--time-limit: '{limit}' is not allowed; write a number from 0.1 s to 1000000 s.");

    [Fact]
    public void Makers_can_set_it_too()
    {
        var shown = Path.Combine(ShownPage.Top, "samples", "DroneTube", "workshop-tube.json");
        var outcome = Sample.DroneTubeProcess(
            "table",
            shown,
            "--from",
            "C1",
            "--to",
            "B5",
            "--time-limit",
            "0.1"
        );
        Assert.Equal((1, ""), (outcome.ExitCode, outcome.Output));
        Assert.Matches(
            "^error: No answer within 0.1 s. .* Or give it more time, such as --time-limit 10.\n$",
            outcome.Error
        );
    }

    /// <summary>A legal document that is no tube at all, whose resonances take minutes.</summary>
    internal static string Wild()
    {
        string[] wide = ["4 mm", "1160 mm", "128 mm", "600 mm"];
        return JsonSerializer.Serialize(
            new
            {
                column = 1,
                sections = new[]
                {
                    new
                    {
                        shape = "profile",
                        join = "smooth",
                        points = Enumerable
                            .Range(0, 41)
                            .Select(i =>
                                new[]
                                {
                                    (0.5 * i).ToString(CultureInfo.InvariantCulture) + " mm",
                                    wide[i % 4],
                                }
                            ),
                    },
                },
                farEnd = new { kind = "open" },
            }
        );
    }

    private string In(string name) => Path.Combine(folder.FullName, name);
}
