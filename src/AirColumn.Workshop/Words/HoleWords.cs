using System.Globalization;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>What is said of finger holes, in English.</summary>
internal sealed class HoleWords(Sizes sizes)
{
    public const string Title = "Finger holes";
    public const string Caption = "The finger holes, from the lips";
    public const string NotesCaption = "The notes that opening them adds";

    public static readonly string[] Head = ["hole", "diameter", "middle, along the pipe", "for the drone"];
    public static readonly string[] NotesHead =
    [
        "open",
        "frequency",
        "nearest note",
        "cents above the drone",
    ];

    public static string End(PipeEnd end) =>
        end == PipeEnd.Lips ? "the end towards the lips" : "the end towards the open end";

    public static string NoPipe(HolePart hole) =>
        $"The hole '{hole.Name}' is drilled in a pipe, so a pipe must come before it.";

    public static string WiderThanBore(HolePart hole, PipePart pipe) =>
        $"The hole '{hole.Name}' is {Wording.Size(hole.Diameter)} wide, but its pipe '{pipe.Name}' is only {Wording.Size(pipe.Inside)} inside. Make the hole narrower.";

    public static string OffThePipe(HolePart hole, PipePart pipe) =>
        $"The hole '{hole.Name}' runs off the pipe '{pipe.Name}'"
        + (pipe.Cut is { } cut ? $", which is {Wording.Millimetres(cut)} long" : "")
        + $": its middle lies {Wording.Millimetres(hole.At)} from {End(hole.From)}. Place all of it on the pipe.";

    public static string Hidden(HolePart hole, TubePart by, PipeEnd end, double from, double to) =>
        by switch
        {
            JoinPart =>
                $"The hole '{hole.Name}' would be hidden in the socket of '{by.Name}', which holds {Millimetres(to)} of the pipe. Place all of it farther than that from {End(end)}.",
            InsertPart =>
                $"The hole '{hole.Name}' would be covered by '{by.Name}', which is pushed {Millimetres(to)} into the pipe. Place all of it farther than that from {End(end)}.",
            _ =>
                $"The hole '{hole.Name}' lies where '{by.Name}' is formed, {Millimetres(from)} to {Millimetres(to)} from {End(end)} of the sawn pipe. Place all of it where the pipe stays straight.",
        };

    public static string TooShort(PipePart pipe, Length cut, double least) =>
        $"The pipe '{pipe.Name}' is {Wording.Millimetres(cut)} long, but to keep its finger holes where they are and apart it needs {Millimetres(least)}; make it longer.";

    public static string Overlaps(HolePart hole, HolePart other) =>
        $"The holes '{other.Name}' and '{hole.Name}' overlap. Place them farther apart.";

    public static string DrillAfterTrimming(HolePart hole) =>
        $"{Named.Begin(hole)} is measured from the end that is trimmed: drill it when the drone is in tune.";

    public static string Wide(HolePart hole, double widest) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Named.Begin(hole)} is {Wording.Size(hole.Diameter)} wide: above about {widest:0} mm many fingers do not close a hole, and it leaks (our guess). Make it narrower, or cover it with a pad."
        );

    public static string ThinBetween(HolePart one, HolePart other, double left) =>
        $"Between {Named.The(one)} and {Named.The(other)} only {Millimetres(left)} of wall are left: it may break out. Place them farther apart.";

    public static string ThinToTheEnd(HolePart hole, double left) =>
        $"Between {Named.The(hole)} and {End(hole.From)} of its pipe only {Millimetres(left)} of wall are left: it may break out. Place it farther from that end.";

    public static string ForTheDrone(HolePart hole) => hole.IsOpenInDrone ? "open" : "closed";

    public static string Open(IReadOnlyList<HolePart> holes) =>
        string.Join(", ", holes.Select(hole => hole.Name));

    public string Place(DrilledHole hole) =>
        $"{sizes.Tape(hole.Hole.At)} from {End(hole.Hole.From)} of {Named.The(hole.Cut.Pipe)}";

    public string Drill(HolePart hole, PipePart pipe) =>
        $"Mark {Named.The(pipe)} {sizes.Tape(hole.At)} from {End(hole.From)}, before it is put together, and drill {Named.The(hole)} there: small first. "
        + $"Play, and open it up to {sizes.Caliper(hole.Diameter)}: a wider hole is sharper. Deburr it inside.";

    /// <summary>How the drone sounds before the holes are drilled.</summary>
    public static string BeforeDrilling(double cents) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"The cuts on this sheet are for the tube with its holes. Before they are drilled, the first resonance lies {Math.Abs(cents):0.#} cents {(cents < 0 ? "lower" : "higher")}: trim to that, then drill."
        );

    public static string PictureOfDrilling(string letter) => $"Picture: drilling cut {letter}";

    private static string Millimetres(double millimetres) =>
        Wording.Millimetres(Length.FromMillimeters(millimetres));
}
