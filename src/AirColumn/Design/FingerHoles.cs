using UnitsNet;

namespace AirColumn;

/// <summary>Places finger holes on a straight tube so that opening them one after the other plays a scale.</summary>
public static class FingerHoles
{
    // Of the distance to the next hole, to either side of the guess.
    private const double Freedom = 0.45;

    private static readonly int[] MajorScale = [2, 4, 5, 7, 9, 11]; // semitones above the tonic

    /// <summary>
    /// Places six holes for a major scale: the tonic with all holes closed, then each note by opening one more hole from the far end.
    /// </summary>
    /// <param name="tube">
    /// A straight tube without holes: one cylinder of any length, blown at an open end. The wall at its open far end is taken as the wall of the tube.
    /// </param>
    /// <param name="tuning">The tuning.</param>
    /// <param name="tonic">The note with all holes closed.</param>
    /// <param name="diameters">The diameters of the six holes, from the blown end.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The tube with its length and its holes, and the error of each note.</returns>
    /// <exception cref="ArgumentException">
    /// The tube is not one cylinder open at both ends, has holes, or there are not six diameters; or holes of these diameters would overlap at
    /// their expected places. If they overlap during the search, the solution states it.
    /// </exception>
    public static ShapeSolution MajorScaleOn(
        Column tube,
        Tuning tuning,
        Pitch tonic,
        IReadOnlyList<Length> diameters,
        CancellationToken cancellationToken = default
    ) => Place(tube, tuning, tonic, MajorScale, diameters, cancellationToken);

    /// <summary>Places holes for any rising scale: the tonic with all holes closed, then each note by opening one more hole from the far end.</summary>
    /// <param name="tube">A straight tube, as for <see cref="MajorScaleOn"/>.</param>
    /// <param name="tuning">The tuning.</param>
    /// <param name="tonic">The note with all holes closed.</param>
    /// <param name="semitones">For each hole, from the far end, the semitones of its note above the tonic.</param>
    /// <param name="diameters">The diameter of each hole, from the blown end.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The tube with its length and its holes, and the error of each note.</returns>
    /// <exception cref="ArgumentException">
    /// The tube is not one cylinder open at both ends, has holes, the scale does not rise, or there are not as many diameters as notes.
    /// </exception>
    public static ShapeSolution Place(
        Column tube,
        Tuning tuning,
        Pitch tonic,
        IReadOnlyList<int> semitones,
        IReadOnlyList<Length> diameters,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(tube);
        ArgumentNullException.ThrowIfNull(tuning);
        ArgumentNullException.ThrowIfNull(semitones);
        ArgumentNullException.ThrowIfNull(diameters);
        var wall = RequireStraight(tube);
        if (semitones.Count == 0 || semitones.Count != diameters.Count)
        {
            throw new ArgumentException(
                $"There are {semitones.Count} notes above the tonic and {diameters.Count} diameters; give one diameter for each note.",
                nameof(diameters)
            );
        }

        for (var i = 0; i < semitones.Count; i++)
        {
            var above = i == 0 ? 0 : semitones[i - 1];
            if (semitones[i] <= above || semitones[i] > 24)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(semitones),
                    semitones[i],
                    $"semitones are {string.Join(", ", semitones)}; each must be above the one before, from 1 to 24."
                );
            }
        }

        var lowest = tuning.FrequencyOf(tonic);
        var notes = semitones.Select(n => tuning.FrequencyOf(Pitch.FromNumber(tonic.Number + n))).ToList();
        var plain = SectionLength.Solve(tube, 0, lowest, cancellationToken);
        var holes = Guess(plain.Column, lowest, notes, diameters, wall);
        var column = plain.Column.WithBore(
            new Bore(plain.Column.Bore.Sections, plain.Column.Bore.FarEnd, holes)
        );
        return ShapeSearch.Solve(
            column,
            Variables(column),
            Targets(lowest, notes),
            cancellationToken: cancellationToken
        );
    }

    // Half a wave from the blown end, less what an opening of that size adds to either side.
    private static List<ToneHole> Guess(
        Column tube,
        Frequency lowest,
        List<Frequency> notes,
        IReadOnlyList<Length> diameters,
        Length wall
    )
    {
        var length = tube.Bore.LengthMetres;
        var bore = 2 * tube.Bore.Sections[0].WallAt(0).Radius;
        var holes = new List<ToneHole>();
        for (var i = 0; i < notes.Count; i++)
        {
            var note = notes[notes.Count - 1 - i]; // the highest first
            var shorter = tube.Air.SpeedOfSound.MetersPerSecond / 2 * (1 / lowest.Hertz - 1 / note.Hertz);
            var ratio = bore / diameters[i].Meters;
            var added = (wall.Meters + 0.75 * diameters[i].Meters) * ratio * ratio;
            // The next hole further on, or the end, lets some of that be.
            var next =
                tube.Air.SpeedOfSound.MetersPerSecond
                / 2
                * (1 / (i == notes.Count - 1 ? lowest : notes[notes.Count - 2 - i]).Hertz - 1 / note.Hertz);
            holes.Add(
                new ToneHole(
                    Length.FromMeters(length - shorter - added * next / (added + next) + 0.3 * bore),
                    diameters[i],
                    wall
                )
            );
        }

        return holes;
    }

    private static List<DesignVariable> Variables(Column column)
    {
        var places = column
            .Bore.Holes.Select(hole => hole.PositionMetres)
            .Append(column.Bore.LengthMetres)
            .ToList();
        var variables = new List<DesignVariable>
        {
            new(ColumnParameter.SectionLength(0), 0.9 * places[^1], 1.1 * places[^1]),
        };
        for (var i = 0; i < column.Bore.Holes.Count; i++)
        {
            var before = Freedom * (i == 0 ? places[1] - places[0] : places[i] - places[i - 1]);
            var after = Freedom * (places[i + 1] - places[i]);
            variables.Add(new(ColumnParameter.HolePosition(i), places[i] - before, places[i] + after));
        }

        return variables;
    }

    private static List<ShapeTarget> Targets(Frequency lowest, List<Frequency> notes)
    {
        var targets = new List<ShapeTarget>();
        for (var open = 0; open <= notes.Count; open++)
        {
            var closed = notes.Count - open;
            targets.Add(
                ShapeTarget.Resonance(1, open == 0 ? lowest : notes[open - 1]) with
                {
                    Fingering = Fingering.Of([
                        .. Enumerable.Range(0, notes.Count).Select(hole => hole >= closed),
                    ]),
                }
            );
        }

        return targets;
    }

    private static Length RequireStraight(Column tube)
    {
        var bore = tube.Bore;
        return
            bore is { Sections: [CylinderSection], FarEnd: OpenEnd end, Holes: [], Branches: [] }
            && tube.Options.BlownEnd.IsOpen
            ? end.Wall
            : throw new ArgumentException(
                $"The tube is {bore}, {tube.Options.BlownEnd}; it must be one cylinder without holes, open at both ends, with the wall at its free far end.",
                nameof(tube)
            );
    }
}
