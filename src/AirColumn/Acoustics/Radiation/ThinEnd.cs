using AirColumn.Acoustics.Interpolation;

namespace AirColumn.Acoustics.Radiation;

/// <summary>Open ends known exactly, as functions of ka from 0 to <see cref="HighestKa"/>, to 1e-6.</summary>
/// <remarks>
/// The tables are interpolated in s, ka = 3.8317·sin(v), v = v₃.₈·s²: the sine takes the square-root singularity at the cut-on
/// of the first radial mode away, and the square the logarithms at low frequency. ln|R| is interpolated over (ka)².
/// </remarks>
internal sealed class ThinEnd
{
    public const double HighestKa = 3.8;

    /// <summary>First zero of J₁: the cut-on of the first radial mode of a rigid duct.</summary>
    public const double CutOnKa = ThinBlend.CutOnKa;

    private const int Degree = 6;

    private static readonly double Highest = ThinBlend.Variable(HighestKa);

    private readonly RationalInterpolant endCorrection;
    private readonly RationalInterpolant logReflection;
    private readonly double logarithm;

    private ThinEnd(
        ReadOnlySpan<double> logs,
        ReadOnlySpan<double> corrections,
        double correctionLimit,
        double logReflectionLimit,
        double logarithm,
        ThinEnd? like = null // tabulated at the same places
    )
    {
        this.logarithm = logarithm;
        var nodes = new double[logs.Length + 1];
        var scaled = new double[nodes.Length];
        scaled[0] = logReflectionLimit;
        for (var i = 1; i < nodes.Length; i++)
        {
            nodes[i] = (double)i / logs.Length;
            var ka = CutOnKa * Math.Sin(Highest * nodes[i] * nodes[i]);
            scaled[i] = logs[i - 1] / (ka * ka) - Singular(ka);
        }

        logReflection = like?.logReflection.WithValues(scaled) ?? new(nodes, scaled, Degree);
        endCorrection = logReflection.WithValues([correctionLimit, .. corrections]);
    }

    /// <summary>
    /// A thin edge in free air. |R| = exp(−(ka)²/2)·[1 + (ka)⁴/6·(ln(1/(γ'ka)) + 19/12)] at low ka (levine1948), whose
    /// logarithm is taken out before interpolating.
    /// </summary>
    public static ThinEnd Unflanged { get; } =
        new(
            UnflangedTable.LogReflection,
            UnflangedTable.EndCorrection,
            UnflangedTable.LowFrequencyEndCorrection,
            -0.5,
            -1.0 / 6
        );

    /// <summary>Flush in an infinite rigid plane: |R| tends to 1 − (ka)² at low ka.</summary>
    public static ThinEnd Baffled { get; } =
        new(
            BaffledTable.LogReflection,
            BaffledTable.EndCorrection,
            BaffledTable.LowFrequencyEndCorrection,
            -1,
            0,
            Unflanged
        );

    public EndReflection At(double ka) => new(LogReflection(ka), EndCorrection(ka));

    /// <summary>What lies between another end and this one, in some ka at a time; <paramref name="share"/> of this one, 0 to 1.</summary>
    public ThinBlend After(ThinEnd other, double share) =>
        new(
            [
                endCorrection.Blended(other.endCorrection, share),
                logReflection.Blended(other.logReflection, share),
            ],
            other.logarithm + share * (logarithm - other.logarithm),
            1 / Highest
        );

    /// <summary>
    /// This end, its end correction a share, 0 to 1, of the way towards that of another; ln|R| over (ka)² of that one is a function more,
    /// without the logarithm, of which a baffle has none.
    /// </summary>
    public ThinBlend WithCorrectionTowards(ThinEnd other, double share) =>
        new(
            [other.endCorrection.Blended(endCorrection, share), logReflection, other.logReflection],
            logarithm,
            1 / Highest
        );

    /// <summary>l/a.</summary>
    public double EndCorrection(double ka) => endCorrection.At(Node(ka));

    /// <summary>ln|R|.</summary>
    public double LogReflection(double ka) => ka * ka * (logReflection.At(Node(ka)) + Singular(ka));

    private static double Node(double ka) => Math.Sqrt(ThinBlend.Variable(ka) / Highest);

    private double Singular(double ka) => ka == 0 ? 0 : logarithm * ka * ka * Math.Log(ka);
}
