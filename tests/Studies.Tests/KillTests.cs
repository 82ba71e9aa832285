using System.Diagnostics;
using System.Reflection;
using AirColumn.Studies;
using Shared.Studies;

namespace Studies.Tests;

/// <summary>A machine that dies loses the part in hand and nothing else.</summary>
public class KillTests
{
    private static readonly string Tool = typeof(KillTests)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(data => data.Key == "ColumnTool")
        .Value!;

    private static readonly int Times = Amount.Of(1, 20);

    [Fact]
    public void A_process_killed_at_any_moment_is_gone_on_with()
    {
        var random = new Random(Times == 1 ? 1 : Environment.TickCount);
        for (var run = 0; run < Times; run++)
        {
            using var place = new Workplace();
            var study = place.Study("study.json", 3000, run);
            string[] command =
            [
                "exec",
                Tool,
                "study",
                study,
                "--out",
                place["parts"],
                "--part",
                "20",
                "--jobs",
                "2",
                "--resume",
            ];
            var kills = 0;
            for (var i = 0; i < 3; i++)
            {
                using var process = Process.Start(
                    new ProcessStartInfo("dotnet", command)
                    {
                        RedirectStandardOutput = true,
                        RedirectStandardError = true,
                    }
                )!;
                // From before it has begun to after it has ended.
                if (!process.WaitForExit(random.Next(50, 900)))
                {
                    process.Kill();
                    process.WaitForExit();
                    kills++;
                }
            }

            Assert.True(kills > 0, "Nothing was killed.");
            Workplace.Ran(command[2..]);
            Assert.Equal(Workplace.Expected(File.ReadAllText(study)), place.Merged("parts"));
            Assert.DoesNotContain(
                Directory.GetFiles(place["parts"]),
                name =>
                    !name.EndsWith(".csv", StringComparison.Ordinal)
                    && !name.EndsWith(".json", StringComparison.Ordinal)
            );
        }
    }

    // Within the process, at many more moments: between any two items, and with what a writer had in hand still there.
    [Fact]
    public void A_run_ended_between_any_two_items_keeps_its_parts()
    {
        const int Count = 60;
        var text = Workplace.Text(Count);
        var expected = Workplace.Expected(text);
        foreach (var last in new[] { 1, 6, 7, 8, 13, 14, 35, 59 })
        {
            using var place = new Workplace();
            var folder = PartFolder.Begin(place["parts"], Study.Parse(text));
            using var death = new CancellationTokenSource();
            var run = new StudyRun(folder, Shard.Whole, 7);
            var did = 0;
            Assert.ThrowsAny<OperationCanceledException>(() =>
                run.Compute(
                    run.Left(false).ToDo,
                    2,
                    _ =>
                    {
                        if (++did == last)
                        {
                            death.Cancel();
                        }
                    },
                    death.Token
                )
            );
            File.WriteAllText(place["parts/part-000000000014-000000000020.csv.abcdefgh.xyz"], "item,len");
            var again = new StudyRun(folder, Shard.Whole, 7);
            var (toDo, damaged) = again.Left(true);
            Assert.Empty(damaged);
            Assert.Equal((Count + 6) / 7 - last / 7, toDo.Count);
            again.Compute(toDo, 2, _ => { }, CancellationToken.None);
            Assert.Equal((Count, Count), (again.Kept, again.Items));
            Assert.Equal(expected, place.Merged("parts"));
            Assert.Equal(1 + 2 * 9, Directory.GetFiles(place["parts"]).Length);
        }
    }
}
