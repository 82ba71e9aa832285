using UnitsNet;

namespace AirColumn;

/// <summary>A question for the length of sections that puts a resonance on a frequency. Immutable.</summary>
public sealed record LengthQuestion
{
    private readonly int resonance = 1;
    private readonly int holesFromFarEnd;
    private readonly Length shortest = Length.FromMillimeters(0.01);
    private readonly Length longest = Length.FromMeters(100);

    /// <summary>Asks for the length of one section.</summary>
    /// <param name="section">The index of the section: 0 is at the blown end.</param>
    /// <param name="target">The wanted frequency of the resonance; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The index is negative or the frequency not above 0.</exception>
    public LengthQuestion(int section, Frequency target)
        : this([section], target) { }

    /// <summary>Asks for the length of several sections together, which are stretched in proportion.</summary>
    /// <param name="sections">The indices of the sections: 0 is at the blown end; at least one, none twice.</param>
    /// <param name="target">The wanted frequency of the resonance; above 0.</param>
    /// <exception cref="ArgumentException">No section is given, or one is given twice.</exception>
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

    /// <summary>The number of the resonance, up to 1000. Default: 1, the drone; 2 is the first overblown note.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public int Resonance
    {
        get => resonance;
        init => resonance = (int)Require.InRange(value, 1, 1000, "", nameof(Resonance));
    }

    /// <summary>The shortest length to try, for all the sections together: 0.01 mm to 100 m. Default: 0.01 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range or not a number.</exception>
    public Length Shortest
    {
        get => shortest;
        init => shortest = InRange(value, nameof(Shortest));
    }

    /// <summary>The longest length to try, for all the sections together: 0.01 mm to 100 m. Default: 100 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range or not a number.</exception>
    public Length Longest
    {
        get => longest;
        init => longest = InRange(value, nameof(Longest));
    }

    /// <summary>
    /// The number of tone holes, counted from the far end, that keep their distance from the far end, such as holes behind the sections. Default:
    /// 0. All other holes and all branches keep their distance from the blown end.
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
