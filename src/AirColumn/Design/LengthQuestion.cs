using AirColumn.Bores;
using UnitsNet;

namespace AirColumn.Design;

/// <summary>How long must these sections be for that resonance to lie there? Immutable.</summary>
public sealed record LengthQuestion
{
    private readonly int resonance = 1;
    private readonly int holesFromFarEnd;
    private readonly Length shortest = Length.FromMillimeters(0.01);
    private readonly Length longest = Length.FromMeters(100);

    /// <summary>Asks for the length of one section.</summary>
    /// <param name="section">Which section: 0 is at the blown end.</param>
    /// <param name="target">Where the resonance is wanted; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The index is negative or the frequency not above 0.</exception>
    public LengthQuestion(int section, Frequency target)
        : this([section], target) { }

    /// <summary>Asks for the length of several sections together, which are stretched in proportion.</summary>
    /// <param name="sections">Which sections: 0 is at the blown end; at least one, none twice.</param>
    /// <param name="target">Where the resonance is wanted; above 0.</param>
    /// <exception cref="ArgumentException">No section is given, or one twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An index is negative or the frequency not above 0.</exception>
    public LengthQuestion(IReadOnlyList<int> sections, Frequency target)
    {
        ArgumentNullException.ThrowIfNull(sections);
        if (sections.Count == 0 || sections.Distinct().Count() != sections.Count)
        {
            throw new ArgumentException(
                $"sections are {string.Join(", ", sections)}; give at least one, and none twice.",
                nameof(sections)
            );
        }

        foreach (var section in sections)
        {
            Require.InRange(section, 0, int.MaxValue, "", nameof(sections));
        }

        Sections = new EquatableArray<int>(sections);
        Target = target;
        Require.Positive(target.Hertz, "Hz", nameof(target));
    }

    /// <summary>The sections whose length is asked for.</summary>
    public IReadOnlyList<int> Sections { get; }

    /// <summary>The frequency at which the resonance is wanted.</summary>
    public Frequency Target { get; }

    /// <summary>Which resonance: 1, the drone, by default; 2 is the first overblown one. Up to 1000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public int Resonance
    {
        get => resonance;
        init => resonance = (int)Require.InRange(value, 1, 1000, "", nameof(Resonance));
    }

    /// <summary>The shortest length to try, of all the sections together: 0.01 mm, the default, to 100 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range or not a number.</exception>
    public Length Shortest
    {
        get => shortest;
        init => shortest = InRange(value, nameof(Shortest));
    }

    /// <summary>The longest length to try, of all the sections together: 0.01 mm to 100 m, the default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range or not a number.</exception>
    public Length Longest
    {
        get => longest;
        init => longest = InRange(value, nameof(Longest));
    }

    /// <summary>
    /// How many of the tone holes, the last ones, keep their distance from the far end, as holes do in what comes after the sections; none by
    /// default: the others and all branches keep theirs from the blown end.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public int HolesFromFarEnd
    {
        get => holesFromFarEnd;
        init => holesFromFarEnd = (int)Require.InRange(value, 0, int.MaxValue, "", nameof(HolesFromFarEnd));
    }

    private static Length InRange(Length value, string parameter)
    {
        Require.InRange(value.Millimeters, 0.01, 100_000, "mm", parameter);
        return value;
    }
}
