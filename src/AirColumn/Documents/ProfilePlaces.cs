using System.Globalization;
using AirColumn.Bores;
using UnitsNet;

namespace AirColumn.Documents;

/// <summary>
/// The points of a profile with their positions as text. A profile keeps the lengths of its pieces, not the positions
/// they were computed from; this finds positions whose differences are those lengths.
/// </summary>
internal static class ProfilePlaces
{
    private static readonly string[] Formats = ["G12", "G13", "G14", "G15", "R"];

    /// <summary>Position (with its unit) and diameter in metres of each point, from the inlet.</summary>
    public static IEnumerable<(string Position, double Diameter)> Of(ProfileSection profile)
    {
        yield return ("0 mm", 2 * profile.WallAt(0).Radius);
        var position = 0.0; // mm
        foreach (var piece in profile.SmoothParts)
        {
            position = Next(position, piece.LengthMetres);
            yield return ($"{ExactText.Of(position)} mm", 2 * piece.WallAt(piece.LengthMetres).Radius);
        }
    }

    private static double Next(double from, double metres)
    {
        var about = from + metres * 1000;
        foreach (var candidate in Candidates(about))
        {
            if ((Length.FromMillimeters(candidate) - Length.FromMillimeters(from)).Meters == metres)
            {
                return candidate;
            }
        }

        // No number is at that distance: the neighbouring one is.
        return about;
    }

    // Short numbers first, since people measured them; then the numbers next to the sum.
    private static IEnumerable<double> Candidates(double about)
    {
        foreach (var format in Formats)
        {
            var text = about.ToString(format, CultureInfo.InvariantCulture);
            yield return double.Parse(text, CultureInfo.InvariantCulture);
        }

        var (below, above) = (about, about);
        for (var i = 0; i < 4; i++)
        {
            yield return below = Math.BitDecrement(below);
            yield return above = Math.BitIncrement(above);
        }
    }
}
