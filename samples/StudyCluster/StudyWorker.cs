using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Shared;
using Shared.Studies;

namespace StudyCluster;

/// <summary>Computes parts in a silo, on several threads, until all are there.</summary>
internal sealed partial class StudyWorker(
    StudyJob job,
    IGrainFactory grains,
    ILocalSiloDetails silo,
    ILogger<StudyWorker> log
) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);

    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll(
            Enumerable.Range(0, job.Threads).Select(_ => Task.Run(() => Work(stoppingToken), stoppingToken))
        );

    private async Task Work(CancellationToken token)
    {
        var ledger = grains.GetGrain<IStudyLedger>(job.Study.Sha256());
        StudyRun? run = null;
        while (!token.IsCancellationRequested)
        {
            long? part = null;
            // A silo that died takes calls with it; whatever it was, it is asked again.
#pragma warning disable CA1031
            try
            {
                part = await ledger.Claim(silo.SiloAddress);
                if (part is { } claimed)
                {
                    run ??= job.Run();
                    run.Compute([claimed], 1, _ => { }, token);
                    await ledger.Keep(claimed);
                }
                else if ((await ledger.State()).IsComplete)
                {
                    return;
                }
                else
                {
                    await Task.Delay(Pause, token);
                }
            }
            catch (Exception problem) when (!token.IsCancellationRequested)
            {
                Said(
                    log,
                    problem is FailureException
                        ? problem.Message
                        : $"{problem.GetType().Name}: {problem.Message}"
                );
                await Task.Delay(Pause, token);
                await GiveBack(ledger, part);
            }
            catch (OperationCanceledException)
            {
                return;
            }
#pragma warning restore CA1031
        }
    }

    private static async Task GiveBack(IStudyLedger ledger, long? part)
    {
        if (part is not { } claimed)
        {
            return;
        }

        try
        {
            await ledger.GiveBack(claimed);
        }
        catch (Exception problem) when (problem is OrleansException or TimeoutException)
        {
            // Who answers next has read the folder, and knows that it is free.
        }
    }

    [LoggerMessage(LogLevel.Warning, "{Message}")]
    private static partial void Said(ILogger log, string message);
}
