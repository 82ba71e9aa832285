using System.Diagnostics;
using System.Globalization;
using AirColumn.Studies;
using Shared.Studies;

namespace AirColumn.Benchmarks;

/// <summary>
/// What a study costs beside what it asks: its items into a folder, with all that keeps them, against the same ten resonances asked for one
/// after the other and thrown away. By processor time, in turn, in one process.
/// </summary>
internal static class StudyRate
{
    private const int Rounds = 9;

    /// <summary>A table of it.</summary>
    public static string Told(string path, int threads)
    {
        var study = Study.Parse(File.ReadAllBytes(path));
        var folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            var alone = new double[Rounds];
            var kept = new double[Rounds];
            OneByOne(study);
            Kept(study, Path.Combine(folder, "warm"), threads);
            for (var i = 0; i < Rounds; i++)
            {
                alone[i] = Seconds(() => OneByOne(study));
                kept[i] = Seconds(() => Kept(study, Path.Combine(folder, $"{i}"), threads));
            }

            var ratios = alone.Zip(kept, (one, other) => one / other).Order().ToList();
            return string.Create(
                CultureInfo.InvariantCulture,
                $"""
                {study.Count} items, {threads} threads, medians of {Rounds} rounds, processor time for each item:
                ten resonances one by one  {1e6 * Median(alone) / study.Count:F0} µs, {study.Count
                    / Median(alone):F0}/s and core
                the same as a study        {1e6 * Median(kept) / study.Count:F0} µs, {study.Count
                    / Median(kept):F0}/s and core
                rate of the study to that of the resonances: {ratios[Rounds / 2]:F2} ({ratios[
                    0
                ]:F2} to {ratios[^1]:F2})
                """
            );
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    private static void OneByOne(Study study)
    {
        for (var item = 0L; item < study.Count; item++)
        {
            var found = study.ColumnOf(item).FirstResonances(study.Answers.Resonances);
            if (found.Count == 0)
            {
                throw new InvalidOperationException("There is nothing to measure.");
            }
        }
    }

    private static void Kept(Study study, string folder, int threads)
    {
        var run = new StudyRun(PartFolder.Begin(folder, study), Shard.Whole, StudyRun.UsualPartSize);
        run.Compute(run.Left(false).ToDo, threads, _ => { }, CancellationToken.None);
    }

    private static double Seconds(Action action)
    {
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        action();
        process.Refresh();
        return (process.TotalProcessorTime - before).TotalSeconds;
    }

    private static double Median(double[] values) => values.Order().ElementAt(values.Length / 2);
}
