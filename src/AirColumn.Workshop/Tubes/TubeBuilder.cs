using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>Plans how to cut the open pipe of an assembly.</summary>
public static class TubeBuilder
{
    private const int LastResonance = 4;
    internal const double LongestPipeMetres = 10;

    // Beyond the player's correction: no tolerances of a workshop widen its range by as much.
    private const double FlatToBegin = 250;

    /// <summary>Plans the pipe length that puts the first resonance on a note, with its uncertainty, cuts and trim table.</summary>
    /// <param name="assembly">The parts, one pipe of open length among them.</param>
    /// <param name="note">The note.</param>
    /// <param name="tuning">The tuning that gives the note its frequency.</param>
    /// <param name="air">The air in the tube.</param>
    /// <param name="options">Player, tolerances, trimming. Default: those of a new <see cref="BuildOptions"/>.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="ArgumentException">All pipes have a length.</exception>
    public static TubeBuild Plan(
        TubeAssembly assembly,
        Pitch note,
        Tuning tuning,
        Air air,
        BuildOptions? options = null,
        CancellationToken cancellationToken = default
    ) => Exact(assembly, note, tuning, air, options, null, cancellationToken).Plan(cancellationToken);

    /// <summary>
    /// The first step of a plan: the pipe length that puts the first resonance on a note, to show it before the rest is computed.
    /// </summary>
    /// <param name="assembly">The parts, one pipe of open length among them.</param>
    /// <param name="note">The note.</param>
    /// <param name="tuning">The tuning that gives the note its frequency.</param>
    /// <param name="air">The air in the tube.</param>
    /// <param name="options">Player, tolerances, trimming. Default: those of a new <see cref="BuildOptions"/>.</param>
    /// <param name="near">
    /// The answer for a similar tube, to save time: the two tubes share the computed parts that they have in common. Sharing does not change
    /// the result.
    /// </param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The cut.</returns>
    /// <exception cref="ArgumentException">All pipes have a length.</exception>
    public static ExactCut Exact(
        TubeAssembly assembly,
        Pitch note,
        Tuning tuning,
        Air air,
        BuildOptions? options = null,
        ExactCut? near = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(tuning);
        ArgumentNullException.ThrowIfNull(air);
        if (assembly.FreePipe is null)
        {
            throw new ArgumentException(
                "Every pipe has a length, so there is none to find; leave one open.",
                nameof(assembly)
            );
        }

        return new Planning(
            assembly,
            note,
            tuning,
            air,
            options ?? new BuildOptions(),
            near?.Exact?.Column
        ).Begin(cancellationToken);
    }

    /// <summary>The tube with its open pipe cut to a length, and its first resonance.</summary>
    /// <param name="assembly">The parts.</param>
    /// <param name="cut">The length to which the open pipe is cut; not used if all lengths are known.</param>
    /// <param name="air">The air in the tube.</param>
    /// <param name="target">The frequency from which <see cref="BuiltTube.Cents"/> is counted.</param>
    /// <param name="near">
    /// The column of a similar tube, to save time: the two tubes share the computed parts that they have in common. Sharing does not change
    /// the result.
    /// </param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The tube; null if it has no resonance.</returns>
    /// <exception cref="ArgumentException">The pipe is shorter than the parts pushed into it, formed from it or held in sockets.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public static BuiltTube? Built(
        TubeAssembly assembly,
        Length cut,
        Air air,
        Frequency target,
        Column? near = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(air);
        var tube = assembly.Assemble(cut);
        return Built(tube, tube.ColumnIn(air, near: near), target, cancellationToken);
    }

    private static BuiltTube? Built(
        AssembledTube tube,
        Column column,
        Frequency target,
        CancellationToken cancellationToken
    ) =>
        column.FirstResonances(1, cancellationToken) is [var first]
            ? new BuiltTube(tube, column, first.Frequency, Cents.Between(target, first.Frequency))
            : null;

    /// <summary>The column of an assembly cut to a length.</summary>
    internal static Column ColumnOf(AssembledTube tube, Air air) => tube.ColumnIn(air);

    /// <summary>
    /// The usual tolerances of a workshop. For each pipe: the tolerance of its inside diameter, shared by all parts cut or formed from it.
    /// For other diameters: 0.2 mm for an insert, 0.3 mm for a fitting, 1 mm for the end of a bell, 0.2 mm for a hole that is open in the
    /// drone. For the cut and the room: as in the options.
    /// </summary>
    /// <param name="tube">The tube.</param>
    /// <param name="air">The air in it.</param>
    /// <param name="options">The choices.</param>
    /// <returns>The tolerances.</returns>
    public static IReadOnlyList<Tolerance> Tolerances(AssembledTube tube, Air air, BuildOptions options)
    {
        ArgumentNullException.ThrowIfNull(tube);
        ArgumentNullException.ThrowIfNull(air);
        ArgumentNullException.ThrowIfNull(options);
        var tolerances = new List<Tolerance>();
        foreach (var piece in tube.SectionPieces.Distinct())
        {
            tolerances.Add(
                new(
                    tube.DiameterOf(piece),
                    tube.Assembly.Parts[piece] switch
                    {
                        PipePart pipe => pipe.InsidePlusMinus,
                        InsertPart => Length.FromMillimeters(0.2),
                        _ => Length.FromMillimeters(0.3),
                    }
                )
            );
        }

        for (var section = 0; section < tube.SectionParts.Count; section++)
        {
            if (tube.SectionParts[section] is BellPart)
            {
                tolerances.Add(new(ColumnParameter.OutletDiameter(section), Length.FromMillimeters(1)));
            }
        }

        // What a closed hole does is too small for its size to matter.
        foreach (var (i, hole) in tube.Holes.Index())
        {
            if (hole.Hole.IsOpenInDrone)
            {
                tolerances.Add(new(ColumnParameter.HoleDiameter(i), Length.FromMillimeters(0.2)));
            }
        }

        if (tube.FreeSection >= 0)
        {
            tolerances.Add(new(tube.CutParameter, options.CutTolerance));
        }

        if (air.State is not null)
        {
            tolerances.Add(Tolerance.Temperature(options.TemperatureTolerance));
        }

        return tolerances;
    }

    private sealed class Planning(
        TubeAssembly assembly,
        Pitch note,
        Tuning tuning,
        Air air,
        BuildOptions options,
        Column? near
    )
    {
        private readonly Frequency target = tuning.FrequencyOf(note);
        private Column? last; // what two tubes of one assembly have in common, the field of the mouth above all, is computed once

        public ExactCut Begin(CancellationToken cancellationToken)
        {
            var any = assembly.Assemble(Length.FromMillimeters(assembly.ShortestCut.Millimeters + 1000));
            var highest = ColumnOf(any).HighestFrequency;
            if (target > highest)
            {
                return Unreached(SolveStatus.OutOfReach, _ => Wording.TooWide(note, target, highest));
            }

            var solution = Solve(any, target, cancellationToken);
            if (!solution.IsSolved)
            {
                return Unreached(solution.Status, sizes => Wording.NoLength(note, target, solution, sizes));
            }

            var cut = Cut(any, solution);
            if (Built(cut, cancellationToken) is not { } exact)
            {
                return new ExactCut(
                    SolveStatus.NoResonance,
                    _ => Wording.NoResonance(note, target),
                    token => Rest(any, cut, solution, null, null, token)
                );
            }

            var resonances = exact.Column.FirstResonances(LastResonance, cancellationToken);
            return new ExactCut(
                SolveStatus.Solved,
                sizes => Wording.Cut(note, target, exact, sizes),
                token => Rest(any, cut, solution, exact, resonances, token)
            )
            {
                Exact = exact,
                CentsPerMillimetre = solution.CentsPerMillimetre,
                Resonances = resonances,
                Overblown = [.. OverblownNote.Of(resonances, tuning)],
            };
        }

        private ExactCut Unreached(SolveStatus status, Func<Sizes, string> explaining) =>
            new(status, explaining, _ => Unsolved(status, explaining));

        private TubeBuild Rest(
            AssembledTube any,
            Length cut,
            LengthSolution solution,
            BuiltTube? exact,
            ResonanceList? resonances,
            CancellationToken cancellationToken
        )
        {
            var player = options.Correction;
            var flat = Math.Max(0, player.MeanCents) + 3 * player.StandardDeviationCents + FlatToBegin;
            var longer = Longer(cut, exact, flat);
            if (longer is null)
            {
                // Near the longest that is tried, exactly.
                var first = Solve(any, target * Cents.ToRatio(-flat), cancellationToken);
                if (!first.IsSolved)
                {
                    return Unsolved(first.Status, sizes => Wording.NoFirstCut(note, cut, sizes));
                }

                longer = Cut(any, first);
            }

            if (
                exact is null
                || resonances is null
                || Built(AtLeastShortest(Rounded.ToMillimetre(cut)), cancellationToken) is not { } millimetre
                || Built(AtLeastShortest(Rounded.ToSixteenth(cut)), cancellationToken) is not { } sixteenth
                || TrimFrom(longer.Value, options.TrimStep, cancellationToken, 2).SafeCut is not { } safe
            )
            {
                return Unsolved(SolveStatus.NoResonance, _ => Wording.NoResonance(note, target));
            }

            var length = SawLength.Computed(
                Length.FromMillimeters(safe.Length.Millimeters + any.FreeCut!.Hidden.Millimeters)
            );
            return
                Built(length.Millimetres, cancellationToken) is { } firstCut
                && Built(length.Inches.Length, cancellationToken) is { } firstCutInches
                ? Solved(
                    solution,
                    exact,
                    resonances,
                    millimetre,
                    sixteenth,
                    length,
                    firstCut,
                    firstCutInches,
                    cancellationToken
                )
                : Unsolved(SolveStatus.NoResonance, _ => Wording.NoResonance(note, target));
        }

        // A cut that is flat enough to begin with: lengths are nearly as one over the frequency, and a tenth more does no harm.
        private static Length? Longer(Length cut, BuiltTube? exact, double flat) =>
            exact is not null
            && cut + 1.1 * (Cents.ToRatio(flat) - 1) * exact.Tube.Bore.Length is var longer
            && longer.Meters < LongestPipeMetres
                ? longer
                : null;

        private TubeBuild Solved(
            LengthSolution solution,
            BuiltTube exact,
            ResonanceList resonances,
            BuiltTube millimetre,
            BuiltTube sixteenth,
            SawLength length,
            BuiltTube firstCut,
            BuiltTube firstCutInches,
            CancellationToken cancellationToken
        )
        {
            var budget = exact.Column.Budgets(
                [resonances[0]],
                Tolerances(exact.Tube, air, options),
                cancellationToken: cancellationToken
            )[0];
            return new TubeBuild
            {
                Assembly = assembly,
                Note = note,
                Tuning = tuning,
                Air = air,
                Options = options,
                Status = SolveStatus.Solved,
                Explaining = sizes => Wording.Cut(note, target, exact, sizes),
                Warning = sizes =>
                    [
                        .. resonances.Warnings,
                        .. UsualPractice.Warnings(assembly.BlownDiameter, note, sizes),
                        .. budget.Remark is { } remark ? [remark] : Array.Empty<string>(),
                        .. assembly.Remarks.Select(remark => remark.Text),
                    ],
                Exact = exact,
                WholeMillimetre = millimetre,
                WholeSixteenth = sixteenth,
                FirstLength = length,
                FirstCut = firstCut,
                FirstCutInches = firstCutInches,
                CentsPerMillimetre = solution.CentsPerMillimetre,
                Budget = budget,
                Played = options.Correction.Of(budget),
                FindDry = token => assembly.Dry?.Tuning(exact.Cut, air, target, token),
                FindTrim = token => TrimFrom(firstCut.Cut, options.TrimStep, token),
                FindTrimInches = token =>
                    TrimFrom(firstCutInches.Cut, Rounded.ToSixteenth(options.TrimStep), token),
                Overblown = [.. OverblownNote.Of(resonances, tuning)],
                Resonances = resonances,
            };
        }

        private TubeBuild Unsolved(SolveStatus status, Func<Sizes, string> explaining) =>
            new()
            {
                Assembly = assembly,
                Note = note,
                Tuning = tuning,
                Air = air,
                Options = options,
                Status = status,
                Explaining = explaining,
                Warning = sizes =>
                    [
                        .. air.Warnings,
                        .. UsualPractice.Warnings(assembly.BlownDiameter, note, sizes),
                        .. assembly.Remarks.Select(remark => remark.Text),
                    ],
            };

        private LengthSolution Solve(
            AssembledTube tube,
            Frequency frequency,
            CancellationToken cancellationToken
        ) =>
            SectionLength.Solve(
                ColumnOf(tube),
                new LengthQuestion(tube.FreeSection, frequency)
                {
                    Shortest = Length.FromMillimeters(
                        assembly.ShortestCut.Millimeters - tube.FreeCut!.Hidden.Millimeters
                    ),
                    Longest = Length.FromMeters(LongestPipeMetres),
                    HolesFromFarEnd = tube.HolesFromFarEnd,
                },
                cancellationToken
            );

        private TrimTable TrimFrom(
            Length cut,
            Length step,
            CancellationToken cancellationToken,
            int rows = 60
        )
        {
            var there = assembly.Assemble(cut);
            return TrimTable.For(
                ColumnOf(there),
                new TrimQuestion(there.FreeSection, target)
                {
                    Step = step,
                    Rows = rows,
                    HolesFromFarEnd = there.HolesFromFarEnd,
                    Correction = options.Correction,
                    Tolerances = Tolerances(there, air, options),
                },
                cancellationToken
            );
        }

        // The cut, from the length of the straight part.
        private static Length Cut(AssembledTube tube, LengthSolution solution) =>
            Length.FromMillimeters(solution.Length.Millimeters + tube.FreeCut!.Hidden.Millimeters);

        // Rounded down a cut may fall below what its sockets hold.
        private Length AtLeastShortest(Length cut) => cut < assembly.ShortestCut ? assembly.ShortestCut : cut;

        private BuiltTube? Built(Length cut, CancellationToken cancellationToken)
        {
            var tube = assembly.Assemble(cut);
            return TubeBuilder.Built(tube, ColumnOf(tube), target, cancellationToken);
        }

        private Column ColumnOf(AssembledTube tube) =>
            last = last?.WithBore(tube.Bore) ?? tube.ColumnIn(air, near: near);
    }
}
