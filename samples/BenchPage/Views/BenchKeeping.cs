using System.Text.Json;
using BenchPage.Engine;
using BenchPage.Tubes;
using BenchPage.Words;
using Microsoft.JSInterop;

namespace BenchPage.Views;

/// <summary>What is kept, opened, saved, linked and undone.</summary>
public partial class Bench
{
    private Task Begin(string with)
    {
        var changed = with switch
        {
            "drone" => state with { Kind = "tube", Parts = Starters.Drone.Parts, Note = Starters.Drone.Note },
            "horn" => state with { Kind = "tube", Parts = Starters.Horn.Parts, Note = Starters.Horn.Note },
            _ => state with { Kind = with },
        };
        tube = TubeText.Parse(changed.Parts);
        inHand = -1;
        return Change(changed, "");
    }

    private Task Undo() => Restore(history.Undo(state));

    private Task Redo() => Restore(history.Redo(state));

    private Task Restore(BenchState then)
    {
        state = then;
        tube = TubeText.Parse(then.Parts);
        inHand = Math.Min(inHand, tube.Parts.Count - 1);
        return Compute();
    }

    private string Kept => StateText.Write(state);

    // What is not readable, such as of a later version, is left alone.
    private void Take(string kept)
    {
        if (Readable(kept) is { } read)
        {
            (state, tube) = read;
        }
        else
        {
            message = PageWords.BadLink;
        }
    }

    private async Task OpenLink(string linked)
    {
        if (Readable(linked) is { } read)
        {
            (tube, inHand) = (read.Tube, -1);
            await Change(read.State, "");
        }
        else
        {
            message = PageWords.BadNewLink;
        }

        StateHasChanged();
    }

    private static (BenchState State, TubeText Tube)? Readable(string kept)
    {
        try
        {
            var then = StateText.Read(kept);
            return (then, TubeText.Parse(then.Parts));
        }
        catch (Exception problem)
            when (problem
                    is JsonException
                        or InvalidOperationException
                        or ArgumentException
                        or NullReferenceException
            )
        {
            return null;
        }
    }

    private async Task OpenFile()
    {
        if (await script!.InvokeAsync<string?>("openFile", ".json,application/json") is not { } text)
        {
            return;
        }

        if (await engine!.Check(text) is { Length: > 0 } error)
        {
            message = error;
            return;
        }

        inHand = -1;
        await Change(TubeText.Parse(text), "");
    }

    private ValueTask SaveFile() =>
        script!.InvokeVoidAsync("saveFile", FileName + ".json", state.Parts, "application/json");

    private string FileName =>
        tube.Name.Length > 0
            ? string.Concat(tube.Name.Select(c => char.IsLetterOrDigit(c) ? c : '-')).ToLowerInvariant()
            : "tube";

    private async Task CopyLink()
    {
        await script!.InvokeVoidAsync("copyLink", Kept);
        message = PageWords.Copied;
    }
}
