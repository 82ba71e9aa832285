using System.Diagnostics.CodeAnalysis;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Tubes;

/// <summary>
/// The pipe length that puts the first resonance on a note, or the reason why there is none. It is the first step of a <see cref="TubeBuild"/>,
/// which adds the uncertainty and the first cut. Immutable.
/// </summary>
public sealed class ExactCut
{
    private readonly Func<Sizes, string> explaining;
    private readonly Func<CancellationToken, TubeBuild> rest;

    internal ExactCut(
        SolveStatus status,
        Func<Sizes, string> explaining,
        Func<CancellationToken, TubeBuild> rest
    )
    {
        (Status, this.explaining, this.rest) = (status, explaining, rest);
    }

    /// <summary>The outcome of the search for the length.</summary>
    public SolveStatus Status { get; }

    /// <summary>True if a length fits. If it is false, the members below are null or empty.</summary>
    [MemberNotNullWhen(true, nameof(Exact), nameof(Resonances))]
    public bool IsSolved => Status == SolveStatus.Solved;

    /// <summary>The length that puts the first resonance on the note.</summary>
    public BuiltTube? Exact { get; init; }

    /// <summary>Change of the first resonance for each millimetre of pipe added: negative; 0 if no length fits.</summary>
    public double CentsPerMillimetre { get; init; }

    /// <summary>The first four resonances at that length.</summary>
    public ResonanceList? Resonances { get; init; }

    /// <summary>Resonances 2 to 4 at that length.</summary>
    public IReadOnlyList<OverblownNote> Overblown { get; init; } = [];

    /// <summary>One sentence: the length found, or the reason why no length fits.</summary>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The sentence.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public string ExplanationIn(LengthUnits units) => explaining(new Sizes(Require.Named(units)));

    /// <summary>The whole plan. Each call computes it anew.</summary>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The plan.</returns>
    public TubeBuild Plan(CancellationToken cancellationToken = default) => rest(cancellationToken);

    /// <summary>The explanation, with lengths in millimetres and inches.</summary>
    /// <returns>The explanation.</returns>
    public override string ToString() => ExplanationIn(LengthUnits.Both);
}
