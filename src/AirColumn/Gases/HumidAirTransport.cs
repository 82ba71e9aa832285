namespace AirColumn;

/// <summary>
/// Viscosity, conductivity and heat capacity of humid air, IEC 61094-2:2009, Annex F (iec61094-2). T in K, x the mole
/// fraction of water vapour. None of the three knows of pressure or of carbon dioxide.
/// </summary>
/// <remarks>
/// Against the reference equations for dry air (lemmon2004) between 0 and 50 °C the viscosity is 0.2 to 0.4 % low and
/// the conductivity 2 to 3 % low, which is worth about 0.4 % of the wall losses. The formulas stand as the standard
/// prints them.
/// </remarks>
internal static class HumidAirTransport
{
    // The standard's formulas for κ and Cp are in calories; this is its factor, which it gives as 4186.8 per kcal.
    private const double JoulesPerKilocalorie = 4186.8; // J/kcal, International Table calorie

    /// <summary>μ, Pa·s.</summary>
    public static double Viscosity(double kelvin, double waterVapour)
    {
        var (t, x) = (kelvin, waterVapour);
        return 1e-8 // Pa·s
            * (84.986 + (7.0 * t) + ((113.157 - t) * x) - (3.7501e-3 * t * t) - (100.015 * x * x));
    }

    /// <summary>κ, W/(m·K).</summary>
    public static double Conductivity(double kelvin, double waterVapour)
    {
        var (t, x) = (kelvin, waterVapour);
        return JoulesPerKilocalorie
            * 1e-8 // kcal/(m·s·K)
            * (60.054 + (1.846 * t) + (2.06e-6 * t * t) + ((40 - (1.775e-4 * t)) * x));
    }

    /// <summary>Cp, J/(kg·K).</summary>
    public static double HeatCapacity(double kelvin, double waterVapour)
    {
        var (t, x) = (kelvin, waterVapour);
        var dry = 0.251625 + (t * (-9.2525e-5 + (t * (2.1334e-7 - (t * 1.0043e-10)))));
        var linear = 0.12477 + (t * (-2.283e-5 + (t * 1.267e-7)));
        var square = 0.01116 + (t * (4.61e-6 + (t * 1.74e-8)));
        return JoulesPerKilocalorie * (dry + (x * (linear + (x * square)))); // kcal/(kg·K) inside
    }
}
