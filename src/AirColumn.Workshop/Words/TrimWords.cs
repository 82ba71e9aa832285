using System.Globalization;

namespace AirColumn.Workshop.Words;

/// <summary>What is to be done with a tube that was heard, in English.</summary>
internal static class TrimWords
{
    public static string MayBeSharp(double cents, double plusMinus) =>
        Text(
            $"On the average of what was heard the drone is {Cents(cents)} the note, give or take {plusMinus:0.0} (95 %): it may be sharp already. Cut no more, unless further takes show that it is flat."
        );

    public static string IsSharp(double cents, double plusMinus) =>
        Text(
            $"On the average of what was heard the drone is {Cents(cents)} the note, give or take {plusMinus:0.0} (95 %). Cut no more."
        );

    private static string Cents(double cents) =>
        Text($"{Math.Abs(cents):0.0} cents {(cents < 0 ? "below" : "above")}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
