using AirColumn.Acoustics;
using AirColumn.Design;
using AirColumn.Gases;
using AirColumn.Pitches;
using AirColumn.Resonances;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>Plans how long to cut the pipe of a tube.</summary>
public static class TubePlanner
{
    private const int LastResonance = 4;

    // SectionLength tries no longer ones either.
    private const double LongestPipeMetres = 100;

    /// <summary>The pipe length that puts the first resonance on a note, and what a maker wants to know around it.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="note">The note.</param>
    /// <param name="tuning">The tuning that gives the note its frequency.</param>
    /// <param name="air">The air in the tube.</param>
    /// <param name="options">Trimming and tolerance; the usual ones if left out.</param>
    /// <returns>The plan; where no length fits it says so and why.</returns>
    /// <exception cref="ArgumentNullException">The parts, the tuning or the air is null.</exception>
    public static TubePlan Plan(
        TubeParts parts,
        Pitch note,
        Tuning tuning,
        Air air,
        TubePlanOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(tuning);
        ArgumentNullException.ThrowIfNull(air);
        return new Planning(parts, note, tuning, air, options ?? new TubePlanOptions()).Run();
    }

    private sealed class Planning(
        TubeParts parts,
        Pitch note,
        Tuning tuning,
        Air air,
        TubePlanOptions options
    )
    {
        private readonly Frequency target = tuning.FrequencyOf(note);

        private Length QuarterWaveLength =>
            Length.FromMeters(air.SpeedOfSound.MetersPerSecond / (4 * target.Hertz));

        public TubePlan Run()
        {
            var start = Math.Clamp(
                (QuarterWaveLength - parts.FittingsLength).Meters,
                Math.Min(QuarterWaveLength.Meters / 10, LongestPipeMetres),
                LongestPipeMetres
            );
            var column = new Column(parts.BoreWith(Length.FromMeters(start)), air);
            if (target > column.CutOn)
            {
                return Unsolved(SolveStatus.OutOfReach, Wording.TooWide(note, target, column.CutOn));
            }

            var solution = SectionLength.Solve(column, parts.PipeSection, target);
            if (!solution.IsSolved)
            {
                return Unsolved(solution.Status, Wording.NoLength(note, target, solution));
            }

            var flat = target * Cents.ToRatio(-options.TrimmingCents);
            var longer = SectionLength.Solve(solution.Column, parts.PipeSection, flat);
            return longer.IsSolved
                ? Solved(solution, longer.Length - solution.Length + options.MeasuringTolerance)
                : Unsolved(longer.Status, Wording.NoLength(note, flat, longer));
        }

        private TubePlan Solved(LengthSolution solution, Length allowance)
        {
            var exact = CutTo(solution.Length);
            var firstCut = exact.PipeLength + allowance;
            var resonances = solution.Column.FirstResonances(LastResonance);
            return new TubePlan
            {
                Parts = parts,
                Note = note,
                Tuning = tuning,
                Air = air,
                Status = solution.Status,
                Explanation = Wording.Found(note, target, exact),
                Warnings = [.. resonances.Warnings, .. UsualPractice.Warnings(parts, note)],
                Exact = exact,
                WholeMillimetre = CutTo(Rounded.ToMillimetre(exact.PipeLength)),
                WholeSixteenth = CutTo(Rounded.ToSixteenth(exact.PipeLength)),
                Trimming = new Trimming(
                    solution.CentsPerMillimetre,
                    options,
                    allowance,
                    CutTo(Rounded.UpToMillimetre(firstCut)),
                    CutTo(InchFraction.AtLeast(firstCut).Length)
                ),
                QuarterWave = QuarterWave(exact),
                Overblown =
                [
                    .. resonances.Skip(1).Select((found, i) => Overblown(i + 2, found, resonances[0])),
                ],
            };
        }

        private TubePlan Unsolved(SolveStatus status, string explanation) =>
            new()
            {
                Parts = parts,
                Note = note,
                Tuning = tuning,
                Air = air,
                Status = status,
                Explanation = explanation,
                Warnings = [.. air.Warnings, .. UsualPractice.Warnings(parts, note)],
            };

        private QuarterWaveRule QuarterWave(TubeCut exact)
        {
            var pipe = QuarterWaveLength - parts.FittingsLength;
            return new QuarterWaveRule(
                QuarterWaveLength,
                QuarterWaveLength - exact.TotalLength,
                pipe >= Rounded.Shortest ? CutTo(pipe) : null
            );
        }

        private OverblownNote Overblown(int number, Resonance found, Resonance first) =>
            new(
                number,
                found.Frequency,
                found.Nearest(tuning),
                Cents.Between(first.Frequency, found.Frequency)
            );

        // Near a length that was solved for, a first resonance exists.
        private TubeCut CutTo(Length pipe)
        {
            var length = Length.FromMillimeters(pipe.Millimeters);
            var first = new Column(parts.BoreWith(length), air).FirstResonances(1)[0];
            return new TubeCut(
                length,
                length + parts.FittingsLength,
                first.Frequency,
                Cents.Between(target, first.Frequency)
            );
        }
    }
}
