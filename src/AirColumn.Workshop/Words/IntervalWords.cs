using System.Globalization;

namespace AirColumn.Workshop.Words;

/// <summary>Intervals in words, in English.</summary>
internal static class IntervalWords
{
    // By semitones, as far as players give them names of their own.
    private static readonly string[] Named =
    [
        "unison",
        "minor second",
        "major second",
        "minor third",
        "major third",
        "fourth",
        "tritone",
        "fifth",
        "minor sixth",
        "major sixth",
        "minor seventh",
        "major seventh",
        "octave",
        "minor ninth",
        "major ninth",
        "minor tenth",
        "major tenth",
        "eleventh",
        "octave + tritone",
        "twelfth",
    ];

    /// <summary>The nearest interval in whole semitones: "twelfth", "2 octaves + major third".</summary>
    /// <param name="cents">0 or more.</param>
    public static string Nearest(double cents)
    {
        var semitones = (int)Math.Round(cents / 100);
        if (semitones < Named.Length)
        {
            return Named[semitones];
        }

        var (octaves, rest) = int.DivRem(semitones, 12);
        var whole =
            octaves == 1 ? "octave" : string.Create(CultureInfo.InvariantCulture, $"{octaves} octaves");
        return rest == 0 ? whole : $"{whole} + {Named[rest]}";
    }
}
