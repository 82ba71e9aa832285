using System.Globalization;
using System.Text.Json.Nodes;
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
        var near = PipeNear(inHand >= 0 ? inHand : tube.Parts.Count - 1);
        var part = PartKind
            .Of(adding)
            .New(
                PageWords.NewNames[adding],
                tube.Parts.Count > 0 ? tube.Parts[near]["stock"] : null,
                InsideNear(near)
            );
        var at = adding switch
        {
            "hole" => Drilled(part),
            "insert" when inHand < 0 => 0,
            _ => (inHand >= 0 ? inHand : tube.Parts.Count - 1) + 1,
        };
        inHand = at;
        return Change(tube.Inserted(at, part), "");
    }

    // In the pipe in hand, else in the one whose length is to be found; beside the holes that it has.
    private int Drilled(JsonObject part)
    {
        var open = tube.Parts.ToList().FindIndex(one => one.IsOpen);
        var pipe = PipeNear(inHand >= 0 || open < 0 ? inHand : open);
        var at = tube.BehindHoles(pipe);
        var holes = Enumerable.Range(pipe + 1, at - pipe - 1).Select(i => tube.Parts[i]).ToList();
        part["at"] = PartKind.HolePlace(
            holes.Where(hole => hole["from"] != "lips").Max(hole => SizeText.Millimetres(hole["at"]))
        );
        part["name"] = FormattableString.Invariant(
            $"{part["name"]} {tube.Parts.Count(one => one.Kind == "hole") + 1}"
        );
        return at;
    }

    // The pipe that a part is, or is behind; the first where there is none before it.
    private int PipeNear(int part)
    {
        bool IsPipe(int i) => tube.Parts[i].Kind == "pipe";
        var all = Enumerable.Range(0, tube.Parts.Count).ToList();
        return all.LastOrDefault(i => i <= part && IsPipe(i), all.FirstOrDefault(IsPipe, 0));
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
