using System.Globalization;
using UnitsNet;

namespace AirColumn.Accuracy;

/// <summary>The gas: the standard's printed values, and the mixture that carries on beyond it.</summary>
internal static class AirChapter
{
    public static Chapter Make()
    {
        var grid = Grid().ToList();
        return new Chapter(
            "Air",
            "The formulas of the standard are used from 0 to 30 °C and 75 to 102 kPa, with up to 6 % water vapour and 1 % carbon dioxide; "
                + "their speed of sound is good to 300 ppm. The standard itself states them for 15 to 27 °C, 60 to 110 kPa and 10 to 90 % humidity; "
                + "outside this range of the standard there is a warning. Beyond, up to −20 to 50 °C, 50 to 110 kPa and 10 % carbon dioxide, air is computed as a "
                + "mixture of gases, joined "
                + "without a jump. Up to 1 % carbon dioxide its viscosity and conductivity are the values of the standard, which ignores carbon "
                + "dioxide; above 1 % they follow a mixture rule. Beyond these limits a state is refused.",
            [
                new Quantity(
                    "Printed digits of the standard, in units of the last digit",
                    "IEC 61094-2 Table F.1 [iec61094-2]",
                    "both states, 5 quantities each",
                    "",
                    [.. TableF1()],
                    0.5
                ),
                Against(grid, "speed of sound", gas => gas.SpeedOfSound, 300e-6),
                Against(grid, "density", gas => gas.Density, 3e-3),
                Against(grid, "heat capacity ratio", gas => gas.HeatCapacityRatio, 3e-3),
                Against(grid, "heat capacity", gas => gas.HeatCapacity, 3e-3),
            ],
            []
        );
    }

    private static IEnumerable<double> TableF1()
    {
        (double Celsius, double Kilopascals, double Percent, string[] Printed)[] states =
        [
            (23, 101.325, 50, ["1.1860848", "345.86652", "1.4007573", "1.826566e-5", "2.115317e-5"]),
            (20, 80, 65, ["0.9441589", "344.38267", "1.4000266", "1.811295e-5", "2.627024e-5"]),
        ];
        foreach (var (celsius, kilopascals, percent, printed) in states)
        {
            var gas = State(celsius, kilopascals, percent, 400).Of(AirModel.Iec61094);
            double[] ours =
            [
                gas.Density,
                gas.SpeedOfSound,
                gas.HeatCapacityRatio,
                gas.Viscosity,
                gas.ThermalDiffusivity,
            ];
            for (var i = 0; i < ours.Length; i++)
            {
                var value = double.Parse(printed[i], CultureInfo.InvariantCulture);
                var mantissa = printed[i].Split('e')[0];
                var exponent = printed[i].Contains('e', StringComparison.Ordinal) ? -5 : 0;
                var digits = mantissa.Length - mantissa.IndexOf('.', StringComparison.Ordinal) - 1;
                yield return (ours[i] - value) / Math.Pow(10, exponent - digits);
            }
        }
    }

    private static Quantity Against(
        List<AirState> grid,
        string name,
        Func<GasConstants, double> property,
        double bound
    ) =>
        new(
            $"Mixture of gases: {name}, relative",
            "the standard [cramer1993, picard2008, iec61094-2]",
            "the whole range of Cramer's formula",
            "",
            [
                .. grid.Select(state =>
                    property(state.Of(AirModel.GasMixture)) / property(state.Of(AirModel.Iec61094)) - 1
                ),
            ],
            bound
        );

    private static IEnumerable<AirState> Grid()
    {
        for (var celsius = 0; celsius <= 30; celsius += 3)
        {
            for (var kilopascals = 75; kilopascals <= 102; kilopascals += 9)
            {
                for (var percent = 0; percent <= 100; percent += 25)
                {
                    foreach (var ppm in new[] { 0, 400, 2000, 5000, 10_000 })
                    {
                        yield return State(celsius, kilopascals, percent, ppm);
                    }
                }
            }
        }
    }

    private static AirState State(double celsius, double kilopascals, double percent, double ppm) =>
        new(
            Temperature.FromDegreesCelsius(celsius),
            RelativeHumidity.FromPercent(percent),
            Pressure.FromKilopascals(kilopascals),
            Ratio.FromPartsPerMillion(ppm)
        );

    private static GasConstants Of(this AirState state, AirModel model) => Air.At(state, model).Constants;
}
