using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace AirColumn.Tables;

/// <summary>
/// The open end of an infinitely thin pipe in free air: the integrals of levine1948, as the header of radiation-unflanged.csv has them,
/// by Gauss-Legendre quadrature. Writes UnflangedTable.cs:
/// dotnet run -c Release --project benchmarks/AirColumn.Tables -- unflanged --write
/// </summary>
internal static class UnflangedEnd
{
    private const string Source = "Radiation/UnflangedTable.cs";

    public static IEnumerable<Table> Tables { get; } =
    [
        new(
            "unflanged",
            Source,
            ["LogReflection", "EndCorrection"],
            EndNodes.Count,
            i => [LogReflection(EndNodes.Ka(i)), EndCorrection(EndNodes.Ka(i))],
            "G14",
            2e-12
        ),
        new("unflanged", Source, ["LowFrequencyEndCorrection"], 1, _ => [EndCorrection(0)], "G14", 2e-12),
    ];

    /// <summary>ln|R| = −(2ka/π)·∫₀^ka atan(−J₁/N₁)/(x·√(k²a² − x²)) dx.</summary>
    public static double LogReflection(double ka) =>
        -2 * ka / Math.PI * Near(ka, (j, n) => Math.Atan2(j, -n));

    /// <summary>
    /// l/a = (1/π)·{∫₀^ka ln[πJ₁√(J₁² + N₁²)]/(x·√(k²a² − x²)) dx + ∫₀^∞ ln[1/(2I₁K₁)]/(x·√(x² + k²a²)) dx}.
    /// </summary>
    public static double EndCorrection(double ka)
    {
        var near = ka == 0 ? 0 : Near(ka, (j, n) => Math.Log(Math.PI * j * Math.Sqrt(j * j + n * n)));
        return (near + Far(ka)) / Math.PI;
    }

    // x = ka·sin θ takes the root away, θ = u³ the logarithm at 0.
    private static double Near(double ka, Func<double, double, double> of) =>
        Panels(
            0,
            Math.Cbrt(Math.PI / 2),
            16,
            u =>
            {
                var x = ka * Math.Sin(u * u * u);
                return 3 * u * u / x * of(SpecialFunctions.BesselJ(1, x), SpecialFunctions.BesselY(1, x));
            }
        );

    // x = eᵘ.
    private static double Far(double ka) =>
        Panels(
            -32,
            40,
            144,
            u =>
            {
                var x = Math.Exp(u);
                return -LogTwiceI1K1(x) / Math.Sqrt(x * x + ka * ka);
            }
        );

    // ln(2·I₁·K₁), by its series where rounding would show (DLMF 10.25.2, 10.31.1) and for large x (DLMF 10.40.6).
    private static double LogTwiceI1K1(double x)
    {
        var y = 1 / (4 * x * x);
        return x switch
        {
            < 1e-4 => x * x / 2 * (Math.Log(x / 2) + Constants.EulerMascheroni - 0.25),
            > 300 => -Math.Log(x) + double.LogP1(-1.5 * y * (1 + 3.75 * y)),
            _ => Math.Log(2 * SpecialFunctions.BesselIScaled(1, x) * SpecialFunctions.BesselKScaled(1, x)),
        };
    }

    private static double Panels(double from, double to, int count, Func<double, double> f)
    {
        var width = (to - from) / count;
        return Enumerable
            .Range(0, count)
            .Sum(i => GaussLegendreRule.Integrate(f, from + i * width, from + (i + 1) * width, 20));
    }
}
