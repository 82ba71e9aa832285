namespace AirColumn;

/// <summary>
/// Density of humid air, CIPM-2007 (picard2008), as IEC 61094-2:2009, Annex F (iec61094-2) uses it. Carbon dioxide is
/// the mole fraction in the dry part of the air and stands in the place of oxygen, as in air that has been breathed.
/// </summary>
internal static class HumidAirDensity
{
    // Molar mass of dry air over the molar gas constant, at x_c = 0.0004, and its change with x_c, which is the
    // molar mass of carbon over the gas constant (picard2008, eq. 3 and 5).
    private const double DryAir = 3.483740e-3; // kg·K/J
    private const double CarbonForOxygen = 1.4446e-3; // kg·K/J
    private const double ReferenceCarbonDioxide = 0.0004; // 1

    // 1 − M_v/M_a, water being lighter than air (picard2008, eq. 4 and 5).
    private const double WaterForAir = 0.3780; // 1

    // Coefficients of the compressibility factor (picard2008, A1.3).
    private const double A0 = 1.58123e-6; // K/Pa
    private const double A1 = -2.9331e-8; // 1/Pa
    private const double A2 = 1.1043e-10; // 1/(K·Pa)
    private const double B0 = 5.707e-6; // K/Pa
    private const double B1 = -2.051e-8; // 1/Pa
    private const double C0 = 1.9898e-4; // K/Pa
    private const double C1 = -2.376e-6; // 1/Pa
    private const double D = 1.83e-11; // K²/Pa²
    private const double E = -0.765e-8; // K²/Pa²

    /// <summary>ρ, kg/m³.</summary>
    public static double KilogramsPerCubicMetre(
        double celsius,
        double pascals,
        double waterVapour,
        double carbonDioxide
    ) =>
        (DryAir + (CarbonForOxygen * (carbonDioxide - ReferenceCarbonDioxide)))
        * (1 - (WaterForAir * waterVapour))
        * pascals
        / (Compressibility(celsius, pascals, waterVapour) * Celsius.ToKelvin(celsius));

    /// <summary>Z, by how much the volume differs from that of an ideal gas, dimensionless.</summary>
    public static double Compressibility(double celsius, double pascals, double waterVapour)
    {
        var (t, x) = (celsius, waterVapour);
        var pressureOverTemperature = pascals / Celsius.ToKelvin(t);
        var first = A0 + (A1 * t) + (A2 * t * t) + ((B0 + (B1 * t)) * x) + ((C0 + (C1 * t)) * x * x);
        var second = D + (E * x * x);
        return 1 + (pressureOverTemperature * ((pressureOverTemperature * second) - first));
    }
}
