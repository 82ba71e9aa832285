using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Propagation;

/// <summary>How many steps a cone takes.</summary>
/// <remarks>
/// With ρ half the relative change of radius over a step, ε = 3/s the size of what the walls vary by, and z the phase, what a step leaves out,
/// relative, is measured to stay below
/// <code>
/// (1 + 4ε²)·{(ερ)³·[min(1, z³)/50 + 0.15·m] + ε²ρ⁴·[min(1, z²)/20 + 0.55·m] + ερ⁵·[0.11·m + 1/1000]},   m = min(1, (z/4.5)⁶),
/// </code>
/// ε no more than 2 there, as long as 4ρ²·min(1, ε²), which is how much the slope counts against the length, is below 1/50.
/// </remarks>
internal static class ConeStepCount
{
    public const int Most = 4000;

    private const double LargestChange = 0.25; // of the radius, half of it over a step
    private const double Thickest = 2;
    private const double MostOfSlope = 0.02;
    private const double Turned = 4.5; // radians over a step, where the error is as large as it gets
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
        var largest = size * Math.Sqrt(band.High / band.Low);
        var lowest = band.Low / band.High;
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
            var ofSlope = 4 * rho * rho * Math.Min(1, largest * largest);
            if (rho > LargestChange || ofSlope > MostOfSlope)
            {
                return false;
            }

            // Lower down the walls do more, and the wave turns less.
            var worst = Math.Max(1, z / Turned);
            var left = Math.Max(
                LeftOut(size * Math.Sqrt(worst), rho, z / worst),
                LeftOut(largest, rho, z * lowest)
            );
            return left * parts < tolerance;
        }
    }

    private static double LeftOut(double size, double rho, double z)
    {
        var epsilon = Math.Min(size, Thickest);
        var turn = z / Turned;
        turn *= turn;
        var turned = Math.Min(1, turn * turn * turn);
        var (er, square) = (epsilon * rho, rho * rho);
        return (1 + 4 * epsilon * epsilon)
            * (
                er * er * er * (0.02 * Math.Min(1, z * z * z) + 0.15 * turned)
                + er * er * square * (0.05 * Math.Min(1, z * z) + 0.55 * turned)
                + er * square * square * (0.11 * turned + 0.001)
            );
    }
}
