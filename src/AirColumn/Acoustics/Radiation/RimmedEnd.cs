using AirColumn.Acoustics.Interpolation;

namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// The open end of a pipe with a wall of finite thickness and a square rim. Between the thin edge and the baffle,
/// weighted by a/b as in dalmont2001, the rest is interpolated from the field solutions of <see cref="RimTable"/>.
/// </summary>
/// <remarks>
/// The rest of the end correction grows as (1 − a/b)^(2/3), the singularity of a right-angled edge, and is
/// interpolated in that variable; the rest of ln|R| in a/b. Both vanish at a thin edge and are taken to vanish for an
/// infinite rim. Beyond b/a = 3 there is no table and the waves diffracted at the outer edge are not followed.
/// </remarks>
internal sealed class RimmedEnd
{
    /// <summary>The table ends here.</summary>
    public const double HighestKa = 3;

    /// <summary>The table's thickest wall; above it the end is an interpolation towards the baffle.</summary>
    public const double ThickestTabulated = 3;

    private const int Degree = 3;

    private readonly double innerOverOuter;
    private readonly RationalInterpolant endCorrection;
    private readonly RationalInterpolant logReflection;

    /// <summary>An end of outer over inner radius <paramref name="outerOverInner"/>, above 1.</summary>
    public RimmedEnd(double outerOverInner)
    {
        innerOverOuter = 1 / outerOverInner;
        var ka = RimTable.Ka;
        var nodes = new double[ka.Length];
        var corrections = new double[ka.Length];
        var logs = new double[ka.Length];
        for (var i = 0; i < ka.Length; i++)
        {
            nodes[i] = ThinEnd.Variable(ka[i]);
            corrections[i] = AcrossRims(i, RimTable.EndCorrection, ThinCorrection, EdgeVariable);
            logs[i] = AcrossRims(i, RimTable.Reflection, ThinLog, v => v, Math.Log) / (ka[i] * ka[i]);
        }

        endCorrection = new RationalInterpolant(nodes, corrections, 2);
        logReflection = new RationalInterpolant(nodes, logs, 2);
    }

    public EndReflection At(double ka)
    {
        // Below the table's first ka both rests have reached their limits.
        var x = ThinEnd.Variable(Math.Max(ka, RimTable.Ka[0]));
        return new EndReflection(
            ThinLog(ka, innerOverOuter) + ka * ka * logReflection.At(x),
            ThinCorrection(ka, innerOverOuter) + endCorrection.At(x)
        );
    }

    // What the table has beyond the blend of the two exact ends, at one ka, interpolated to this rim.
    private double AcrossRims(
        int index,
        ReadOnlySpan<double> table,
        Func<double, double, double> blend,
        Func<double, double> variable,
        Func<double, double>? map = null
    )
    {
        var ka = RimTable.Ka;
        var rims = RimTable.OuterOverInner;
        // From the thin edge (a/b = 1, nothing beyond the blend) through the table to the baffle (a/b = 0).
        var nodes = new List<(double X, double Y)> { (variable(1), 0), (variable(0), 0) };
        for (var i = 0; i < rims.Length; i++)
        {
            var value = table[i * ka.Length + index];
            nodes.Add((variable(1 / rims[i]), (map?.Invoke(value) ?? value) - blend(ka[index], 1 / rims[i])));
        }

        nodes.Sort((a, b) => a.X.CompareTo(b.X));
        return new RationalInterpolant(
            [.. nodes.Select(node => node.X)],
            [.. nodes.Select(node => node.Y)],
            Degree
        ).At(variable(innerOverOuter));
    }

    private static double EdgeVariable(double innerOverOuter) => Math.Pow(1 - innerOverOuter, 2.0 / 3);

    private static double ThinCorrection(double ka, double innerOverOuter) =>
        Blend(ThinEnd.Baffled.EndCorrection(ka), ThinEnd.Unflanged.EndCorrection(ka), innerOverOuter);

    private static double ThinLog(double ka, double innerOverOuter) =>
        Blend(ThinEnd.Baffled.LogReflection(ka), ThinEnd.Unflanged.LogReflection(ka), innerOverOuter);

    private static double Blend(double baffled, double unflanged, double innerOverOuter) =>
        baffled + innerOverOuter * (unflanged - baffled);
}
