namespace AirColumn.Acoustics.Line;

/// <summary>Which wave fronts a bore needs.</summary>
internal static class WavefrontChoice
{
    // Cents that the estimate may reach: it is one to three times what curved fronts are off by, in nearly all bores.
    private const double MostCents = 0.5;

    // From where the expansion in the slope has no footing, nor has the estimate.
    private const double Steepest = 1;

    // As coarse as the estimate: it is one to three times what it estimates.
    private static readonly double[] Told = [1, 2, 3, 5, 10, 20, MostToTell];

    private const double MostToTell = 30; // cents: beyond, the estimate says no more than that it is much

    /// <summary>What <see cref="Wavefronts.Automatic"/> becomes.</summary>
    public static Wavefronts For(Bore bore, ColumnOptions options) =>
        options.Radiation == RadiationModel.Exact && NeedsModes(bore, out _)
            ? Wavefronts.Multimodal
            : Wavefronts.Curved;

    /// <summary>What to know of wave fronts that are no modes; null where there is nothing.</summary>
    /// <param name="bore">The bore.</param>
    /// <param name="asked">As they were asked for.</param>
    public static string? Warning(Bore bore, Wavefronts asked)
    {
        if (asked == Wavefronts.Multimodal || !NeedsModes(bore, out var cents))
        {
            return null;
        }

        var steepest = SteepestSlope(bore);
        var why =
            steepest > Steepest
                ? $"The wall slopes by up to {Require.Show(Math.Round(steepest, 2), "")} (more than 45°), where one-dimensional "
                    + "wave fronts are not valid; resonances may be off by several cents or more."
                : "Corners, steps or slopes of this bore are too close together, too near the mouth or too steep for one-dimensional wave "
                    + "fronts; even with curved ones resonances may be off by about "
                    + (
                        cents > MostToTell
                            ? $"{MostToTell} cents or more."
                            : $"{Require.Show(Array.Find(Told, told => told >= cents), "cents")}."
                    );
        return why
            + (
                asked == Wavefronts.Automatic
                    ? " Radial modes would be accurate; they are taken only with exact radiation."
                    : " Automatic wave fronts take radial modes here."
            );
    }

    private static bool NeedsModes(Bore bore, out double cents)
    {
        cents = CurvedFrontError.Cents(bore);
        return cents > MostCents || SteepestSlope(bore) > Steepest;
    }

    private static double SteepestSlope(Bore bore)
    {
        var steepest = 0.0;
        foreach (var section in bore.Sections)
        {
            steepest = Math.Max(steepest, section.SteepestSlope);
        }

        return steepest;
    }
}
