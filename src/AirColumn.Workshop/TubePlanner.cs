using AirColumn.Acoustics;
using AirColumn.Design;
using AirColumn.Gases;
using AirColumn.Pitches;
using AirColumn.Resonances;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>Plans how long to cut the pipe of a tube.</summary>
public static class TubePlanner
{
    private const int LastResonance = 4;

    // Two semitones: more than anybody wants to trim.
    private const double VeryFlatCents = 200;

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
        private static Length AnyLength => Length.FromMeters(1);

        private readonly Frequency target = tuning.FrequencyOf(note);

        private Length QuarterWaveLength =>
            Length.FromMeters(air.SpeedOfSound.MetersPerSecond / (4 * target.Hertz));

        public TubePlan Run()
        {
            // Before any length is tried: where the engine stops answering depends on the diameters only.
            var highest = new Column(parts.BoreWith(AnyLength), air).HighestFrequency;
            if (target > highest)
            {
                return Unsolved(SolveStatus.OutOfReach, Wording.TooWide(note, target, highest));
            }

            var start = Math.Clamp(
                (QuarterWaveLength - parts.FittingsLength).Meters,
                Math.Min(QuarterWaveLength.Meters / 10, LongestPipeMetres),
                LongestPipeMetres
            );
            var column = new Column(parts.BoreWith(Length.FromMeters(start)), air);
            var solution = SectionLength.Solve(column, parts.PipeSection, target);
            if (!solution.IsSolved)
            {
                return Unsolved(solution.Status, Wording.NoLength(note, target, solution));
            }

            var flat = target * Cents.ToRatio(-options.TrimmingCents);
            var longer = SectionLength.Solve(solution.Column, parts.PipeSection, flat);
            if (longer.IsSolved)
            {
                return Solved(solution, longer.Length - solution.Length + options.MeasuringTolerance);
            }

            return Unsolved(longer.Status, Wording.NoAllowance(note, solution.Length, flat, options));
        }

        private TubePlan Solved(LengthSolution solution, Length allowance)
        {
            var firstLength = solution.Length + allowance;
            if (
                (
                    CutTo(solution.Length),
                    CutTo(Rounded.ToMillimetre(solution.Length)),
                    CutTo(Rounded.ToSixteenth(solution.Length)),
                    CutTo(Rounded.UpToMillimetre(firstLength)),
                    CutTo(InchFraction.AtLeast(firstLength).Length)
                )
                is not
                ({ } exact, { } millimetre, { } sixteenth, { } firstCut, { } firstCutInches)
            )
            {
                return Unsolved(SolveStatus.NoResonance, Wording.NoResonance(note, target));
            }

            var resonances = solution.Column.FirstResonances(LastResonance);
            IEnumerable<string> veryFlat =
                firstCut.Cents < -VeryFlatCents ? [Wording.VeryFlat(firstCut.Cents)] : [];
            return new TubePlan
            {
                Parts = parts,
                Note = note,
                Tuning = tuning,
                Air = air,
                Status = solution.Status,
                Explanation = Wording.Found(note, target, exact),
                Warnings =
                [
                    .. resonances.Warnings,
                    .. UsualPractice.Warnings(parts.BlownDiameter, note),
                    .. veryFlat,
                ],
                Exact = exact,
                WholeMillimetre = millimetre,
                WholeSixteenth = sixteenth,
                Trimming = new Trimming(
                    solution.CentsPerMillimetre,
                    options,
                    allowance,
                    firstCut,
                    firstCutInches
                ),
                QuarterWave = QuarterWave(exact),
                Overblown = [.. OverblownNote.Of(resonances, tuning)],
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
                Warnings = [.. air.Warnings, .. UsualPractice.Warnings(parts.BlownDiameter, note)],
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

        // Null where the tube shows no resonance: cut so short that it would lie beyond plane-wave theory.
        private TubeCut? CutTo(Length pipe)
        {
            var length = Length.FromMillimeters(pipe.Millimeters);
            return new Column(parts.BoreWith(length), air).FirstResonances(1) is [var first]
                ? new TubeCut(
                    length,
                    length + parts.FittingsLength,
                    first.Frequency,
                    Cents.Between(target, first.Frequency)
                )
                : null;
        }
    }
}
