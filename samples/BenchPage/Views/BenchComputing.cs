using System.Globalization;
using BenchPage.Engine;
using BenchPage.Words;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace BenchPage.Views;

/// <summary>Asks the worker, and shows what it answers.</summary>
public partial class Bench
{
    // The newest wins: what came while one was computed and is outdated already is left out.
    private async Task Compute()
    {
        wanted = state;
        await script!.InvokeVoidAsync("keep", Kept);
        if (isBusy)
        {
            return;
        }

        if (state.Kind != "tube")
        {
            (shown, wanted) = (state, null);
            return;
        }

        isBusy = true;
        try
        {
            await Waited(PageWords.Computing, ComputeWanted);
            if (isStopped && done == 0)
            {
                // What is known is of an older tube.
                cut = new CutAnswer { Side = cut.Side };
            }
        }
        finally
        {
            isBusy = false;
            StateHasChanged();
        }
    }

    private async Task ComputeWanted()
    {
        while (wanted is { } now)
        {
            wanted = null;
            var asked = now.ForTheCut();
            if (asked == answered)
            {
                shown = now;
                continue;
            }

            (plan, answered, done) = (null, null, 0);
            var question = new Question(asked) { Width = width };
            cut =
                await engine!.Cut(question) is var answer
                && answer.Error.Length > 0
                && answer.Side.Length == 0
                    ? answer with
                    {
                        Side = cut.Side,
                        Notes = [],
                        Fingered = [],
                    }
                    : answer;
            (tried, done) = (null, 1.0 / 3);
            StateHasChanged();
            await script!.InvokeVoidAsync("mark", "first-cut");
            if (wanted is null && cut.Error.Length == 0)
            {
                plan = await engine.Plan(question);
                firstCut = plan is { FirstCut: [var length, ..] } ? length : "";
                done = 2.0 / 3;
                StateHasChanged();
                if (wanted is null && plan.Error.Length == 0)
                {
                    plan = plan with { Impedance = await engine.Chart(question) };
                }
            }

            await script!.InvokeVoidAsync("mark", "first-plan");
            (shown, answered) = (now, plan is null && cut.Error.Length == 0 ? null : asked);
        }
    }

    /// <summary>Waits for something that may take long; after half a second it can be cancelled.</summary>
    private async Task Waited(string what, Func<Task> work)
    {
        const int Long = 500; // ms
        (waiting, isLong, isStopped, done) = (what, false, false, 0);
        var number = ++waits;
        _ = Lengthen();
        try
        {
            await work();
        }
        catch (OperationCanceledException)
        {
            isStopped = true;
        }
        catch (JSException fault)
        {
            message = PageWords.Fault + fault.Message;
        }
        finally
        {
            if (number == waits)
            {
                waiting = "";
            }
        }

        async Task Lengthen()
        {
            await Task.Delay(Long);
            if (waiting.Length > 0 && number == waits)
            {
                isLong = true;
                StateHasChanged();
            }
        }
    }

    private async Task Cancel()
    {
        wanted = null;
        await engine!.StopAsking();
    }

    private Task ComputeAgain()
    {
        answered = null;
        return Compute();
    }

    // The newest wins, as with the whole bench.
    private async Task Try(ChangeEventArgs change)
    {
        trying = double.Parse(change.Value!.ToString()!, CultureInfo.InvariantCulture);
        if (isTrying)
        {
            return;
        }

        isTrying = true;
        while (trying is { } cutTried)
        {
            trying = null;
            var question = new Question(state.ForTheCut()) { Width = width, Tried = cutTried };
            await Waited(PageWords.Computing, async () => tried = await engine!.Try(question));
            StateHasChanged();
        }

        isTrying = false;
    }
}
