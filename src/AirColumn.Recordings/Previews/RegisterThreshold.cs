using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>The point at which lips begin to sound.</summary>
/// <param name="Sounding">The frequency of the sound.</param>
/// <param name="Lips">The lips' own frequency.</param>
/// <param name="Mouth">The pressure in the mouth above the pressure of the room.</param>
public readonly record struct LipOnset(Frequency Sounding, Frequency Lips, Pressure Mouth);

/// <summary>The pressures and lips at which one register begins to speak. Immutable.</summary>
public sealed class RegisterThreshold
{
    internal RegisterThreshold(int number, Resonance resonance, LipOnset[] onsets)
    {
        (Number, Resonance, Onsets) = (number, resonance, onsets);
        Easiest = onsets.MinBy(onset => onset.Mouth);
    }

    /// <summary>The number of the register, from 1.</summary>
    public int Number { get; }

    /// <summary>The resonance that carries the register.</summary>
    public Resonance Resonance { get; }

    /// <summary>The onsets for lips from slack to tense, in order of the frequency that sounds.</summary>
    public IReadOnlyList<LipOnset> Onsets { get; }

    /// <summary>The onset that needs the least pressure.</summary>
    public LipOnset Easiest { get; }

    /// <summary>The distance of the easiest onset above the resonance, cents.</summary>
    public double CentsAboveResonance => Cents.Between(Resonance.Frequency, Easiest.Sounding);

    /// <summary>
    /// The width of the slot: the cents by which the note rises for each cent by which the lips are tuned higher, near the easiest onset. The
    /// smaller it is, the less the lips can bend the note. NaN if there is only one onset.
    /// </summary>
    public double CentsPerCentOfLips
    {
        get
        {
            var at = Onsets.ToList().IndexOf(Easiest);
            var (low, high) = (Onsets[Math.Max(at - 1, 0)], Onsets[Math.Min(at + 1, Onsets.Count - 1)]);
            return Cents.Between(low.Sounding, high.Sounding) / Cents.Between(low.Lips, high.Lips);
        }
    }

    /// <summary>The range of lips that begin to sound at a pressure or below it, from the slackest to the tensest; null if none do.</summary>
    /// <param name="mouth">The pressure in the mouth, above 0.</param>
    /// <returns>The lowest and the highest lip frequency, or null.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is not above 0.</exception>
    public (Frequency Slackest, Frequency Tensest)? LipsBelow(Pressure mouth)
    {
        Require.Positive(mouth.Pascals, "Pa", nameof(mouth));
        var speaking = Onsets.Where(onset => onset.Mouth <= mouth).ToList();
        return speaking.Count == 0
            ? null
            : (speaking.MinBy(onset => onset.Lips).Lips, speaking.MaxBy(onset => onset.Lips).Lips);
    }

    /// <summary>Register, threshold pressure and note, in the invariant culture.</summary>
    /// <returns>Register, pressure and note, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"register {Number}: {Easiest.Mouth.Kilopascals:0.##} kPa, {Easiest.Sounding.Hertz:0.##} Hz"
        );
}
