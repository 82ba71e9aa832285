using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Propagation;

/// <summary>How much a wave loses to the wall, about: enough to tell where its exponential has to be held back.</summary>
internal static class Attenuation
{
    /// <summary>From so many nepers along a line on, growth is taken out of the state as it goes.</summary>
    public const double Strong = 2;

    /// <summary>Whether that is so of one segment by itself.</summary>
    public static bool IsStrong(BoreSegment segment, in Band band) =>
        Of(
            segment.Medium,
            segment.Section.SmallestRadius,
            segment.Length,
            segment.Section.InertiaFactor,
            band
        ) > Strong;

    /// <summary>Np over a length of pipe at the top of a band, no less than it is: k·L·|Im √(mT/H)|.</summary>
    public static double Of(Medium medium, double radius, double length, double front, in Band band)
    {
        if (medium.Wall.IsLossless)
        {
            return 0;
        }

        // Thin layers: (1 + (γ − 1)/√Pr)/(√2·s), about 1.05/s; thick ones: √(8γ/2)/s, about 2.4/s.
        var s = medium.Wall.Unit * radius * Math.Sqrt(band.High);
        return band.High / medium.SpeedOfSound * length * Math.Sqrt(front) * (s < 6 ? 2.4 : 1.5) / s;
    }

    /// <summary>Along the bore of some parts, Np.</summary>
    public static double Along(LinePart[] parts, in Band band)
    {
        var sum = 0.0;
        foreach (var part in parts)
        {
            if (part is BoreSegment segment)
            {
                var radius = segment.Section.SmallestRadius;
                sum += Of(segment.Medium, radius, segment.Length, segment.Section.InertiaFactor, band);
            }
        }

        return sum;
    }
}
