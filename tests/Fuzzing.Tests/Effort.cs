using System.Diagnostics;

namespace Fuzzing.Tests;

/// <summary>
/// How long something takes, in seconds: by the clock, but no more than the processor has worked meanwhile, so that a machine busy with
/// other things is no hang.
/// </summary>
internal readonly struct Effort
{
    private readonly long clock = Stopwatch.GetTimestamp();
    private readonly TimeSpan processor = Environment.CpuUsage.TotalTime;

    /// <summary>Begins.</summary>
    public Effort() { }

    /// <summary>Seconds since it began.</summary>
    public double Seconds =>
        Stopwatch.GetElapsedTime(clock) is var elapsed && elapsed.TotalSeconds < 1
            ? elapsed.TotalSeconds
            : Math.Min(elapsed.TotalSeconds, (Environment.CpuUsage.TotalTime - processor).TotalSeconds);
}
