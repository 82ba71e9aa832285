using System.Globalization;

namespace AirColumn.Workshop.Words;

/// <summary>What is said of flutes and pan pipes, in English.</summary>
internal static class InstrumentWords
{
    public const string Flute = "flute";

    public static string FarApart(int hole, string distance, string reach) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Holes {hole} and {hole + 1} are {distance} apart; more than about {reach} from finger to finger is far for many hands (our guess). Try it on a strip of paper. If it is too far, choose a higher note, or make the hole that is hard to reach smaller and nearer to the mouth."
        );
}
