using FsCheck;
using FsCheck.Fluent;

namespace AirColumn.Tests.Pitches;

/// <summary>Every pitch there is, every tuning there is, for properties.</summary>
public static class PitchArbitraries
{
    /// <summary>Every spelled pitch.</summary>
    public static IEnumerable<Pitch> All =>
        from octave in Enumerable.Range(Pitch.MinimumOctave, Pitch.MaximumOctave - Pitch.MinimumOctave + 1)
        from letter in Enum.GetValues<PitchLetter>()
        from accidental in Enum.GetValues<Accidental>()
        select new Pitch(letter, accidental, octave);

    public static Arbitrary<Pitch> Pitches() => Gen.Elements(All.ToArray()).ToArbitrary();

    /// <summary>A as far above all the others as the rules allow, and as far below.</summary>
    public static IEnumerable<Temperament> ExtremeTemperaments =>
        [
            Temperament.FromOffsets(
                "high A",
                [-100, -100, -100, -100, -100, -100, -100, -100, -100, 100, 1, -98]
            ),
            Temperament.FromOffsets("low A", [100, 100, 100, 100, 100, 100, 100, 98, -1, -100, 100, 100]),
        ];

    // Offsets within 49 cents leave each pitch above the one before it.
    public static Arbitrary<Temperament> Temperaments() =>
        Gen.OneOf(
                Between(-49, 49).ArrayOf(12).Select(offsets => Temperament.FromOffsets("any", offsets)),
                Gen.Elements(ExtremeTemperaments.ToArray())
            )
            .ToArbitrary();

    public static Arbitrary<Tuning> Tunings() =>
        (
            from reference in Frequencies(1, 10_000)
            from temperament in Temperaments().Generator
            select new Tuning(UnitsNet.Frequency.FromHertz(reference), temperament)
        ).ToArbitrary();

    /// <summary>Numbers in a range, its ends among them.</summary>
    public static Gen<double> Between(double min, double max) =>
        Gen.Choose(0, 1_000_000).Select(i => min + ((max - min) * (i / 1e6)));

    /// <summary>Frequencies in hertz, every octave of the range as likely as another, its ends among them.</summary>
    public static Gen<double> Frequencies(double min, double max) =>
        Between(0, 1).Select(t => Math.Clamp(min * Math.Pow(max / min, t), min, max));
}
