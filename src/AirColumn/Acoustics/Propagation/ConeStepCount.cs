using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Propagation;

/// <summary>How many steps a cone takes.</summary>
/// <remarks>
/// A step leaves out the fourth moment of q, the cube of the first and their products. With ρ half the relative change of radius over a
/// step and ε = 3/s the size of what the walls vary by, these are measured to stay below
/// 0.23·ε·ρ⁴·min(½, z⁵/1890) + 0.02·(ερ)³ + 0.02·ε₀·ρ⁵, ε₀ that of the lowest frequency.
/// </remarks>
internal static class ConeStepCount
{
    public const int Most = 4000;

    private const double LargestChange = 0.25; // of the radius, half of it over a step
    private const double Thickest = 1.5;
    private const double StrongStep = 1; // Np
    private const double StrongStraight = 200;

    public static int Of(in Cone cone, Medium medium, in Band band, bool isStrong)
    {
        var isStraight = cone.Far == cone.Near;
        var fewest = isStrong
            ? (int)
                Math.Ceiling(
                    Attenuation.Of(medium, Math.Min(cone.Near, cone.Far), cone.Length, cone.Front, band)
                        / (isStraight ? StrongStraight : StrongStep)
                )
            : 1;
        if (isStraight || medium.Wall.IsLossless)
        {
            return Math.Clamp(fewest, 1, Most);
        }

        var tolerance = 0.5 * band.Tolerance;
        var change = 0.5 * Math.Abs(Math.Log(cone.Near / cone.Far));
        var size = 3 / (medium.Wall.Unit * Math.Min(cone.Near, cone.Far) * Math.Sqrt(band.High));
        var thick = Math.Min(Thickest, size * Math.Sqrt(band.High / band.Low));
        var phase = band.High / medium.SpeedOfSound * cone.Length;
        var n = Math.Max(1, fewest);
        while (n < Most && !IsEnough(n))
        {
            n += 1 + n / 8;
        }

        return Math.Min(n, Most);

        bool IsEnough(int parts)
        {
            var (rho, z) = (change / parts, phase / parts);
            var (square, turned) = (rho * rho, z * z);
            var left =
                0.23 * size * square * square * Math.Min(0.5, turned * turned * z / 1890)
                + 0.02 * size * size * size * square * rho
                + 0.02 * thick * square * square * rho;
            return rho < LargestChange && left * parts < tolerance;
        }
    }
}
