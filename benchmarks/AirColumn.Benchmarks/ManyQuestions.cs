using System.Diagnostics;
using System.Globalization;

namespace AirColumn.Benchmarks;

/// <summary>Many questions through one process of ColumnTool, compiled ahead: what each costs, and what memory they take.</summary>
internal static class ManyQuestions
{
    private const int Questions = 10_000;
    private const int Names = 200_000;
    private const int Runs = 11;

    /// <summary>Sentences that say what was measured.</summary>
    /// <param name="program">ColumnTool, compiled ahead.</param>
    public static string Told(string program)
    {
        var document = StartUp.Document.ReplaceLineEndings(" ");
        var air = Processor(program, "\"verb\":\"air\",\"temperature\":\"20 °C\"", false);
        var same = Processor(program, $"\"verb\":\"impedance\",\"document\":{document},\"at\":[100]", false);
        var turns = Processor(program, $"\"verb\":\"impedance\",\"document\":{document},\"at\":[100]", true);
        var (first, seconds, peak) = Sweep(program);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{Questions} small questions by [lines of JSON](json-lines.md), compiled ahead: processor time of the process for each question, computing included, medians of {Runs}. The air at one temperature takes {air:F0} µs. "
                + $"The impedance of a stepped tube at one frequency, with the document in each line, takes {same:F0} µs, or {turns:F0} µs if each question waits for the answer to the one before. "
                + $"`ColumnTool sweep --list - --count 1` with {Names} names written to its input: first answer {first:F0} ms after the start of the process, median of {Runs}; all in {seconds:F1} s; "
                + $"at most {peak:F0} MB of memory."
        );
    }

    // Microseconds of processor time for each question, between the answer to the first and to the last.
    private static double Processor(string program, string question, bool isOneByOne)
    {
        var times = new List<double>();
        for (var run = 0; run < Runs; run++)
        {
            using var process = Begin(program, "lines");
            Ask(process, 0, question);
            process.StandardOutput.ReadLine();
            process.Refresh();
            var before = process.TotalProcessorTime;
            if (isOneByOne)
            {
                for (var i = 1; i <= Questions; i++)
                {
                    Ask(process, i, question);
                    process.StandardOutput.ReadLine();
                }
            }
            else
            {
                var asking = Task.Run(() =>
                {
                    for (var i = 1; i <= Questions; i++)
                    {
                        Ask(process, i, question);
                    }
                });
                for (var i = 1; i <= Questions; i++)
                {
                    process.StandardOutput.ReadLine();
                }

                asking.GetAwaiter().GetResult();
            }

            process.Refresh();
            times.Add((process.TotalProcessorTime - before).TotalMicroseconds / Questions);
            process.StandardInput.Close();
            process.WaitForExit();
        }

        times.Sort();
        return times[Runs / 2];
    }

    private static (double FirstMilliseconds, double Seconds, double Megabytes) Sweep(string program)
    {
        var name = Path.GetTempFileName();
        File.WriteAllText(name, StartUp.Document);
        var (firsts, peak, seconds) = (new List<double>(), 0L, 0.0);
        for (var run = 0; run < Runs; run++)
        {
            var start = Stopwatch.GetTimestamp();
            using var process = Begin(program, "sweep", "--list", "-", "--count", "1");
            var naming = Task.Run(() =>
            {
                // All of them once; to see the first answer, some will do.
                for (var i = 0; i < (run == 0 ? Names : 100); i++)
                {
                    process.StandardInput.Write($"{name}\n");
                }

                process.StandardInput.Close();
            });
            process.StandardOutput.ReadLine();
            process.StandardOutput.ReadLine();
            firsts.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            for (var i = 0; process.StandardOutput.ReadLine() is not null; i++)
            {
                if (i % 1000 == 0 && !process.HasExited)
                {
                    process.Refresh();
                    peak = Math.Max(peak, process.PeakWorkingSet64);
                }
            }

            naming.GetAwaiter().GetResult();
            process.WaitForExit();
            seconds = run == 0 ? Stopwatch.GetElapsedTime(start).TotalSeconds : seconds;
        }

        File.Delete(name);
        firsts.Sort();
        return (firsts[Runs / 2], seconds, peak / 1e6);
    }

    private static Process Begin(string program, params string[] arguments)
    {
        var process = Process.Start(
            new ProcessStartInfo(program, arguments)
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
            }
        )!;
        process.StandardInput.AutoFlush = true;
        return process;
    }

    private static void Ask(Process process, int id, string question) =>
        process.StandardInput.Write(
            string.Create(CultureInfo.InvariantCulture, $"{{\"id\":{id},{question}}}\n")
        );
}
