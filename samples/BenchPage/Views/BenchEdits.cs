using System.Globalization;
using BenchPage.Tubes;
using BenchPage.Words;

namespace BenchPage.Views;

/// <summary>Changes of the parts.</summary>
public partial class Bench
{
    private Task SetText(int part, string key, string text)
    {
        var changed = tube.With(part, key, text);
        // A pipe of the catalogue has its outside from there; a measured one needs both.
        if (key == "stock")
        {
            changed =
                text.Length > 0
                    ? changed.With(part, "inside", "").With(part, "outside", "")
                    : Measured(changed, part);
        }

        return Change(changed, $"{part} {key}");
    }

    private TubeText Measured(TubeText changed, int part)
    {
        var stock = start!.Pipes.FirstOrDefault(pipe => pipe.Name == tube.Parts[part]["stock"]);
        return stock is null
            ? changed
            : changed
                .With(
                    part,
                    "inside",
                    tube.Parts[part]["inside"] ?? SizeText.Of(stock.InsideMillimetres, state.Units)
                )
                .With(part, "outside", stock.Outside.Split(" (")[0]);
    }

    private Task SetNumber(int part, string key, string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? Change(tube.With(part, key, number), $"{part} {key}")
            : Task.CompletedTask;

    private Task SetSocket(int part, string key, string text)
    {
        var inside = InsideNear(part);
        return Change(
            text == "*"
                ? tube.With(part, key, "entrance", SizeText.Of(inside + 6.5, state.Units))
                    .With(part, key, "bottom", SizeText.Of(inside + 6, state.Units))
                    .With(part, key, "depth", SizeText.Of(28, state.Units))
                : tube.With(part, key, text),
            ""
        );
    }

    private Task Add()
    {
        var after = inHand >= 0 ? inHand : tube.Parts.Count - 1;
        var near = Enumerable
            .Range(0, after + 1)
            .Reverse()
            .FirstOrDefault(i => tube.Parts[i].Kind == "pipe", 0);
        var at = adding is "insert" && inHand < 0 ? 0 : after + 1;
        var changed = tube.Inserted(
            at,
            PartKind
                .Of(adding)
                .New(
                    PageWords.NewNames[adding],
                    tube.Parts.Count > 0 ? tube.Parts[near]["stock"] : null,
                    InsideNear(near)
                )
        );
        inHand = at;
        return Change(changed, "");
    }

    private double InsideNear(int part)
    {
        foreach (var i in Enumerable.Range(0, Math.Min(part + 1, tube.Parts.Count)).Reverse())
        {
            if (tube.Parts[i].Kind != "pipe")
            {
                continue;
            }

            if (SizeText.Millimetres(tube.Parts[i]["inside"]) is { } measured)
            {
                return measured;
            }

            if (start!.Pipes.FirstOrDefault(pipe => pipe.Name == tube.Parts[i]["stock"]) is { } stock)
            {
                return stock.InsideMillimetres;
            }
        }

        return 40;
    }

    private Task Remove(int part)
    {
        inHand = -1;
        return Change(tube.Removed(part), "");
    }

    private Task Move(int part, int by)
    {
        inHand = inHand == part ? part + by : inHand;
        return Change(tube.Moved(part, part + by), "");
    }
}
