using System.Globalization;

namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// What a flat disc above an open end of radius a adds to its end correction (dalmont2001):
/// a/[3.5(h/a)^0.8·(h/a + 3w/a)^(−0.4) + 30(h/d)^2.6], h its height, d its radius, w the wall at the rim. The coefficients are
/// from memory.
/// </summary>
internal static class PadCorrection
{
    private const double ThickestRim = 0.25;

    /// <summary>The added length, m. A hole in a wall without a rim of its own counts as the thickest rim that was studied.</summary>
    public static double Length(double radius, HolePad pad, double? rim)
    {
        var h = pad.HeightMetres / radius;
        var w = RimRatio(radius, rim);
        return radius
            / (
                3.5 * Math.Pow(h, 0.8) * Math.Pow(h + 3 * w, -0.4)
                + 30 * Math.Pow(pad.HeightMetres / pad.Radius, 2.6)
            );
    }

    /// <summary>The warning for a pad outside the range of the formula; null inside it.</summary>
    public static string? Warning(double radius, HolePad pad, double? rim)
    {
        string?[] outside =
        [
            Outside("the pad is", pad.HeightMetres / radius, 0.02, 1, "hole radii above the rim"),
            Outside("the pad is", pad.Radius / radius, 1.3, 1.65, "times as wide as the hole"),
            rim is { } wall
                ? Outside("the wall of the chimney is", wall / radius, 0.025, ThickestRim, "hole radii thick")
                : "the hole has no chimney",
        ];
        var parts = outside.OfType<string>().ToList();
        return parts.Count == 0 ? null : string.Join("; ", parts);
    }

    private static string? Outside(string what, double value, double from, double to, string unit) =>
        value >= from && value <= to
            ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{what} {value:0.###} {unit}, and the formula holds from {from} to {to}"
            );

    private static double RimRatio(double radius, double? rim) =>
        rim is { } wall ? Math.Min(wall / radius, ThickestRim) : ThickestRim;
}
