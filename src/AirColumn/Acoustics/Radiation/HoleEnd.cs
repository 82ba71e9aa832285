namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// The open end of a hole drilled through the wall of a tube: it opens in the outside of a cylinder.
/// </summary>
/// <remarks>
/// Static end correction over the radius of the hole 0.8217 − 0.47·(b/r)^0.8, r the outer radius of the tube (dalmont2001,
/// dalmont2002; coefficients from memory, the limit b ≪ r is that of a baffle). Its course with frequency is that between the
/// thin edge and the baffle, or of the thin edge where it lies below that one. The tube is slender, so that the hole
/// radiates into the whole room: |R| is that of the thin edge. Screening by the tube at high frequency is not in it.
/// </remarks>
internal sealed class HoleEnd(double radiusRatio)
{
    private readonly double correction =
        BaffledTable.LowFrequencyEndCorrection - 0.47 * Math.Pow(radiusRatio, 0.8);

    /// <summary>The end for one ka or several.</summary>
    public OpenEndModel Model
    {
        get
        {
            var blend = ThinEnd.Unflanged.WithCorrectionTowards(ThinEnd.Baffled, Math.Max(0, Share));
            var shrunk = Math.Min(1, correction / UnflangedTable.LowFrequencyEndCorrection);
            return new OpenEndModel(At, ThinEnd.HighestKa)
            {
                SomeAt = (in ka) => blend.At(ka) is var (log, length, _) ? (log, shrunk * length) : default,
            };
        }
    }

    // How far the static end correction lies from that of the thin edge towards that of the baffle; negative below the former.
    private double Share =>
        (correction - UnflangedTable.LowFrequencyEndCorrection)
        / (BaffledTable.LowFrequencyEndCorrection - UnflangedTable.LowFrequencyEndCorrection);

    /// <summary>What it sends back at kb.</summary>
    public EndReflection At(double kb)
    {
        var (thin, baffled) = (ThinEnd.Unflanged.EndCorrection(kb), ThinEnd.Baffled.EndCorrection(kb));
        const double StaticThin = UnflangedTable.LowFrequencyEndCorrection;
        return new EndReflection(
            ThinEnd.Unflanged.LogReflection(kb),
            correction < StaticThin ? thin * correction / StaticThin : thin + (baffled - thin) * Share
        );
    }
}
