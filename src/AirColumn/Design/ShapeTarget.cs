using System.Globalization;
using UnitsNet;

namespace AirColumn;

/// <summary>A target of a search for a shape. Immutable, equal by value.</summary>
public sealed record ShapeTarget
{
    private readonly double weight = 1;

    private ShapeTarget(ShapeTargetKind kind, int first, int second, double value)
    {
        (Kind, First, Second, Value) = (kind, first, second, value);
    }

    /// <summary>
    /// The weight of its error against the errors of other targets: 0.001 to 1000, 1 by default. Errors are in cents, tenths of a decibel or
    /// tenths of a millimetre.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The weight is out of range or not a number.</exception>
    public double Weight
    {
        get => weight;
        init => weight = Require.InRange(value, 1e-3, 1e3, "", nameof(Weight));
    }

    /// <summary>The fingering for which the target holds; null for the fingering of the column.</summary>
    public Fingering? Fingering { get; init; }

    internal ShapeTargetKind Kind { get; }

    // Numbers of resonances or of sections, counted as the factories say.
    internal int First { get; }

    internal int Second { get; }

    // Hz, cents, ln of Pa·s/m³ or m.
    internal double Value { get; }

    /// <summary>The highest resonance that it asks for; 0 if it asks for none.</summary>
    internal int HighestResonance =>
        Kind switch
        {
            ShapeTargetKind.Resonance or ShapeTargetKind.Level => First,
            ShapeTargetKind.Interval => Math.Max(First, Second),
            _ => 0,
        };

    /// <summary>What its error is in.</summary>
    internal string ErrorUnit =>
        Kind switch
        {
            ShapeTargetKind.Resonance or ShapeTargetKind.Interval => "cents",
            ShapeTargetKind.Level => "tenths of a decibel",
            _ => "tenths of a millimetre",
        };

    /// <summary>A resonance has a given frequency.</summary>
    /// <param name="number">The number of the resonance: 1 is the lowest; up to 1000.</param>
    /// <param name="frequency">The frequency.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static ShapeTarget Resonance(int number, Frequency frequency) =>
        new(
            ShapeTargetKind.Resonance,
            Number(number, nameof(number)),
            0,
            Require.Positive(frequency.Hertz, "Hz", nameof(frequency))
        );

    /// <summary>A resonance is a given interval above another.</summary>
    /// <param name="lower">The number of the lower resonance: 1 is the lowest; up to 1000.</param>
    /// <param name="upper">The number of the upper resonance.</param>
    /// <param name="cents">The interval: 0 to 12 000 cents.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, or the upper number is not above the lower.</exception>
    public static ShapeTarget Interval(int lower, int upper, double cents) =>
        new(
            ShapeTargetKind.Interval,
            Number(lower, nameof(lower)),
            (int)Require.InRange(upper, lower + 1, 1000, "", nameof(upper)),
            Require.InRange(cents, 0, 12_000, "cents")
        );

    /// <summary>|Z| has a given value at a resonance.</summary>
    /// <param name="number">The number of the resonance: 1 is the lowest; up to 1000.</param>
    /// <param name="magnitude">|Z| there, Pa·s/m³; above 0.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static ShapeTarget Level(int number, double magnitude) =>
        new(
            ShapeTargetKind.Level,
            Number(number, nameof(number)),
            0,
            Math.Log(Require.Positive(magnitude, "Pa·s/m³", nameof(magnitude)))
        );

    /// <summary>All sections together have a given length.</summary>
    /// <param name="length">The length; above 0.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is not above 0.</exception>
    public static ShapeTarget TotalLength(Length length) =>
        new(ShapeTargetKind.TotalLength, 0, 0, Require.Positive(length.Meters, "m", nameof(length)));

    /// <summary>
    /// The bore narrows nowhere from one section to another, both sections included. The diameters at joints and ends are compared, not the
    /// walls within a section.
    /// </summary>
    /// <param name="first">The first section: 0 is at the blown end.</param>
    /// <param name="last">The last section; not before the first.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static ShapeTarget Widening(int first, int last) =>
        new(
            ShapeTargetKind.Widening,
            (int)Require.InRange(first, 0, 100_000, "", nameof(first)),
            (int)Require.InRange(last, first, 100_000, "", nameof(last)),
            0
        );

    private static int Number(int number, string parameter) =>
        (int)Require.InRange(number, 1, 1000, "", parameter);

    /// <summary>The target in words, in the invariant culture.</summary>
    /// <returns>The target, as text.</returns>
    public override string ToString() =>
        Kind switch
        {
            ShapeTargetKind.Resonance => $"{Wording.Ordinal(First)} resonance on {Show("0.###")} Hz",
            ShapeTargetKind.Interval =>
                $"{Wording.Ordinal(Second)} resonance {Show("0.#")} cents above the {Wording.Ordinal(First)}",
            ShapeTargetKind.Level =>
                $"|Z| of {Require.Show(Math.Exp(Value), "Pa·s/m³")} at the {Wording.Ordinal(First)} resonance",
            ShapeTargetKind.TotalLength => $"{Require.Show(Math.Round(Value * 1000, 3), "mm")} long",
            _ => $"nowhere narrowing from section {First + 1} to {Second + 1}",
        } + (Fingering is null ? "" : $" with {Fingering}");

    private string Show(string format) => Value.ToString(format, CultureInfo.InvariantCulture);
}

/// <summary>What is asked of a shape.</summary>
internal enum ShapeTargetKind
{
    /// <summary>A resonance on a frequency.</summary>
    Resonance,

    /// <summary>An interval between two.</summary>
    Interval,

    /// <summary>|Z| at a resonance.</summary>
    Level,

    /// <summary>A length in all.</summary>
    TotalLength,

    /// <summary>No narrowing.</summary>
    Widening,
}
