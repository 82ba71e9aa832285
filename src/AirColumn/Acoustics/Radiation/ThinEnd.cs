using AirColumn.Acoustics.Interpolation;

namespace AirColumn.Acoustics.Radiation;

/// <summary>Open ends known exactly, as functions of ka from 0 to <see cref="HighestKa"/>.</summary>
/// <remarks>
/// The tables are interpolated in arcsin(ka/3.8317), which takes the square-root singularity at the cut-on of the
/// first radial mode away. l/a and ln|R|/(ka)² are even and smooth at low frequency but for the logarithm named below.
/// </remarks>
internal sealed class ThinEnd
{
    public const double HighestKa = 3.8;

    /// <summary>First zero of J₁: the cut-on of the first radial mode of a rigid duct.</summary>
    public const double CutOnKa = 3.8317059702075123;

    private const int Degree = 4;

    private readonly RationalInterpolant endCorrection;
    private readonly RationalInterpolant logReflection;
    private readonly double logarithm;

    private ThinEnd(
        ReadOnlySpan<double> ka,
        ReadOnlySpan<double> reflection,
        ReadOnlySpan<double> correction,
        double correctionLimit,
        double logReflectionLimit,
        double logarithm
    )
    {
        this.logarithm = logarithm;
        var nodes = new double[ka.Length + 1];
        var corrections = new double[nodes.Length];
        var logs = new double[nodes.Length];
        (corrections[0], logs[0]) = (correctionLimit, logReflectionLimit);
        for (var i = 0; i < ka.Length; i++)
        {
            nodes[i + 1] = Variable(ka[i]);
            corrections[i + 1] = correction[i];
            logs[i + 1] = Math.Log(reflection[i]) / (ka[i] * ka[i]) - Singular(ka[i]);
        }

        endCorrection = new RationalInterpolant(nodes, corrections, Degree);
        logReflection = new RationalInterpolant(nodes, logs, Degree);
    }

    /// <summary>
    /// A thin edge in free air. |R| = exp(−(ka)²/2)·[1 + (ka)⁴/6·(ln(1/(γ'ka)) + 19/12)] at low ka (levine1948), whose
    /// logarithm is taken out before interpolating.
    /// </summary>
    public static ThinEnd Unflanged { get; } =
        new(
            UnflangedTable.Ka,
            UnflangedTable.Reflection,
            UnflangedTable.EndCorrection,
            UnflangedTable.LowFrequencyEndCorrection,
            -0.5,
            -1.0 / 6
        );

    /// <summary>Flush in an infinite rigid plane: |R| tends to 1 − (ka)² at low ka.</summary>
    public static ThinEnd Baffled { get; } =
        new(
            BaffledTable.Ka,
            BaffledTable.Reflection,
            BaffledTable.EndCorrection,
            BaffledTable.LowFrequencyEndCorrection,
            -1,
            0
        );

    public EndReflection At(double ka) => new(LogReflection(ka), EndCorrection(ka));

    /// <summary>l/a.</summary>
    public double EndCorrection(double ka) => endCorrection.At(Variable(ka));

    /// <summary>ln|R|.</summary>
    public double LogReflection(double ka) => ka * ka * (logReflection.At(Variable(ka)) + Singular(ka));

    public static double Variable(double ka) => Math.Asin(ka / CutOnKa);

    private double Singular(double ka) => ka == 0 ? 0 : logarithm * ka * ka * Math.Log(ka);
}
