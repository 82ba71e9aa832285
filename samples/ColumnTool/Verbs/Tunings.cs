using AirColumn;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>Which frequency each note has: of A4, and a temperament.</summary>
internal static class Tunings
{
    private static readonly Parameter<Frequency> Reference = new(
        "reference",
        Kinds.Frequency,
        "A4, 1 to 10 000 Hz",
        "440"
    );

    private static readonly Parameter<double[]> Offsets = new(
        "temperament",
        Kinds.Listed(new NumberKind(-100, 100, "cents"), 12, 12),
        "the cents above equal temperament of the notes C, C#, D to B: 12 numbers, on the command line separated by commas",
        "equal"
    );

    public static IReadOnlyList<Parameter> Parameters { get; } = [Reference, Offsets];

    public static Tuning Of(Arguments arguments)
    {
        var temperament = arguments.Has(Offsets)
            ? arguments.Blame(Offsets, () => Temperament.FromOffsets("given", arguments.Get(Offsets)))
            : Temperament.Equal;
        return arguments.Blame(
            Reference,
            () => new Tuning(arguments.Get(Reference, Tuning.Concert.Reference), temperament)
        );
    }

    /// <summary>The nearest note; null below 1 Hz and above 100 kHz, where names of pitches end.</summary>
    public static PitchReading? Nearest(this Tuning tuning, double hertz) =>
        hertz is >= 1 and <= 100_000 ? tuning.Nearest(Frequency.FromHertz(hertz)) : null;
}
