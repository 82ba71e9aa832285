using System.Numerics;
using AirColumn.Acoustics.Interpolation;

namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// The open end of a hole drilled through the wall of a tube: it opens in the outside of a long cylinder.
/// </summary>
/// <remarks>
/// Static end correction over the radius b of the hole: 0.8217 − 0.4745·(b/r)^0.9, r the outer radius of the tube, a fit to field solutions in
/// three dimensions (tone-hole-field.csv) within 0.003; for b ≪ r it is that of a baffle. The published fit, 0.8217 − 0.47·(b/r)^0.8 (dalmont2001,
/// coefficients from memory), lies 0.01 to 0.02 below it.
/// <para>
/// Long waves go round the tube and leave as from a thin edge, short ones as from a baffle. Between the two the cylinder is summed over its
/// circular modes for a small source (<see cref="CylinderWallTable"/>), up to kr = 6, where both courses are held.
/// </para>
/// </remarks>
/// <param name="radiusRatio">b/r.</param>
internal sealed class HoleEnd(double radiusRatio)
{
    private const int Degree = 6;

    private static readonly RationalInterpolant Inertance = Course(CylinderWallTable.Inertance);
    private static readonly RationalInterpolant Resistance = Inertance.WithValues([
        0,
        .. CylinderWallTable.Resistance,
    ]);

    private readonly double correction =
        BaffledTable.LowFrequencyEndCorrection - 0.4745 * Math.Pow(radiusRatio, 0.9);

    /// <summary>The end for one kb or several.</summary>
    public OpenEndModel Model
    {
        get
        {
            var thin = ThinEnd.Unflanged.WithCorrectionTowards(ThinEnd.Baffled, Math.Max(0, Share));
            var shrunk = Math.Min(1, correction / UnflangedTable.LowFrequencyEndCorrection);
            return new OpenEndModel(At, ThinEnd.HighestKa)
            {
                CornerKa = CylinderWallTable.HighestKr * radiusRatio,
                SomeAt = (in kb) =>
                {
                    Span<RealVector> plane = stackalloc RealVector[1];
                    var (log, length, _) = thin.At(kb, plane);
                    Span<RealVector> values = stackalloc RealVector[2];
                    var place = Vector.SquareRoot(kb * (1 / (radiusRatio * CylinderWallTable.HighestKr)));
                    RationalInterpolant.At(
                        Vector.Min(place, RealVector.One),
                        [Inertance, Resistance],
                        values
                    );
                    return (
                        log + values[1] * (kb * kb * plane[0] - log),
                        shrunk * length + Math.PI * radiusRatio * values[0]
                    );
                },
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
        var (thin, baffled) = (ThinEnd.Unflanged.At(kb), ThinEnd.Baffled.At(kb));
        var place = Math.Min(1, Math.Sqrt(kb / (radiusRatio * CylinderWallTable.HighestKr)));
        const double StaticThin = UnflangedTable.LowFrequencyEndCorrection;
        var still =
            correction < StaticThin
                ? thin.EndCorrection * correction / StaticThin
                : thin.EndCorrection + (baffled.EndCorrection - thin.EndCorrection) * Share;
        return new EndReflection(
            thin.LogModulus + Resistance.At(place) * (baffled.LogModulus - thin.LogModulus),
            still + Math.PI * radiusRatio * Inertance.At(place)
        );
    }

    private static RationalInterpolant Course(ReadOnlySpan<double> values)
    {
        var nodes = new double[values.Length + 1];
        for (var i = 0; i < nodes.Length; i++)
        {
            nodes[i] = (double)i / values.Length;
        }

        return new RationalInterpolant(nodes, [0, .. values], Degree);
    }
}
