using System.Globalization;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>The steps of putting a tube together, in English.</summary>
internal sealed class FitUpWords(Sizes sizes)
{
    public static string Cut(PipePart pipe) =>
        $"Cut {Named.The(pipe)} square and deburr it inside and outside.";

    public string PushIn(InsertPart insert, TubePart into) =>
        $"Push {Named.The(insert)} {sizes.Tape(insert.Inserted)} into {Named.The(into)}, "
        + (
            insert.Protrudes > Length.Zero
                ? $"leaving {sizes.Tape(insert.Protrudes)} showing."
                : "flush with its end."
        );

    public string PushInto(TubePart part, JoinPart join, FittingSocket socket) =>
        $"Push {Named.The(part)} into {Named.The(join)}, {sizes.Tape(Length.FromMillimeters(socket.Depth.Millimeters - socket.Gap.Millimeters))} deep"
        + (
            socket.Gap > Length.Zero
                ? $", which leaves {sizes.Caliper(socket.Gap)} to the stop."
                : ", to the stop."
        );

    public string Bend(BendPart bend, PipePart pipe) =>
        (
            PartRemarks.IsFormedByHeat(pipe)
                ? $"Heat {Named.The(pipe)} and bend it"
                : $"Have {Named.The(pipe)} bent"
        )
        + $" {bend.Angle.Degrees.ToString("0.#", CultureInfo.InvariantCulture)}°, the centreline at a radius of {sizes.Tape(bend.Radius)}; keep the bore round"
        + (
            bend.StraightAfter > Length.Zero
                ? $" and {sizes.Tape(bend.StraightAfter)} straight after the bend."
                : "."
        );

    public string Bell(BellPart bell, PipePart pipe) =>
        (PartRemarks.IsFormedByHeat(pipe) ? "Heat and flare" : "Have someone of the trade flare")
        + $" the last {sizes.Tape(bell.Formed)} of {Named.The(pipe)} to {sizes.Caliper(bell.EndInside)} inside.";

    public string PutOn(AddedPart added) =>
        $"Put on {Named.The(added)}: the tube must be {sizes.Tape(added.Adds)} longer with it than without.";

    public static string AskTheMaker(PipePart pipe) =>
        $"The plastic of {Named.The(pipe)} is not known here: read its maker's limits for heat forming first.";

    public static string InsideOf(IEnumerable<TubePart> parts) =>
        $"inside of {string.Join(" and ", parts.Select(Named.The))}";

    public static string EndOf(TubePart part) => $"end of {Named.The(part)}";

    public static string CutOf(TubePart part) => $"cut of {Named.The(part)}";

    public string Within(Length plusMinus) => $"± {sizes.Caliper(plusMinus)}";

    public static string WithinKelvins(double plusMinus) =>
        string.Create(CultureInfo.InvariantCulture, $"± {plusMinus:0.#} °C");
}
