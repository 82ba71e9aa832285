using UnitsNet;

namespace AirColumn.Tests.Gases;

/// <summary>Short ways to air states for the tests of this folder.</summary>
internal static class States
{
    public static Air AirAt(
        double celsius,
        double percent,
        double kilopascals = 101.325,
        double carbonDioxide = 0.0004
    ) =>
        Air.At(
            Temperature.FromDegreesCelsius(celsius),
            RelativeHumidity.FromPercent(percent),
            Pressure.FromKilopascals(kilopascals),
            Ratio.FromDecimalFractions(carbonDioxide)
        );

    /// <summary>Spreads a generated number evenly over a range, both ends included.</summary>
    public static double Between(this ushort generated, double min, double max) =>
        min + ((max - min) * generated / ushort.MaxValue);

    /// <summary>Mole fraction of water vapour after the shape of the published fits, for choosing states.</summary>
    public static double MaxPercentBelow(double waterVapour, double celsius, double kilopascals) =>
        Math.Min(100, 100 * waterVapour * kilopascals * 1000 / SaturationPascals(celsius));

    // Magnus form (common practice), raised by 1 % so that a state chosen with it stays on the dry side of the limit.
    private static double SaturationPascals(double celsius) =>
        1.01 * 611.2 * Math.Exp(17.62 * celsius / (243.12 + celsius));
}
