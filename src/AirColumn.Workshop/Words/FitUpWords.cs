using System.Globalization;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>The steps of putting a tube together, in English.</summary>
internal sealed class FitUpWords(Sizes sizes)
{
    public static string Cut(PipePart pipe) => $"Cut {pipe.Name} square, deburr it inside and outside.";

    public string PushIn(InsertPart insert, TubePart into) =>
        $"Push {insert.Name} {sizes.Tape(insert.Inserted)} into {into.Name}"
        + (
            insert.Protrudes > Length.Zero
                ? $"; it stands out {sizes.Tape(insert.Protrudes)}."
                : ", flush with its end."
        );

    public string PushInto(TubePart part, JoinPart join, FittingSocket socket) =>
        $"Push {part.Name} into {join.Name}, {sizes.Tape(Length.FromMillimeters(socket.Depth.Millimeters - socket.Gap.Millimeters))} deep"
        + (
            socket.Gap > Length.Zero
                ? $", which leaves {sizes.Caliper(socket.Gap)} to the stop."
                : ", to the stop."
        );

    public string Bend(BendPart bend) =>
        $"Form {bend.Name}: {bend.Angle.Degrees.ToString("0.#", CultureInfo.InvariantCulture)}° about a radius of {sizes.Tape(bend.Radius)} to the centreline, the bore kept round"
        + (bend.StraightAfter > Length.Zero ? $", {sizes.Tape(bend.StraightAfter)} straight after it." : ".");

    public string Bell(BellPart bell) =>
        $"Form {bell.Name} over {sizes.Tape(bell.Formed)} to {sizes.Caliper(bell.EndInside)} inside at its end.";

    public string PutOn(AddedPart added) =>
        $"Put on {added.Name}; the tube must be {sizes.Tape(added.Adds)} longer with it than without.";

    public static string InsideOf(IEnumerable<TubePart> parts) =>
        $"inside of {string.Join(" and ", parts.Select(part => part.Name))}";

    public static string EndOf(TubePart part) => $"end of {part.Name}";

    public static string CutOf(TubePart part) => $"cut of {part.Name}";

    public string Within(Length plusMinus) => $"± {sizes.Caliper(plusMinus)}";

    public static string WithinKelvins(double plusMinus) =>
        string.Create(CultureInfo.InvariantCulture, $"± {plusMinus:0.#} °C");
}
