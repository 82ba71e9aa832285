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
            while (wanted is { } now)
            {
                wanted = null;
                var asked = now.ForTheCut();
                if (asked == answered)
                {
                    shown = now;
                    continue;
                }

                var question = new Question(asked) { Width = width };
                cut =
                    await engine!.Cut(question) is var answer
                    && answer.Error.Length > 0
                    && answer.Side.Length == 0
                        ? answer with
                        {
                            Side = cut.Side,
                            Notes = [],
                        }
                        : answer;
                (plan, answered, tried) = (null, null, null);
                StateHasChanged();
                await script!.InvokeVoidAsync("mark", "first-cut");
                if (wanted is null && cut.Error.Length == 0)
                {
                    var whole = await engine.Plan(question);
                    plan = wanted is null ? whole : null;
                    firstCut = plan is { FirstCut: [var length, ..] } ? length : "";
                }

                await script!.InvokeVoidAsync("mark", "first-plan");
                (shown, answered) = (now, plan is null && cut.Error.Length == 0 ? null : asked);
            }
        }
        catch (JSException fault)
        {
            message = PageWords.Fault + fault.Message;
        }
        finally
        {
            isBusy = false;
            StateHasChanged();
        }
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
            tried = await engine!.Try(new Question(state.ForTheCut()) { Width = width, Tried = cutTried });
            StateHasChanged();
        }

        isTrying = false;
    }
}
