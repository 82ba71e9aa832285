using UnitsNet;

namespace AirColumn;

/// <summary>The target of trimming, with the tolerances and the correction for the player. Immutable.</summary>
public sealed record TrimQuestion
{
    private readonly Length step = Length.FromMillimeters(1);
    private readonly int rows = 60;
    private readonly int holesFromFarEnd;
    private readonly EquatableArray<Tolerance> tolerances = new([]);
    private readonly PlayingCorrection correction = PlayingCorrection.None;

    /// <summary>Asks how to trim a section.</summary>
    /// <param name="section">The index of the section that is cut: 0 is at the blown end.</param>
    /// <param name="target">The wanted frequency of the drone; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The index is negative or the frequency not above 0.</exception>
    public TrimQuestion(int section, Frequency target)
    {
        Section = (int)Require.InRange(section, 0, int.MaxValue, "");
        Require.Positive(target.Hertz, "Hz", nameof(target));
        Target = target;
    }

    /// <summary>The section that is cut.</summary>
    public int Section { get; }

    /// <summary>The wanted frequency of the drone.</summary>
    public Frequency Target { get; }

    /// <summary>The length cut off from one row to the next: 0.01 mm to 1 m; 1 mm by default. A sixteenth of an inch is one choice.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is out of range or not a number.</exception>
    public Length Step
    {
        get => step;
        init
        {
            Require.InRange(value.Millimeters, 0.01, 1000, "mm", nameof(Step));
            step = value;
        }
    }

    /// <summary>The largest number of rows: 2 to 10 000; 60 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public int Rows
    {
        get => rows;
        init => rows = (int)Require.InRange(value, 2, 10_000, "", nameof(Rows));
    }

    /// <summary>
    /// The number of tone holes, counted from the far end, that keep their distance from the far end. Default: 0. All other holes keep their
    /// distance from the blown end.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public int HolesFromFarEnd
    {
        get => holesFromFarEnd;
        init => holesFromFarEnd = (int)Require.InRange(value, 0, int.MaxValue, "", nameof(HolesFromFarEnd));
    }

    /// <summary>The tolerances of dimensions and air; none by default.</summary>
    public IReadOnlyList<Tolerance> Tolerances
    {
        get => tolerances;
        init =>
            tolerances = new EquatableArray<Tolerance>(
                value ?? throw new ArgumentNullException(nameof(Tolerances))
            );
    }

    /// <summary>The correction for the player. Default: none; the notes are then the resonances.</summary>
    public PlayingCorrection Correction
    {
        get => correction;
        init => correction = value ?? throw new ArgumentNullException(nameof(Correction));
    }
}
