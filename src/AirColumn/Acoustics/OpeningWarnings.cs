using AirColumn.Acoustics.Radiation;

namespace AirColumn;

/// <summary>What a user should know of the models of holes and bends in a bore.</summary>
internal static class OpeningWarnings
{
    private const double BendWarnsFromCents = 5;

    public static IEnumerable<string> Of(Bore bore, Fingering fingering, double hertz, GasConstants gas)
    {
        var open = fingering.ForHoles(bore.Holes.Count, nameof(fingering));
        for (var i = 0; i < open.Length; i++)
        {
            var hole = bore.Holes[i];
            if (
                open[i]
                && hole.Pad is { } pad
                && PadCorrection.Warning(hole.Radius, pad, hole.ChimneyWallMetres) is { } range
            )
            {
                yield return $"The pad above hole {hole.Name ?? $"{i + 1}"} is outside the range of its model: {range}.";
            }
        }

        var wavenumber = 2 * Math.PI * hertz / gas.SpeedOfSound;
        var late = bore
            .Sections.OfType<BendSection>()
            .Select(bend => DispersionCents(bend.Tightness, wavenumber * bend.LargestRadius))
            .DefaultIfEmpty()
            .Max();
        if (late > BendWarnsFromCents)
        {
            yield return $"The model of bends holds at low frequency. At {Require.Show(hertz, "Hz")} waves in the tightest "
                + $"bend run about {Require.Show(Math.Round(late), "")} cents slower than the model says. Resonances there are flatter, "
                + "in proportion to the bend's share of the length.";
        }
    }

    /// <summary>
    /// By how much the plane-like wave in a torus is slower than in the limit of low frequency, cents: 250·(B·ka)²/√(1 − B²), a
    /// fit to the eigenvalues of the wave equation in the torus, good to a tenth up to B = 0.8 and ka = 1.
    /// </summary>
    internal static double DispersionCents(double tightness, double ka) =>
        250 * tightness * tightness * ka * ka / Math.Sqrt(Math.Max(1 - tightness * tightness, 1e-6));
}
