namespace AirColumn;

/// <summary>
/// Cramer's interpolation (cramer1993, eq. 15 and table III; iec61094-2, Annex F), one form for two quantities: the
/// zero-frequency speed of sound and the heat capacity ratio of real, humid air. Made for 0 to 30 °C, 75 to 102 kPa,
/// at most 6 % water vapour and 1 % carbon dioxide; estimated uncertainty there 300 ppm and 320 ppm.
/// </summary>
internal static class CramerPolynomial
{
    /// <summary>c, m/s; t in °C, p in Pa, x_w and x_c mole fractions.</summary>
    public static double SpeedOfSound(
        double celsius,
        double pascals,
        double waterVapour,
        double carbonDioxide
    ) => Evaluate(SpeedCoefficients, celsius, pascals, waterVapour, carbonDioxide);

    /// <summary>γ, dimensionless; arguments as for the speed of sound.</summary>
    public static double HeatCapacityRatio(
        double celsius,
        double pascals,
        double waterVapour,
        double carbonDioxide
    ) => Evaluate(RatioCoefficients, celsius, pascals, waterVapour, carbonDioxide);

    // a0 to a15, in m/s, each per its own powers of °C, Pa and mole fractions.
    private static ReadOnlySpan<double> SpeedCoefficients =>
        [
            331.5024,
            0.603055,
            -0.000528,
            51.471935,
            0.1495874,
            -0.000782,
            -1.82e-7,
            3.73e-8,
            -2.93e-10,
            -85.20931,
            -0.228525,
            5.91e-5,
            -2.835149,
            -2.15e-13,
            29.179762,
            0.000486,
        ];

    // a0 to a15, dimensionless, each per its own powers of °C, Pa and mole fractions.
    private static ReadOnlySpan<double> RatioCoefficients =>
        [
            1.400822,
            -1.75e-5,
            -1.73e-7,
            -0.0873629,
            -1.665e-4,
            -3.26e-6,
            2.047e-8,
            -1.26e-10,
            5.939e-14,
            -0.1199717,
            -8.693e-4,
            1.979e-6,
            -0.01104,
            -3.478e-16,
            0.0450616,
            1.82e-6,
        ];

    private static double Evaluate(ReadOnlySpan<double> a, double t, double p, double xw, double xc) =>
        QuadraticIn(t, a[0], a[1], a[2])
        + (QuadraticIn(t, a[3], a[4], a[5]) * xw)
        + (QuadraticIn(t, a[6], a[7], a[8]) * p)
        + (QuadraticIn(t, a[9], a[10], a[11]) * xc)
        + (a[12] * xw * xw)
        + (a[13] * p * p)
        + (a[14] * xc * xc)
        + (a[15] * xw * p * xc);

    private static double QuadraticIn(double t, double constant, double linear, double square) =>
        constant + (t * (linear + (t * square)));
}
