using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>What makers usually build (common practice; no formal source), to warn outside of it.</summary>
internal static class UsualPractice
{
    private const int NarrowestMouth = 25;
    private const int WidestMouth = 40;

    private static Pitch Lowest => new(PitchLetter.B, 1);

    private static Pitch Highest => new(PitchLetter.F, 2);

    public static IEnumerable<string> Warnings(Length mouth, Pitch note, Sizes sizes)
    {
        if (mouth.Millimeters is < NarrowestMouth or > WidestMouth)
        {
            yield return $"The blown end is {sizes.Caliper(mouth)} inside; {sizes.Between(NarrowestMouth, WidestMouth)} is usual and {sizes.Between(28, 32)} suits "
                + "most players. Too wide gives no drone, too narrow an unsteady one.";
        }

        if (note < Lowest || note > Highest)
        {
            yield return $"{note} is outside the usual range of drone tubes, {Lowest} to {Highest}.";
        }
    }
}
