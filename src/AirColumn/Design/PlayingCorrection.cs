namespace AirColumn;

/// <summary>
/// The distance by which a player's note lies above its resonance, as a normal distribution. The correction begins as an estimate and
/// improves with each recorded note. Immutable, equal by value.
/// </summary>
/// <remarks>
/// An air column does not include lips and breath. Their effect depends on player, mouth end and loudness; lips can bend the drone by a
/// semitone or more.
/// </remarks>
public sealed record PlayingCorrection
{
    /// <summary>Makes a correction.</summary>
    /// <param name="meanCents">Played note minus resonance, cents: −1200 to 1200.</param>
    /// <param name="standardDeviationCents">Its standard deviation, cents: 0 to 1200.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range or not a number.</exception>
    public PlayingCorrection(double meanCents, double standardDeviationCents)
    {
        MeanCents = Require.InRange(meanCents, -1200, 1200, "cents");
        StandardDeviationCents = Require.InRange(standardDeviationCents, 0, 1200, "cents");
    }

    /// <summary>No correction and no uncertainty: the resonance itself.</summary>
    public static PlayingCorrection None { get; } = new(0, 0);

    /// <summary>
    /// The correction for a drone blown with the lips, if the column was computed in the air of the room: 21.5 ± 12 cents.
    /// </summary>
    /// <remarks>
    /// Common practice, no formal source: the lengths that makers of such tubes publish put the drone 11 to 32 cents above the resonance in
    /// cold air. The standard deviation, our choice, is a little more than half of that range, since players differ.
    /// </remarks>
    public static PlayingCorrection LipsInRoomAir { get; } = new(21.5, 12);

    /// <summary>
    /// The correction for a drone blown with the lips, if the column was computed with breath in it (<see cref="AirProfile"/>): 11 ± 10 cents.
    /// </summary>
    /// <remarks>Warm breath explains about half of the difference observed with room air (common practice); the rest is left to the lips.</remarks>
    public static PlayingCorrection LipsInBreath { get; } = new(11, 10);

    /// <summary>Played note minus resonance, cents.</summary>
    public double MeanCents { get; }

    /// <summary>Its standard deviation, cents.</summary>
    public double StandardDeviationCents { get; }

    /// <summary>
    /// The correction after notes were recorded on a tube whose resonance is known. It is in closed form, for a normal prior and normal errors.
    /// </summary>
    /// <param name="observedCents">For each recording the played note minus the resonance, cents: −1200 to 1200.</param>
    /// <param name="standardDeviationCents">
    /// The standard deviation of one recording, cents, from the player's variation and the measurement: 0.01 to 1200.
    /// </param>
    /// <returns>The updated correction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range or not a number.</exception>
    public PlayingCorrection After(IReadOnlyList<double> observedCents, double standardDeviationCents)
    {
        ArgumentNullException.ThrowIfNull(observedCents);
        Require.InRange(standardDeviationCents, 0.01, 1200, "cents");
        foreach (var observed in observedCents)
        {
            Require.InRange(observed, -1200, 1200, "cents", nameof(observedCents));
        }

        if (observedCents.Count == 0)
        {
            return this;
        }

        // The share of what is new in the mean; as variances, so that a prior that is sure needs no case of its own.
        var known = StandardDeviationCents * StandardDeviationCents;
        var mean = standardDeviationCents * standardDeviationCents / observedCents.Count;
        var gain = known / (known + mean);
        return new(MeanCents + gain * (observedCents.Average() - MeanCents), Math.Sqrt(gain * mean));
    }

    /// <summary>The expected note, if the resonance has no uncertainty.</summary>
    /// <param name="resonance">The resonance.</param>
    /// <returns>The expected note.</returns>
    public PlayedNote Of(Resonance resonance)
    {
        ArgumentNullException.ThrowIfNull(resonance);
        return new PlayedNote(
            resonance,
            0,
            this,
            StandardDeviationCents,
            Coverage.OfNormal * StandardDeviationCents
        );
    }

    /// <summary>The expected note, if the resonance has an uncertainty.</summary>
    /// <param name="budget">The resonance and its uncertainty.</param>
    /// <returns>The expected note.</returns>
    public PlayedNote Of(ResonanceBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        var uniform = budget
            .Contributions.Where(c => !c.Tolerance.IsNormal)
            .Select(c => c.StandardDeviationCents)
            .ToList();
        var normal = Math.Sqrt(
            budget
                .Contributions.Where(c => c.Tolerance.IsNormal)
                .Sum(c => c.StandardDeviationCents * c.StandardDeviationCents)
                + StandardDeviationCents * StandardDeviationCents
        );
        var sigma = Math.Sqrt(uniform.Sum(s => s * s) + normal * normal);
        return new PlayedNote(
            budget.Resonance,
            budget.PlusMinusCents,
            this,
            sigma,
            sigma * Coverage.Factor(uniform, normal)
        );
    }

    /// <summary>Mean and standard deviation, in the invariant culture.</summary>
    /// <returns>Mean and standard deviation, as text.</returns>
    public override string ToString() =>
        $"{Wording.CentsOf(MeanCents)} ± {Require.Show(Math.Round(StandardDeviationCents, 1), "cents")}";
}
