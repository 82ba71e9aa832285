using System.Runtime.Intrinsics;
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
    public const double CutOnKa = 3.8317059702075123;

    private const int Degree = 6;

    private static readonly double Highest = Variable(HighestKa);

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

    // All functions of one set of nodes: of the thin edge, then of the baffle.
    private static readonly RationalInterpolant[] Together =
    [
        Unflanged.endCorrection,
        Unflanged.logReflection,
        Baffled.endCorrection,
        Baffled.logReflection,
    ];

    public EndReflection At(double ka) => new(LogReflection(ka), EndCorrection(ka));

    /// <summary>
    /// The thin edge, the baffle, or what lies between the two, at eight ka, and v there: <paramref name="share"/> of the thin edge, 0 to 1.
    /// </summary>
    public static (Vector512<double> Log, Vector512<double> Correction, Vector512<double> Variable) Between(
        Vector512<double> ka,
        double share
    )
    {
        Span<double> variables = stackalloc double[Vector512<double>.Count];
        for (var i = 0; i < variables.Length; i++)
        {
            variables[i] = Variable(ka[i]);
        }

        var v = Vector512.Create<double>(variables);
        Span<Vector512<double>> values = stackalloc Vector512<double>[Together.Length];
        RationalInterpolant.At(Vector512.Sqrt(v * (1 / Highest)), Together, values);
        var square = ka * ka;
        var logarithm = Baffled.logarithm + share * (Unflanged.logarithm - Baffled.logarithm);
        var log = values[3] + share * (values[1] - values[3]) + logarithm * square * Vector512.Log(ka);
        return (square * log, values[2] + share * (values[0] - values[2]), v);
    }

    /// <summary>l/a.</summary>
    public double EndCorrection(double ka) => endCorrection.At(Node(ka));

    /// <summary>ln|R|.</summary>
    public double LogReflection(double ka) => ka * ka * (logReflection.At(Node(ka)) + Singular(ka));

    /// <summary>v: smooth functions of it are smooth up to the cut-on.</summary>
    public static double Variable(double ka) => Math.Asin(ka / CutOnKa);

    private static double Node(double ka) => Math.Sqrt(Variable(ka) / Highest);

    private double Singular(double ka) => ka == 0 ? 0 : logarithm * ka * ka * Math.Log(ka);
}
