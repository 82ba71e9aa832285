using System.Runtime.ExceptionServices;

namespace ColumnTool.Lines;

/// <summary>Threads that work through items which another thread brings; who brings more than they can hold waits.</summary>
/// <remarks>Memory is bounded by the number of items and by their bytes, however many there are in all.</remarks>
internal sealed class Crew<T> : IDisposable
{
    private const int ItemsForEach = 16;
    private const long MostBytes = 32 << 20;

    private readonly Queue<(T Item, long Bytes)> waiting = new();
    private readonly Thread[] threads;
    private readonly int mostItems;
    private long bytes;
    private int idle;
    private bool isClosed;
    private ExceptionDispatchInfo? problem;

    /// <summary>Begins.</summary>
    /// <param name="jobs">How many threads.</param>
    /// <param name="work">Called on each, with a number of the thread; what it throws ends all.</param>
    public Crew(int jobs, Action<T, int> work)
    {
        mostItems = ItemsForEach * jobs;
        threads =
        [
            .. Enumerable
                .Range(0, jobs)
                .Select(number => new Thread(() => Work(work, number)) { IsBackground = true }),
        ];
        foreach (var thread in threads)
        {
            thread.Start();
        }
    }

    /// <summary>Adds an item, when there is room for it.</summary>
    /// <param name="item">The item.</param>
    /// <param name="size">Its bytes.</param>
    public void Add(T item, long size)
    {
        lock (waiting)
        {
            while (
                problem is null
                && waiting.Count > 0
                && (waiting.Count >= mostItems || bytes + size > MostBytes)
            )
            {
                Monitor.Wait(waiting);
            }

            problem?.Throw();
            waiting.Enqueue((item, size));
            bytes += size;
            if (idle > 0)
            {
                Monitor.PulseAll(waiting);
            }
        }
    }

    /// <summary>Waits until everything is done.</summary>
    public void Finish()
    {
        Close();
        foreach (var thread in threads)
        {
            thread.Join();
        }

        problem?.Throw();
    }

    public void Dispose() => Close();

    private void Close()
    {
        lock (waiting)
        {
            isClosed = true;
            Monitor.PulseAll(waiting);
        }
    }

    private void Work(Action<T, int> work, int number)
    {
        // Whatever it is, it is thrown again where somebody waits for it.
#pragma warning disable CA1031
        try
        {
            while (Take() is (true, var item))
            {
                work(item!, number);
            }
        }
        catch (Exception thrown)
        {
            lock (waiting)
            {
                problem ??= ExceptionDispatchInfo.Capture(thrown);
                Monitor.PulseAll(waiting);
            }
        }
#pragma warning restore CA1031
    }

    private (bool IsThere, T? Item) Take()
    {
        lock (waiting)
        {
            while (waiting.Count == 0 && !isClosed && problem is null)
            {
                idle++;
                Monitor.Wait(waiting);
                idle--;
            }

            if (waiting.Count == 0 || problem is not null)
            {
                return default;
            }

            var (item, size) = waiting.Dequeue();
            bytes -= size;
            // Who brings items is woken when half of the room is free again, not for each: that costs more than the work.
            if (waiting.Count <= mostItems / 2)
            {
                Monitor.PulseAll(waiting);
            }

            return (true, item);
        }
    }
}
