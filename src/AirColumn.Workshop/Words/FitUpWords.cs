using System.Globalization;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>The steps of putting a tube together, in English.</summary>
internal sealed class FitUpWords(Sizes sizes)
{
    public static string Cut(PipePart pipe, NamedCut cut) =>
        $"Cut {Named.The(pipe)} to {string.Join(" or ", cut.Sizes)}, square, and deburr it inside and outside.";

    public static string Uses(NamedCut? cut) =>
        cut is null ? "Uses no cut." : $"Uses cut {cut.Letter}: {cut.Pipe.Name}.";

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

    /// <param name="bend">The bend.</param>
    /// <param name="pipe">What it is made from.</param>
    /// <param name="beyond">How much of the flat pipe lies beyond it.</param>
    /// <param name="arc">How much of it is bent.</param>
    public string Bend(BendPart bend, PipePart pipe, Length beyond, Length arc) =>
        $"Mark {Named.The(pipe)} {sizes.Tape(beyond)} and {sizes.Tape(beyond + arc)} from its far end. "
        + (
            PartRemarks.IsFormedByHeat(pipe)
                ? "Heat it between the marks and bend it"
                : "Have it bent between the marks"
        )
        + $" {SheetWords.Degrees(bend.Angle.Degrees)}, the centreline at a radius of {sizes.Tape(bend.Radius)}; keep the bore round"
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

    public static string DiameterOf(HolePart hole) => $"diameter of {Named.The(hole)}";

    public string Within(Length plusMinus) => $"± {sizes.Caliper(plusMinus)}";

    public static string WithinKelvins(double plusMinus) =>
        string.Create(CultureInfo.InvariantCulture, $"± {plusMinus:0.#} °C");
}
