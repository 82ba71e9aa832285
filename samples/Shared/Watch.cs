using System.Diagnostics;
using System.Globalization;
using System.Runtime.ExceptionServices;

namespace Shared;

/// <summary>Lets something be computed for so long and no longer, and shows somebody who waits that it is.</summary>
/// <remarks>
/// The clock stands still once an answer begins to be written: a reader may take all the time there is. What is given up is cancelled and waited for;
/// only what does not heed that within some seconds is left to itself, unheard.
/// </remarks>
internal sealed class Watch(TimeSpan limit, TextWriter seen, bool isSeen) : IDisposable
{
    private static readonly TimeSpan Tick = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(5);

    private readonly CancellationTokenSource source = new();
    private readonly Lock gate = new();
    private bool isAnswering;
    private bool isGivenUp;
    private string items = "";
    private string line = "";

    /// <summary>Cancelled when the time is over: to be passed on to what is computed.</summary>
    public CancellationToken Token => source.Token;

    public void Dispose() => source.Dispose();

    /// <summary>Runs it; false if the time was over first.</summary>
    public bool TryRun<T>(Func<T> run, out T? answer)
    {
        T? result = default;
        ExceptionDispatchInfo? problem = null;
        var thread = new Thread(() =>
        {
            // Whatever it is, it is thrown again where somebody waits for it.
#pragma warning disable CA1031
            try
            {
                result = run();
            }
            catch (Exception thrown)
            {
                problem = ExceptionDispatchInfo.Capture(thrown);
            }
#pragma warning restore CA1031
        })
        {
            IsBackground = true,
            CurrentCulture = CultureInfo.CurrentCulture,
        };
        var clock = Stopwatch.StartNew();
        thread.Start();
        answer = default;
        while (!thread.Join(TimeSpan.FromTicks(Math.Min(Tick.Ticks, limit.Ticks))))
        {
            if (!GoesOn(clock.Elapsed))
            {
                source.Cancel();
                thread.Join(Grace);
                return false;
            }
        }

        lock (gate)
        {
            Show("");
        }

        problem?.Throw();
        answer = result;
        return true;
    }

    /// <summary>What is done of several things, such as "3 of 7".</summary>
    public void Did(string done)
    {
        lock (gate)
        {
            items = done;
        }
    }

    /// <summary>To be called before the first of an answer is written.</summary>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public void Answers()
    {
        lock (gate)
        {
            if (isGivenUp)
            {
                throw new OperationCanceledException();
            }

            isAnswering = true;
            Show("");
        }
    }

    private bool GoesOn(TimeSpan elapsed)
    {
        lock (gate)
        {
            if (isAnswering)
            {
                return true;
            }

            isGivenUp = elapsed >= limit;
            Show(
                isGivenUp || elapsed < Patience
                    ? ""
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"{items}{(items.Length > 0 ? ", " : "")}{elapsed.TotalSeconds:0} s of {limit.TotalSeconds:0} s at most"
                    )
            );
            return !isGivenUp;
        }
    }

    // In place of the line before.
    private void Show(string text)
    {
        if (!isSeen || text == line)
        {
            return;
        }

        seen.Write($"\r{text.PadRight(line.Length)}{(text.Length == 0 ? "\r" : "")}");
        seen.Flush();
        line = text;
    }
}
