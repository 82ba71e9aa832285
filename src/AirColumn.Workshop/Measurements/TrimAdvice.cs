using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Measurements;

/// <summary>Advice on trimming or lengthening a tube, from the notes heard of it. Immutable.</summary>
/// <remarks>
/// The difference between the heard note and the computed resonance has two parts: the player's correction and the error of this tube. Both
/// parts stay the same when the tube is cut. They are estimated together: the prior is the usual correction, widened by the tolerances of the
/// tube.
/// </remarks>
public sealed record TrimAdvice
{
    /// <summary>The largest distance from the resonance at which a note is taken as the drone of this tube, cents.</summary>
    public const double FarthestHeard = 150;

    // How far one player's note varies from one take to the next, cents: a choice.
    private const double OneTake = 5;

    // What takes of one day share and the next day does not, cents: a degree of the room is three.
    private const double OneDay = 3;

    // Of a ring pushed into the end: wide enough to hold.
    private static readonly Length RingLength = Length.FromMillimeters(20);

    private TrimAdvice() { }

    /// <summary>The tube as it is.</summary>
    public required AssembledTube Tube { get; init; }

    /// <summary>The column of the tube.</summary>
    public required Column Column { get; init; }

    /// <summary>The first resonance of the tube.</summary>
    public required Resonance Resonance { get; init; }

    /// <summary>
    /// For each measurement, the note heard minus the resonance of the tube as it then was, in the air of the measurement, cents.
    /// </summary>
    public required IReadOnlyList<double> DifferencesCents { get; init; }

    /// <summary>Played note minus resonance on average, after all measurements.</summary>
    public required PlayingCorrection Correction { get; init; }

    /// <summary>
    /// Played note minus resonance for the next take: the average, with the variation between takes and between days added.
    /// </summary>
    public required PlayingCorrection NextTake { get; init; }

    /// <summary>The drone after each cut, and how far to cut before listening again.</summary>
    public required TrimTable Table { get; init; }

    /// <summary>The advice in a sentence or two, with lengths in millimetres and inches.</summary>
    public string Verdict => VerdictIn(LengthUnits.Both);

    /// <summary>The advice in a sentence or two.</summary>
    /// <param name="units">The units in which lengths are written; the length in each unit is rounded down from the exact one.</param>
    /// <returns>The sentences.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public string VerdictIn(LengthUnits units)
    {
        Require.Named(units);
        var (cents, plusMinus) = (Table.Rows[0].Cents, Table.Rows[0].PlusMinusCents);
        return (Table.SafeCut, cents + plusMinus > 0) switch
        {
            ({ } safe, _) => TrimWords.CutTo(safe.Cut, safe.Cents, safe.PlusMinusCents, units),
            (_, false) => TrimWords.NoCut,
            _ when DifferencesCents.Count == 0 => TrimWords.Uncut(cents, plusMinus),
            _ => cents > plusMinus
                ? TrimWords.IsSharp(cents, plusMinus)
                : TrimWords.MayBeSharp(cents, plusMinus),
        };
    }

    /// <summary>
    /// The note to trim to while the joints are dry; null if no socket holds its pipe out, or if the tube was last heard with its joints home.
    /// All other members are for the tube with its joints home.
    /// </summary>
    public required DryTuning? Dry { get; init; }

    /// <summary>The differences that dry joints make, in a few sentences; null if dry joints make none.</summary>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The sentences, or null.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public string? DryNoteIn(LengthUnits units) =>
        Dry is { } dry ? new DryWords(new Sizes(Require.Named(units))).Tuning(dry) : null;

    /// <summary>The length of the pipe taken up by the parts pushed into it or formed from it.</summary>
    public required Length Hidden { get; init; }

    /// <summary>Ways to lower a tube whose drone is expected above the note; null for any other tube.</summary>
    public required Lengthening? Lengthening { get; init; }

    /// <summary>The length of the pipe after the safe cut; null if there is no safe cut.</summary>
    public Length? SafePipe =>
        Table.SafeCut is { } safe
            ? Length.FromMillimeters(safe.Length.Millimeters + Hidden.Millimeters)
            : null;

    /// <summary>Advises.</summary>
    /// <param name="assembly">The parts, one pipe of open length among them.</param>
    /// <param name="target">The wanted frequency of the drone.</param>
    /// <param name="cut">The present length of the open pipe.</param>
    /// <param name="air">The air in the room in which it is to be in tune.</param>
    /// <param name="heard">The measurements of this tube, at this cut and longer ones; may be empty.</param>
    /// <param name="prior">The correction before any measurement. Default: <see cref="PlayingCorrection.LipsInRoomAir"/>.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The advice.</returns>
    /// <exception cref="ArgumentException">
    /// All pipes have a length; the tube shows no resonance; a note heard is more than <see cref="FarthestHeard"/> from the resonance.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A length or the target is out of range.</exception>
    public static TrimAdvice For(
        TubeAssembly assembly,
        Frequency target,
        Length cut,
        Air air,
        IReadOnlyList<TubeMeasurement> heard,
        PlayingCorrection? prior = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(air);
        ArgumentNullException.ThrowIfNull(heard);
        if (assembly.FreePipe is null)
        {
            throw new ArgumentException(
                "All pipes of the parts file have a length; leave the one to trim open.",
                nameof(assembly)
            );
        }

        var (tube, column, first) = Made(assembly, cut, air, cancellationToken);
        var tolerances = TubeBuilder.Tolerances(tube, air, new BuildOptions());
        var fit = assembly.Dry;
        var differences = heard
            .Select((one, i) => Difference(assembly, fit, one, i, cancellationToken))
            .ToList();
        // What was measured last of the joints is what is known of them.
        var computed = fit?.Tuning(cut, air, target, cancellationToken);
        var known = heard.LastOrDefault(IsMeasuredDry) is { } last
            ? fit?.Measured(last.StopsShort!.Value).Tuning(cut, air, target, cancellationToken)
            : computed;
        var correction = prior ?? PlayingCorrection.LipsInRoomAir;
        if (differences.Count > 0)
        {
            var ofTube = column
                .Budgets([first], tolerances, cancellationToken: cancellationToken)[0]
                .StandardDeviationCents;
            correction = new PlayingCorrection(
                correction.MeanCents,
                double.Hypot(correction.StandardDeviationCents, ofTube)
            );
            correction = Learned(correction, heard, differences, computed, known);
        }

        // What is not known yet holds the player's takes already.
        var nextTake =
            differences.Count == 0
                ? correction
                : new PlayingCorrection(
                    correction.MeanCents,
                    double.Hypot(correction.StandardDeviationCents, double.Hypot(OneTake, OneDay))
                );
        var table = TrimTable.For(
            column,
            new TrimQuestion(tube.FreeSection, target)
            {
                Step = Length.FromMillimeters(2),
                HolesFromFarEnd = tube.HolesFromFarEnd,
                Correction = nextTake,
                // What was heard was heard on this very tube: that is in the correction.
                Tolerances = differences.Count == 0 ? tolerances : [],
            },
            cancellationToken
        );
        return new TrimAdvice
        {
            Tube = tube,
            Column = column,
            Resonance = first,
            DifferencesCents = differences,
            Correction = correction,
            NextTake = nextTake,
            Table = table,
            Dry = heard is [.., { Joints: JointState.Home }] ? null : known,
            Hidden = tube.FreeCut!.Hidden,
            Lengthening =
                table.Rows[0].Cents > 0
                    ? Lengthening.For(
                        tube,
                        column,
                        target * Cents.ToRatio(-correction.MeanCents),
                        RingLength,
                        cancellationToken
                    )
                    : null,
        };
    }

    private static (AssembledTube Tube, Column Column, Resonance First) Made(
        TubeAssembly assembly,
        Length cut,
        Air air,
        CancellationToken cancellationToken
    )
    {
        var tube = assembly.Assemble(cut);
        var column = TubeBuilder.ColumnOf(tube, air);
        return column.FirstResonances(1, cancellationToken) is [var first]
            ? (tube, column, first)
            : throw new ArgumentException(
                "The tube shows no first resonance, so there is nothing to trim.",
                nameof(cut)
            );
    }

    private static bool IsMeasuredDry(TubeMeasurement one) =>
        one is { Joints: JointState.Dry, StopsShort: not null };

    // Takes at home, and dry ones whose joints were measured, err by themselves. All other dry ones err together by what the joints
    // are off, so that they count as one, the mean of them.
    private static PlayingCorrection Learned(
        PlayingCorrection correction,
        IReadOnlyList<TubeMeasurement> heard,
        List<double> differences,
        DryTuning? computed,
        DryTuning? known
    )
    {
        var (weights, sum) = (0.0, 0.0);
        for (var i = 0; i < heard.Count; i++)
        {
            var take = double.Hypot(OneTake, heard[i].StandardUncertaintyCents);
            if (computed is not null && heard[i] is { Joints: JointState.Dry, StopsShort: null })
            {
                weights += 1 / (take * take);
                sum += differences[i] / (take * take);
            }
            else
            {
                var joints = IsMeasuredDry(heard[i]) ? known?.StandardDeviationCents ?? 0 : 0;
                correction = correction.After([differences[i]], double.Hypot(take, joints));
            }
        }

        return weights > 0
            ? correction.After(
                [sum / weights],
                double.Hypot(Math.Sqrt(1 / weights), computed!.StandardDeviationCents)
            )
            : correction;
    }

    // The tube that was heard, with its joints as they were.
    private static TubeAssembly AsHeard(TubeAssembly assembly, DryFit? dry, TubeMeasurement heard) =>
        (heard.Joints, dry, heard.StopsShort) switch
        {
            (JointState.Home, _, _) or (_, null, _) => assembly,
            (_, _, { } measured) => dry.Measured(measured).Tube,
            _ => dry.Tube,
        };

    private static double Difference(
        TubeAssembly assembly,
        DryFit? dry,
        TubeMeasurement heard,
        int index,
        CancellationToken cancellationToken
    )
    {
        Resonance first;
        try
        {
            first = Made(AsHeard(assembly, dry, heard), heard.Cut, heard.Air, cancellationToken).First;
        }
        catch (ArgumentException problem)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"taken[{index}] was heard at a cut of {heard.Cut.Millimeters:0.#} mm, which these parts do not allow: "
                ) + PartsObject.Plain(problem),
                nameof(heard),
                problem
            );
        }

        var cents = Cents.Between(first.Frequency, heard.Heard);
        return Math.Abs(cents) <= FarthestHeard
            ? cents
            : throw new ArgumentException(
                FormattableString.Invariant(
                    $"taken[{index}] is {heard.Heard.Hertz:0.##} Hz, {Math.Abs(cents):0} cents from the first resonance of this tube, {first.Frequency.Hertz:0.##} Hz; "
                ) + "that is not its drone. Check the note, the cut and the parts.",
                nameof(heard)
            );
    }
}
