using System.Globalization;
using UnitsNet;

namespace AirColumn;

/// <summary>A tube with a section that can be drawn out, and the notes it reaches.</summary>
public sealed record SlidingTube
{
    private SlidingTube(Frequency lowest, Frequency highest, IReadOnlyList<SlidePosition> positions)
    {
        (Lowest, Highest, Positions) = (lowest, highest, positions);
    }

    /// <summary>The drone when the section is drawn out all the way.</summary>
    public Frequency Lowest { get; }

    /// <summary>The drone when the section is pushed in all the way.</summary>
    public Frequency Highest { get; }

    /// <summary>The position of the slide for each note of the range, from the lowest.</summary>
    public IReadOnlyList<SlidePosition> Positions { get; }

    /// <summary>Finds the range and the position of each note.</summary>
    /// <param name="column">The tube. Two telescoping tubes are two sections; the wider one is drawn out.</param>
    /// <param name="section">The index of the section that is drawn out: 0 is at the blown end.</param>
    /// <param name="pushedIn">The length of that section when pushed in all the way: 0.01 mm or more.</param>
    /// <param name="drawnOut">
    /// The length of that section when drawn out all the way: more than <paramref name="pushedIn"/>, up to 100 m.
    /// </param>
    /// <param name="tuning">The tuning that gives the notes.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The sliding tube with its positions.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section, or a length is out of range.</exception>
    /// <exception cref="ArgumentException">
    /// <paramref name="drawnOut"/> is not above <paramref name="pushedIn"/>, the tube shows no resonance, or a hole lies beyond the tube.
    /// </exception>
    public static SlidingTube Of(
        Column column,
        int section,
        Length pushedIn,
        Length drawnOut,
        Tuning tuning,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(tuning);
        Require.InRange(section, 0, column.Bore.Sections.Count - 1, "");
        Require.InRange(pushedIn.Millimeters, 0.01, 100_000, "mm", nameof(pushedIn));
        Require.InRange(drawnOut.Millimeters, 0.01, 100_000, "mm", nameof(drawnOut));
        if (!(drawnOut > pushedIn))
        {
            throw new ArgumentException(
                $"drawnOut is {Require.Show(drawnOut.Millimeters, "mm")} and pushedIn {Require.Show(pushedIn.Millimeters, "mm")}; "
                    + "drawn out the section must be longer.",
                nameof(drawnOut)
            );
        }

        var pushed = column.Bore.LengthMetres - column.Bore.Sections[section].LengthMetres + pushedIn.Meters;
        if (column.Bore.LastOpeningMetres > pushed)
        {
            throw new ArgumentException(
                $"pushedIn is {Require.Show(pushedIn.Millimeters, "mm")}, and a hole or branch, which keeps its distance from the blown end, "
                    + "would lie beyond the tube then; a sliding section must come after the last of them.",
                nameof(pushedIn)
            );
        }

        var (lowest, highest) = (At(drawnOut), At(pushedIn));
        var positions = new List<SlidePosition>();
        var number = tuning.Nearest(lowest).Pitch.Number;
        for (; Of(number) <= highest; number++)
        {
            if (Of(number) < lowest)
            {
                continue;
            }

            var pitch = Pitch.FromNumber(number);
            var solution = SectionLength.Solve(
                column,
                new LengthQuestion(section, tuning.FrequencyOf(pitch))
                {
                    Shortest = pushedIn,
                    Longest = drawnOut,
                },
                cancellationToken
            );
            if (solution.IsSolved)
            {
                positions.Add(
                    new SlidePosition(pitch, solution.Length - pushedIn, solution.CentsPerMillimetre)
                );
            }
        }

        return new SlidingTube(lowest, highest, positions);

        Frequency Of(int pitch) => tuning.FrequencyOf(Pitch.FromNumber(pitch));

        Frequency At(Length length) =>
            column
                .WithBore(column.Bore.WithSectionLength(section, length))
                .FirstResonances(1, cancellationToken)
                is [var first]
                ? first.Frequency
                : throw new ArgumentException(
                    $"With the section {Require.Show(length.Millimeters, "mm")} long the tube shows no first resonance.",
                    nameof(column)
                );
    }
}

/// <summary>The place of a note on a slide.</summary>
/// <param name="Note">The note.</param>
/// <param name="DrawnOut">The distance by which the section is drawn out beyond its shortest length.</param>
/// <param name="CentsPerMillimetre">Change of the note in cents for each millimetre that the slide is drawn out: negative.</param>
public readonly record struct SlidePosition(Pitch Note, Length DrawnOut, double CentsPerMillimetre)
{
    /// <summary>The note and its place, in the invariant culture.</summary>
    /// <returns>Note and place, as text.</returns>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Note} drawn out {DrawnOut.Millimeters:0.0} mm, {CentsPerMillimetre:+0.0;-0.0;0.0} cents per mm"
        );
}
