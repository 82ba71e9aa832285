namespace AirColumn;

/// <summary>The fits take t in °C in some terms and T in K in others; this joins the two.</summary>
internal static class Celsius
{
    private const double ZeroInKelvin = 273.15; // exact, definition of the degree Celsius

    public static double ToKelvin(double celsius) => celsius + ZeroInKelvin;
}
