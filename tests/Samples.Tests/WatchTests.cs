using Shared;

namespace Samples.Tests;

/// <summary>The time limit of the programs.</summary>
public class WatchTests
{
    [Fact]
    public void What_takes_too_long_stops_computing()
    {
        using var watch = new Watch(TimeSpan.FromMilliseconds(200), TextWriter.Null, false);
        using var ended = new ManualResetEventSlim();
        var token = watch.Token;
        Assert.False(
            watch.TryRun(
                () =>
                {
                    try
                    {
                        while (true)
                        {
                            token.ThrowIfCancellationRequested();
                            Thread.Sleep(1);
                        }
                    }
                    finally
                    {
                        ended.Set();
                    }
                },
                out int _
            )
        );
        ended.Wait();
        Assert.Throws<OperationCanceledException>(watch.Answers);
    }

    [Fact]
    public void What_is_soon_done_is_answered_and_what_it_throws_is_thrown()
    {
        using var watch = new Watch(TimeSpan.FromHours(1), TextWriter.Null, false);
        Assert.True(watch.TryRun(() => 7, out var answer));
        Assert.Equal(7, answer);
        Assert.False(watch.Token.IsCancellationRequested);
        Assert.Throws<NotSupportedException>(() =>
            watch.TryRun<int>(() => throw new NotSupportedException(), out _)
        );
    }
}
