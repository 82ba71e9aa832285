namespace AirColumn;

/// <summary>
/// How much water the air holds: IEC 61094-2:2009, Annex F (iec61094-2), which takes these formulas from CIPM-2007
/// (picard2008, appendix A1). Below 0 °C the relative humidity is the one over liquid water, not over ice.
/// </summary>
internal static class WaterVapour
{
    // ln(p_sv/Pa) = A·T² + B·T + C + D/T (picard2008, A1.1).
    private const double A = 1.2378847e-5; // 1/K²
    private const double B = -1.9121316e-2; // 1/K
    private const double C = 33.93711047; // 1
    private const double D = -6343.1645; // K

    // f = α + β·p + γ·t² (picard2008, A1.2).
    private const double Alpha = 1.00062; // 1
    private const double Beta = 3.14e-8; // 1/Pa
    private const double Gamma = 5.6e-7; // 1/K²

    /// <summary>p_sv, pressure of saturated vapour over liquid water, Pa.</summary>
    public static double SaturationPressure(double celsius)
    {
        var kelvin = Celsius.ToKelvin(celsius);
        return Math.Exp((A * kelvin * kelvin) + (B * kelvin) + C + (D / kelvin));
    }

    /// <summary>f, by how much air holds more vapour than empty space does (about 1.004), dimensionless.</summary>
    public static double EnhancementFactor(double celsius, double pascals) =>
        Alpha + (Beta * pascals) + (Gamma * celsius * celsius);

    /// <summary>x_w, mole fraction of water vapour in the humid air, for a relative humidity of 0 to 1.</summary>
    public static double MoleFraction(double celsius, double relativeHumidity, double pascals) =>
        relativeHumidity * EnhancementFactor(celsius, pascals) * SaturationPressure(celsius) / pascals;
}
