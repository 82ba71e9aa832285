using System.Globalization;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>What may leak, tear or not be meant, in English.</summary>
internal static class RemarkWords
{
    public static string Unconfirmed(StockPipe stock) =>
        $"The sizes of {stock.Name} ({stock.Standard}) are {(stock.Certainty == DataCertainty.Memory ? "from memory" : "in part inferred")}: measure the pipe.";

    public static string Butted(TubePart before, PipePart pipe) =>
        $"Nothing joins {Named.The(pipe)} to {Named.The(before)}: butted ends leak and come apart. Put a coupling between them.";

    public static string NoSocket(TubePart part, TubePart other) =>
        $"Between {Named.The(part)} and {Named.The(other)} there is no socket: butted ends leak and come apart. Describe the socket, or put a coupling between them.";

    public static string OneLength(TubePart first, PipePart pipe) =>
        $"{Named.Begin(pipe)} and {Named.The(first)} are assumed to be cut from one length of pipe: if one is too wide, so is the other. If they are not, measure the inside of both.";

    public static string LooseInsert(InsertPart insert, PipePart into, Length room) =>
        $"{Named.Begin(insert)}, {Wording.Size(insert.Outside)} outside, is {Wording.Size(room)} narrower than the inside of {Named.The(into)}: it leaks and falls out unless "
        + "the gap is filled all round. The air in the gap is not counted.";

    public static string LooseSocket(PipePart pipe, JoinPart join, Length room) =>
        $"{Named.Begin(pipe)} is {Wording.Size(room)} narrower than the socket of {Named.The(join)}, even at its bottom: without a sealing ring the joint leaks, and solvent cement "
        + "does not fill it.";

    public static string TurnsBack(TubePart part, double degrees) =>
        Text($"{Named.Begin(part)} turns {degrees:0.#}°, so the tube comes back to itself")
        + (degrees >= 360 ? Text($", {degrees / 360:0.#} times round") : "")
        + ": it must pass beside itself, as a coil does. If that is not meant, mend the angle.";

    public static string TightBend(BendPart bend, PipePart pipe, double diameters, Length easy) =>
        Text(
            $"{Named.Begin(bend)} is tight for a pipe {Wording.Size(pipe.Outside)} outside: it may fold or flatten, and is then no longer the bore computed. A pipe maker asks for {diameters:0} "
        )
        + $"outside diameters to the inner edge, a radius of {Wording.Millimetres(easy)} to the centreline. Support it inside, or use an elbow.";

    public static string WideBell(BellPart bell, PipePart pipe, double times) =>
        Text(
            $"{Named.Begin(bell)} makes {Named.The(pipe)} {times:0.0} times as wide: its wall becomes that much thinner at the end and may tear. Try it on a piece left over."
        );

    public static string NotFormedByHeat(TubePart formed, PipePart pipe) =>
        $"{Named.Begin(formed)} cannot be formed from {Named.The(pipe)} by heat as plastic can: it is {pipe.Stock!.Material}. Have it made by someone whose trade that is, or buy the part.";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
