using System.Diagnostics.CodeAnalysis;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>The plan for cutting the open pipe of an assembly for a note, or the reason why there is none. Immutable.</summary>
/// <remarks>
/// The exact length puts the first resonance on the note. A player sounds higher, so the first cut is longer: the played note is still below the
/// target 39 times out of 40, allowing for tolerances and the player.
/// </remarks>
public sealed class TubeBuild
{
    internal TubeBuild() { }

    /// <summary>The parts.</summary>
    public required TubeAssembly Assembly { get; init; }

    /// <summary>The note.</summary>
    public required Pitch Note { get; init; }

    /// <summary>The tuning that gives the note its frequency.</summary>
    public required Tuning Tuning { get; init; }

    /// <summary>The air in the tube.</summary>
    public required Air Air { get; init; }

    /// <summary>The options of the plan.</summary>
    public required BuildOptions Options { get; init; }

    /// <summary>The frequency of the note.</summary>
    public Frequency Target => Tuning.FrequencyOf(Note);

    /// <summary>The outcome of the search for the length.</summary>
    public required SolveStatus Status { get; init; }

    /// <summary>One sentence: the length found, or the reason why no length fits; lengths in millimetres and inches.</summary>
    public string Explanation => ExplanationIn(LengthUnits.Both);

    /// <summary>Sentences about values outside a model's range or outside usual practice; lengths in millimetres and inches.</summary>
    public IReadOnlyList<string> Warnings => WarningsIn(LengthUnits.Both);

    internal Func<Sizes, string> Explaining { get; init; } = _ => "";

    internal Func<Sizes, IEnumerable<string>> Warning { get; init; } = _ => [];

    /// <summary>The same as <see cref="Explanation"/> in other units.</summary>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The sentence.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public string ExplanationIn(LengthUnits units) => Explaining(new Sizes(Require.Named(units)));

    /// <summary>The same as <see cref="Warnings"/> in other units.</summary>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The warnings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public IReadOnlyList<string> WarningsIn(LengthUnits units) =>
        [.. Warning(new Sizes(Require.Named(units)))];

    /// <summary>True if a length fits. If it is false, the members below are null or empty.</summary>
    [MemberNotNullWhen(true, nameof(Exact), nameof(WholeMillimetre), nameof(WholeSixteenth))]
    [MemberNotNullWhen(
        true,
        nameof(FirstLength),
        nameof(FirstCut),
        nameof(FirstCutInches),
        nameof(Budget),
        nameof(Played)
    )]
    public bool IsSolved => Status == SolveStatus.Solved;

    /// <summary>The length that puts the first resonance on the note.</summary>
    public BuiltTube? Exact { get; init; }

    /// <summary>The pipe cut to the nearest whole millimetre.</summary>
    public BuiltTube? WholeMillimetre { get; init; }

    /// <summary>The pipe cut to the nearest sixteenth of an inch.</summary>
    public BuiltTube? WholeSixteenth { get; init; }

    /// <summary>The length to cut first. All texts that show it take their numbers from here.</summary>
    public SawLength? FirstLength { get; init; }

    /// <summary>The length of the first cut of each pipe, from the blown end; none if no length fits.</summary>
    public IReadOnlyList<SawnPipe> CutList =>
        FirstLength is null
            ? []
            :
            [
                .. Assembly
                    .Parts.OfType<PipePart>()
                    .Select(pipe => new SawnPipe(
                        pipe,
                        pipe.Cut is { } given ? SawLength.Given(given) : FirstLength
                    )),
            ];

    /// <summary>The length to cut first, rounded up to a whole millimetre.</summary>
    public BuiltTube? FirstCut { get; init; }

    /// <summary>The length to cut first, rounded up to a sixteenth of an inch.</summary>
    public BuiltTube? FirstCutInches { get; init; }

    /// <summary>Change of the first resonance for each millimetre of pipe added, at the exact length: negative; 0 if no length fits.</summary>
    public double CentsPerMillimetre { get; init; }

    /// <summary>The uncertainty of the first resonance, at the exact length.</summary>
    public ResonanceBudget? Budget { get; init; }

    /// <summary>The note that the player is expected to sound, at the exact length.</summary>
    public PlayedNote? Played { get; init; }

    internal Func<CancellationToken, TrimTable>? FindTrim { get; init; }

    internal Func<CancellationToken, TrimTable>? FindTrimInches { get; init; }

    internal Func<CancellationToken, DryTuning?>? FindDry { get; init; }

    /// <summary>Resonances 2 to 4 at the exact length.</summary>
    public IReadOnlyList<OverblownNote> Overblown { get; init; } = [];

    /// <summary>The first resonances, at the exact length.</summary>
    public ResonanceList? Resonances { get; init; }

    /// <summary>The trim table: the played note after each further cut, from the first cut in millimetres. Each call computes it anew.</summary>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The table; null if no length fits.</returns>
    public TrimTable? Trim(CancellationToken cancellationToken = default) =>
        FindTrim?.Invoke(cancellationToken);

    /// <summary>
    /// The trim table from the first cut in inches, in whole sixteenths: a step of 5 mm becomes 3/16 in. Each call computes it anew.
    /// </summary>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The table; null if no length fits.</returns>
    public TrimTable? TrimInches(CancellationToken cancellationToken = default) =>
        FindTrimInches?.Invoke(cancellationToken);

    /// <summary>The note to trim to while the joints are dry, at the exact length. Each call computes it anew.</summary>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The tuning; null if no length fits or no socket stops its pipe short.</returns>
    public DryTuning? Dry(CancellationToken cancellationToken = default) =>
        FindDry?.Invoke(cancellationToken);

    /// <summary><see cref="Explanation"/>.</summary>
    /// <returns>The explanation.</returns>
    public override string ToString() => Explanation;
}
