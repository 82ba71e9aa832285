using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using AirColumn.Documents;
using AirColumn.Studies;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Shared;
using Shared.Studies;

namespace StudyCluster;

/// <summary>A silo of this machine: the first of a cluster, or one that joins it.</summary>
internal static class ClusterCommand
{
    private const int UsualPort = 11_111;
    private static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(500);

    public static RootCommand Create()
    {
        var file = new Argument<string>("FILE") { Description = "The study document (docs/studies.md)." };
        var folder = new Option<string>("--out")
        {
            Description = "The folder for the parts; all silos must see it.",
            Required = true,
        };
        var port = Options.WholeNumber("--port", "The port of this silo. [default: 11111]", 1024, 65_000);
        var join = Options.WholeNumber("--join", "The port of the first silo, to join it.", 1024, 65_000);
        var part = Options.WholeNumber(
            "--part",
            "The number of items in a part. [default: 1000]",
            1,
            1_000_000
        );
        var threads = Options.WholeNumber(
            "--threads",
            "The number of parts that this silo computes at once. [default: one for each core]",
            1,
            256
        );
        var command = new RootCommand(
            "Computes a study on a Microsoft Orleans cluster, whose servers (silos) may die and join."
        )
        {
            file,
            folder,
            port,
            join,
            part,
            threads,
        };
        command.SetAction(parsed =>
        {
            var job = new StudyJob(
                ReadStudy(parsed.GetRequiredValue(file)),
                Path.GetFullPath(parsed.GetRequiredValue(folder)),
                parsed.GetValue(part) ?? StudyRun.UsualPartSize,
                parsed.GetValue(threads) ?? Environment.ProcessorCount
            );
            // What cannot be is said before anything is started.
            job.Run().Left(resumes: true, isAlone: false);
            Run(parsed, job, parsed.GetValue(port) ?? UsualPort, parsed.GetValue(join))
                .GetAwaiter()
                .GetResult();
        });
        return command;
    }

    private static async Task Run(ParseResult parsed, StudyJob job, int port, int? join)
    {
        var builder = Host.CreateApplicationBuilder();
        builder.Logging.ClearProviders().AddSimpleConsole(console => console.SingleLine = true);
        builder.Logging.SetMinimumLevel(LogLevel.Error).AddFilter("StudyCluster", LogLevel.Warning);
        builder.UseOrleans(silo =>
            silo.UseLocalhostClustering(
                    port,
                    port + 500,
                    join is { } first ? new IPEndPoint(IPAddress.Loopback, first) : null
                )
                .AddStudy(job)
        );
        using var host = builder.Build();
        await host.StartAsync();
        var ledger = host
            .Services.GetRequiredService<IGrainFactory>()
            .GetGrain<IStudyLedger>(job.Study.Sha256());
        var clock = Stopwatch.StartNew();
        var begun = (await ledger.State()).Kept;
        while (true)
        {
            var state = await ledger.State();
            Show(parsed, state, begun, clock.Elapsed);
            if (state.IsComplete)
            {
                break;
            }

            await Task.Delay(Glance);
        }

        // The first silo keeps the list of the others: they go first.
        await Task.Delay(join is null ? 4 * Glance : TimeSpan.Zero);
        await host.StopAsync();
        parsed.InvocationConfiguration.Output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{job.Study.Count} items are in '{job.Folder}' after {ProgressLine.Show(clock.Elapsed)}; ColumnTool merge puts them together."
            )
        );
    }

    private static void Show(ParseResult parsed, StudyState state, long begun, TimeSpan elapsed)
    {
        var rate = (state.Kept - begun) / Math.Max(elapsed.TotalSeconds, 1e-9);
        var left =
            rate > 0
                ? $", {ProgressLine.Show(TimeSpan.FromSeconds((state.Parts - state.Kept) / rate))} left"
                : "";
        var line = string.Create(
            CultureInfo.InvariantCulture,
            $"{state.Kept} of {state.Parts} parts, {state.Silos} silos{left}"
        );
        var error = parsed.InvocationConfiguration.Error;
        error.Write(Console.IsErrorRedirected ? $"{line}\n" : $"\r{line, -70}");
        error.Flush();
    }

    private static Study ReadStudy(string path)
    {
        try
        {
            return Study.Parse(File.ReadAllBytes(path));
        }
        catch (ColumnDocumentException problem)
        {
            throw new BadInputException($"{path}: {problem.Message}");
        }
    }
}
