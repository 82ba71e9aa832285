namespace AirColumn.Acoustics.Multimodal;

/// <summary>Where a wall that is not a cylinder's is divided, and how finely it is followed in each part.</summary>
/// <remarks>
/// At an end where the slope jumps or a mouth disturbs the field, modes die away over a fraction of the radius; away from there, and
/// where the wall goes on smoothly, they follow the plane wave. Parts grow with the distance from the ends, as far as wavelength and
/// wall allow.
/// </remarks>
internal static class WallGrid
{
    private const double AtJump = 0.4; // of the radius
    private const double AtSmoothJoint = 1.2; // likewise, where nothing but the curvature jumps
    private const double Growth = 0.8; // of the distance from an end
    private const double LargestPhase = 3;
    private const double LargestChange = 0.5; // of the radius, relative, and of the slope against it

    /// <summary>Ends of the parts, m, from 0, and the degree in each; with whether the wall goes on smoothly at its ends.</summary>
    public static IEnumerable<(double From, double To, int Degree)> Of(
        Section section,
        double highestWavenumber,
        (bool Near, bool Far) isSmooth = default
    )
    {
        var first = (isSmooth.Near ? AtSmoothJoint : AtJump, isSmooth.Far ? AtSmoothJoint : AtJump);
        var length = section.LengthMetres;
        var x = 0.0;
        while (x < length)
        {
            var h = Size(section, x, highestWavenumber, first);
            // Not longer than is right for its other end.
            while (x + h < length && Size(section, x + h, highestWavenumber, first) < 0.6 * h)
            {
                h *= 0.8;
            }

            var left = length - x;
            if (h > 0.999 * left)
            {
                h = left;
            }
            else if (h > 0.6 * left)
            {
                h = 0.5 * left;
            }

            var to = h == left ? length : x + h;
            var part = (to - x) / section.WallAt((x + to) / 2).Radius;
            yield return (
                x,
                to,
                part < 0.1 ? 4
                : part < 0.3 ? 6
                : part < 1 ? 8
                : 10
            );
            x = to;
        }
    }

    private static double Size(
        Section section,
        double x,
        double highestWavenumber,
        (double Near, double Far) first
    )
    {
        var length = section.LengthMetres;
        var wall = section.WallAt(x);
        var h = Math.Min(
            first.Near * section.WallAt(0).Radius + Growth * x,
            first.Far * section.WallAt(length).Radius + Growth * (length - x)
        );
        h = Math.Min(h, LargestPhase / highestWavenumber);
        h = Math.Min(h, LargestChange * wall.Radius / Math.Max(Math.Abs(wall.Slope), 1e-9));
        return Math.Min(h, Math.Sqrt(LargestChange * wall.Radius / Math.Max(Math.Abs(wall.Curvature), 1e-9)));
    }
}
