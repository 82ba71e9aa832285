using System.Diagnostics;
using System.Globalization;

namespace Shared.Studies;

/// <summary>How far a study is, how fast, and how long it will take: a line in place for somebody who looks, now and then a line for a log.</summary>
internal sealed class ProgressLine(TextWriter error, bool isSeen, long total, long kept)
{
    private static readonly TimeSpan InPlace = TimeSpan.FromSeconds(0.5);
    private static readonly TimeSpan InLogs = TimeSpan.FromSeconds(30);

    private readonly Stopwatch clock = Stopwatch.StartNew();
    private TimeSpan shown;
    private int width;
    private long done;

    /// <summary>How many were done.</summary>
    public long Done => done;

    /// <summary>How many each second.</summary>
    public double Rate => done / Math.Max(clock.Elapsed.TotalSeconds, 1e-9);

    /// <summary>One more is done.</summary>
    public void Next()
    {
        done++;
        if (clock.Elapsed - shown < (isSeen ? InPlace : InLogs))
        {
            return;
        }

        shown = clock.Elapsed;
        var left = TimeSpan.FromSeconds(Math.Min((total - kept - done) / Rate, 1e8));
        var line = string.Create(
            CultureInfo.InvariantCulture,
            $"{kept + done} of {total} items, {Rate:0.#}/s, {Show(left)} left"
        );
        error.Write(isSeen ? $"\r{line.PadRight(width)}" : $"{line}\n");
        error.Flush();
        width = line.Length;
    }

    /// <summary>Takes the line away.</summary>
    public void End()
    {
        if (isSeen && width > 0)
        {
            error.Write($"\r{new string(' ', width)}\r");
            error.Flush();
        }
    }

    /// <summary>A time for people.</summary>
    public static string Show(TimeSpan time) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{(time.TotalDays >= 1 ? $"{(int)time.TotalDays} d {time.Hours} h"
                : time.TotalHours >= 1 ? $"{(int)time.TotalHours} h {time.Minutes} min"
                : time.TotalMinutes >= 1 ? $"{(int)time.TotalMinutes} min {time.Seconds} s"
                : $"{time.TotalSeconds:0.#} s")}"
        );
}
