using UnitsNet;

namespace AirColumn.Bores;

/// <summary>The shape of an air column: sections in order from the blown end, and how the far end is finished.</summary>
/// <remarks>Immutable, equal by value, safe to share between threads.</remarks>
public sealed record Bore
{
    // Diameters that differ by less than this fraction are one diameter written in two ways.
    private const double SameDiameter = 1e-9;

    private readonly EquatableArray<Section> sections;

    /// <summary>Makes a bore.</summary>
    /// <param name="sections">At least one section, from the blown end to the far end.</param>
    /// <param name="farEnd">How the far end is finished.</param>
    /// <exception cref="ArgumentException">There is no section.</exception>
    /// <exception cref="ArgumentNullException">An argument or a section is null.</exception>
    public Bore(IEnumerable<Section> sections, BoreEnd farEnd)
    {
        ArgumentNullException.ThrowIfNull(sections);
        ArgumentNullException.ThrowIfNull(farEnd);
        this.sections = new EquatableArray<Section>(sections);
        if (this.sections.Count == 0)
        {
            throw new ArgumentException("A bore has no sections; it needs at least 1.", nameof(sections));
        }

        foreach (var section in this.sections)
        {
            ArgumentNullException.ThrowIfNull(section, nameof(sections));
        }

        FarEnd = farEnd;
    }

    /// <summary>The sections, from the blown end to the far end.</summary>
    public IReadOnlyList<Section> Sections => sections;

    /// <summary>How the far end is finished.</summary>
    public BoreEnd FarEnd { get; }

    /// <summary>Length along the axis of all sections together.</summary>
    public Length Length => Dimension.InMillimeters(LengthMetres);

    /// <summary>The places where neighbouring sections differ in diameter, from the blown end.</summary>
    public IReadOnlyList<BoreStep> Steps
    {
        get
        {
            var steps = new List<BoreStep>();
            var position = 0.0;
            for (var i = 0; i + 1 < sections.Count; i++)
            {
                position += sections[i].LengthMetres;
                if (IsStep(sections[i], sections[i + 1]))
                {
                    steps.Add(
                        new BoreStep(
                            Dimension.InMillimeters(position),
                            sections[i].OutletDiameter,
                            sections[i + 1].InletDiameter
                        )
                    );
                }
            }

            return steps;
        }
    }

    internal double LengthMetres => sections.Sum(section => section.LengthMetres);

    /// <summary>Begins a bore at its blown end.</summary>
    public static BoreBuilder Build() => BoreBuilder.Empty;

    /// <summary>This bore with one section replaced.</summary>
    /// <param name="index">Which section: 0 is at the blown end.</param>
    /// <param name="section">What takes its place.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no section of that index.</exception>
    public Bore WithSection(int index, Section section)
    {
        ArgumentNullException.ThrowIfNull(section);
        RequireIndex(index);
        return new Bore(sections.Select((old, i) => i == index ? section : old), FarEnd);
    }

    /// <summary>This bore with one section stretched or shortened along the axis.</summary>
    /// <param name="index">Which section: 0 is at the blown end.</param>
    /// <param name="length">Its new length: 1 µm to 1 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no section of that index, or the length is out of range.</exception>
    public Bore WithSectionLength(int index, Length length)
    {
        RequireIndex(index);
        return WithSection(index, sections[index].WithLength(length));
    }

    internal static bool IsStep(Section before, Section after)
    {
        var (a, b) = (before.WallAt(before.LengthMetres).Radius, after.WallAt(0).Radius);
        return Math.Abs(a - b) > SameDiameter * Math.Max(a, b);
    }

    private void RequireIndex(int index)
    {
        if (index < 0 || index >= sections.Count)
        {
            throw new ArgumentOutOfRangeException(
                nameof(index),
                index,
                $"index is {index}; this bore has {sections.Count} sections, so allowed is 0 to {sections.Count - 1}."
            );
        }
    }

    /// <summary>The sections from the blown end, and the far end, in the invariant culture.</summary>
    public override string ToString() => $"{string.Join("; ", sections)}; {FarEnd}";
}
