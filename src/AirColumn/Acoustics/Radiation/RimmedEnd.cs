using AirColumn.Acoustics.Interpolation;
using MathNet.Numerics.Interpolation;

namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// The open end of a pipe with a wall of finite thickness and a square rim. Between the thin edge and the baffle,
/// weighted by a/b as in dalmont2001, the rest is interpolated from the field solutions of <see cref="RimTable"/>.
/// </summary>
/// <remarks>
/// The rest of the end correction grows as (1 − a/b)^(2/3), the singularity of a right-angled edge, and is
/// interpolated in that variable; the rest of ln|R| in a/b: by splines, since the waves diffracted at a wide rim's outer edge would
/// spoil a rational interpolation at the narrow rims. Both vanish at a thin edge and are taken to vanish for an infinite rim. Beyond b/a = 3 there
/// is no table and the waves diffracted at the outer edge are not followed.
/// </remarks>
internal sealed class RimmedEnd
{
    /// <summary>The table ends here.</summary>
    public const double HighestKa = 3.8;

    /// <summary>The table's thickest wall; above it the end is an interpolation towards the baffle.</summary>
    public const double ThickestTabulated = 3;

    private const int DegreeAlongKa = 2;

    // One interpolation over the rims for each tabulated ka, of what the table has beyond the blend.
    private static readonly CubicSpline[] CorrectionRests = AcrossRims(
        RimTable.EndCorrection,
        EdgeVariable,
        (value, ka, ratio) => value - ThinCorrection(ka, ratio)
    );

    private static readonly CubicSpline[] LogRests = AcrossRims(
        RimTable.Reflection,
        ratio => ratio,
        (value, ka, ratio) => (Math.Log(value) - ThinLog(ka, ratio)) / (ka * ka)
    );

    // Its nodes; the values are those of a rim.
    private static readonly RationalInterpolant AlongKa = new(
        [.. RimTable.Ka.ToArray().Select(ThinBlend.Variable)],
        new double[RimTable.Ka.Length],
        DegreeAlongKa
    );

    private readonly double innerOverOuter;
    private readonly ThinBlend blend;
    private readonly RationalInterpolant correctionRest;
    private readonly RationalInterpolant logRest;
    private readonly RationalInterpolant[] both;

    /// <summary>An end of outer over inner radius <paramref name="outerOverInner"/>, above 1.</summary>
    public RimmedEnd(double outerOverInner)
    {
        innerOverOuter = 1 / outerOverInner;
        blend = ThinEnd.Unflanged.After(ThinEnd.Baffled, innerOverOuter);
        correctionRest = Along(CorrectionRests, EdgeVariable(innerOverOuter));
        logRest = Along(LogRests, innerOverOuter);
        both = [correctionRest, logRest];
    }

    public EndReflection At(double ka)
    {
        var x = ThinBlend.Variable(ka);
        return new EndReflection(
            ThinLog(ka, innerOverOuter) + ka * ka * logRest.At(x),
            ThinCorrection(ka, innerOverOuter) + correctionRest.At(x)
        );
    }

    /// <summary>ln|R| and l/a at some ka.</summary>
    public (RealVector Log, RealVector Correction) At(RealVector ka)
    {
        var (log, correction, variable) = blend.At(ka);
        Span<RealVector> rests = stackalloc RealVector[2];
        RationalInterpolant.At(variable, both, rests);
        return (log + ka * ka * rests[1], correction + rests[0]);
    }

    private static RationalInterpolant Along(CubicSpline[] rests, double rim)
    {
        // Below the table's first ka both rests are all but at their limits, and the interpolant goes on smoothly.
        Span<double> values = stackalloc double[rests.Length];
        for (var i = 0; i < rests.Length; i++)
        {
            values[i] = rests[i].Interpolate(rim);
        }

        return AlongKa.WithValues(values);
    }

    private static CubicSpline[] AcrossRims(
        ReadOnlySpan<double> table,
        Func<double, double> variable,
        Func<double, double, double, double> rest
    )
    {
        var ka = RimTable.Ka;
        var rims = RimTable.OuterOverInner;
        var result = new CubicSpline[ka.Length];
        for (var j = 0; j < ka.Length; j++)
        {
            // From the thin edge (a/b = 1, nothing beyond the blend) through the table to the baffle (a/b = 0).
            var nodes = new List<(double X, double Y)> { (variable(1), 0), (variable(0), 0) };
            for (var i = 0; i < rims.Length; i++)
            {
                nodes.Add((variable(1 / rims[i]), rest(table[i * ka.Length + j], ka[j], 1 / rims[i])));
            }

            nodes.Sort((a, b) => a.X.CompareTo(b.X));
            result[j] = CubicSpline.InterpolateNaturalSorted(
                [.. nodes.Select(node => node.X)],
                [.. nodes.Select(node => node.Y)]
            );
        }

        return result;
    }

    private static double EdgeVariable(double innerOverOuter) => Math.Pow(1 - innerOverOuter, 2.0 / 3);

    private static double ThinCorrection(double ka, double innerOverOuter) =>
        Blend(ThinEnd.Baffled.EndCorrection(ka), ThinEnd.Unflanged.EndCorrection(ka), innerOverOuter);

    private static double ThinLog(double ka, double innerOverOuter) =>
        Blend(ThinEnd.Baffled.LogReflection(ka), ThinEnd.Unflanged.LogReflection(ka), innerOverOuter);

    private static double Blend(double baffled, double unflanged, double innerOverOuter) =>
        baffled + innerOverOuter * (unflanged - baffled);
}
