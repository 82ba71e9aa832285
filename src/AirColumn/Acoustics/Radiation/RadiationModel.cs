using System.Numerics;
using AirColumn.Acoustics.Radiation;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// The radiation of an open far end: exact, by one of the published approximations (for comparison, or to reproduce
/// a calculation made with it), or an impedance that you give. Immutable.
/// </summary>
/// <remarks>Holes and branches radiate by the exact values whatever the model.</remarks>
public sealed class RadiationModel
{
    private const double FinestRim = 0.5; // kb up to which the published rim formula is used

    private readonly Func<double, OpenEndModel?>? open; // of the outer over the inner radius
    private readonly OpenEndModel? baffled;

    private RadiationModel(
        string name,
        Func<double, OpenEndModel?>? open,
        OpenEndModel? baffled,
        Func<Frequency, Complex>? given = null,
        double highestHertz = double.PositiveInfinity
    )
    {
        HighestHertz = highestHertz;
        Name = name;
        this.open = open;
        this.baffled = baffled;
        Impedance = given;
    }

    /// <summary>
    /// A thin edge is computed from the integrals of levine1948 and a baffle (zorumski1973) from field solutions, each to 1e-6 up to
    /// ka = 3.8. Rims of finite thickness are computed from field solutions up to ka = 3.8. The default.
    /// </summary>
    public static RadiationModel Exact { get; } =
        new("exact", ratio => ratio == 1 ? Thin(ThinEnd.Unflanged, 1) : Rim(ratio), Thin(ThinEnd.Baffled, 0));

    /// <summary>
    /// The fits of dalmont2001: thin edge up to ka = 1.5, baffle up to ka = 3, rims up to kb = 0.5, where b is their outer radius. They agree
    /// with the exact end corrections within 0.012 radii and with |R| within 1 %.
    /// </summary>
    public static RadiationModel Dalmont2001 { get; } =
        new(
            "Dalmont, Nederveen and Joly 2001",
            ratio =>
                ratio == 1
                    ? new(PublishedEnds.DalmontThin, 1.5)
                    : new(ka => PublishedEnds.DalmontRim(ka, ratio), FinestRim / ratio),
            new(PublishedEnds.NorrisBaffled, 3)
        );

    /// <summary>
    /// The fits of norris1989: thin edge and baffle up to ka = 3. They agree with the exact end corrections within 0.013 radii and with |R|
    /// within 1 %.
    /// </summary>
    public static RadiationModel Norris1989 { get; } =
        new(
            "Norris and Sheng 1989",
            ratio => ratio == 1 ? new(PublishedEnds.NorrisThin, 3) : null,
            new(PublishedEnds.NorrisBaffled, 3)
        );

    /// <summary>
    /// The causal fits of silva2009: thin edge and baffle up to ka = 3. They agree with the exact end corrections within 0.034 radii and with
    /// |R| within 0.061.
    /// </summary>
    public static RadiationModel Silva2009 { get; } =
        new(
            "Silva and others 2009",
            ratio => ratio == 1 ? new(ka => PublishedEnds.Silva(ka, 0.167, 1.393, 0.457), 3) : null,
            new(ka => PublishedEnds.Silva(ka, 0.182, 1.825, 0.649), 3)
        );

    /// <summary>
    /// The fit of causse1984: thin edge up to ka = 1.5. It agrees with the exact end correction within 0.003 radii and with |R| within 0.3 %.
    /// </summary>
    public static RadiationModel Causse1984 { get; } =
        new(
            "Caussé, Kergomard and Lurton 1984",
            ratio => ratio == 1 ? new(PublishedEnds.CausseThin, 1.5) : null,
            null
        );

    /// <summary>The name of the model.</summary>
    public string Name { get; }

    internal Func<Frequency, Complex>? Impedance { get; }

    /// <summary>Up to where an impedance is given, Hz.</summary>
    internal double HighestHertz { get; }

    /// <summary>An impedance that you give at the far end, measured or computed elsewhere, whatever end the bore has.</summary>
    /// <param name="impedance">
    /// p/U at the far end, Pa·s/m³, exp(+jωt), of any frequency: finite, its real part 0 or more. For any other value a column throws an
    /// <see cref="InvalidOperationException"/> that names frequency and value. The function must be smooth: a corner in it looks like a
    /// resonance.
    /// </param>
    /// <param name="highest">
    /// The highest frequency at which the impedance is known, above 0. Default: no limit; it is then also asked for somewhat above the cut-on
    /// frequency.
    /// </param>
    /// <returns>The model.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The highest frequency is not a finite number above zero.</exception>
    /// <remarks>
    /// Resonances are counted on the premise that the load's reactance grows with frequency wherever the load does not dissipate. Any passive
    /// load without losses fulfils this premise.
    /// </remarks>
    public static RadiationModel Given(Func<Frequency, Complex> impedance, Frequency? highest = null)
    {
        ArgumentNullException.ThrowIfNull(impedance);
        return new RadiationModel(
            "given impedance",
            null,
            null,
            impedance,
            highest is { } limit
                ? Require.Positive(limit.Hertz, "Hz", nameof(highest))
                : double.PositiveInfinity
        );
    }

    /// <summary>The name.</summary>
    /// <returns>The name.</returns>
    public override string ToString() => Name;

    /// <summary>The model of an open end whose wall slopes, where curved fronts count that.</summary>
    internal OpenEndModel Of(BoreEnd end, in Wall wall, bool minds)
    {
        var straight = Of(end, wall.Radius);
        return this == Exact && minds && wall is not { Slope: 0, Curvature: 0 }
            ? straight.Behind(new TaperedMouth(wall, OuterOverInner(end, wall.Radius)))
            : straight;
    }

    /// <summary>The model of an open end of a straight pipe; throws where this one has none.</summary>
    internal OpenEndModel Of(BoreEnd end, double radius)
    {
        var outerOverInner = end is OpenEnd { WallMetres: var wall }
            ? 1 + wall / radius
            : double.PositiveInfinity;
        return (end is BaffledEnd ? baffled : open?.Invoke(outerOverInner))
            ?? throw new ArgumentException(
                $"The radiation model '{Name}' has no formula for the far end '{end}'. Use RadiationModel.Exact, or an end that "
                    + "it covers.",
                nameof(end)
            );
    }

    private static double OuterOverInner(BoreEnd end, double radius) =>
        end is OpenEnd { WallMetres: var wall } ? 1 + wall / radius : double.PositiveInfinity;

    private static OpenEndModel Thin(ThinEnd end, double share)
    {
        var blend = ThinEnd.Unflanged.After(ThinEnd.Baffled, share);
        return new(end.At, ThinEnd.HighestKa)
        {
            SomeAt = (in ka) => blend.At(ka) is var (log, correction, _) ? (log, correction) : default,
        };
    }

    private static OpenEndModel Rim(double outerOverInner)
    {
        var end = new RimmedEnd(outerOverInner);
        return new(
            end.At,
            RimmedEnd.HighestKa,
            outerOverInner > RimmedEnd.ThickestTabulated
                ? $"The wall at the open end makes the outer radius {Require.Show(Math.Round(outerOverInner, 2), "")} "
                    + "times the inner one; field solutions were tabulated up to 3 times. For a thicker wall the end correction "
                    + "may be off by some hundredths of the radius. The radiated power, and with it level and Q, may be off by some tens of per cent."
                : null
        )
        {
            SomeAt = (in ka) => end.At(ka),
        };
    }
}
