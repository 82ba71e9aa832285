using static AirColumn.Tests.Gases.States;

namespace AirColumn.Tests.Gases;

/// <summary>How properties of single gases make those of a mixture, and how the mixture is joined to the standard.</summary>
public class MixtureRuleTests
{
    private const double R = 8.314462618;

    // Molar heat capacities at constant pressure, J/(mol·K), at 298.15 K and 400 K (NIST-JANAF tables, from memory), good
    // to the digits given.
    [Theory]
    [InlineData("nitrogen", 29.12, 29.25)]
    [InlineData("oxygen", 29.38, 30.11)]
    [InlineData("argon", 20.79, 20.79)]
    [InlineData("carbon dioxide", 37.13, 41.33)]
    [InlineData("water", 33.59, 34.26)]
    public void Heat_capacities_of_single_gases_are_those_of_the_tables(string gas, double room, double hot)
    {
        var species = gas switch
        {
            "nitrogen" => Species.Nitrogen,
            "oxygen" => Species.Oxygen,
            "argon" => Species.Argon,
            "carbon dioxide" => Species.CarbonDioxide,
            _ => Species.Water,
        };
        Near.Absolute(room, R * species.HeatCapacity(298.15), 0.02);
        Near.Absolute(hot, R * species.HeatCapacity(400), 0.02);
    }

    // Wilke's rule (wilke1950), in the form he gives: yᵢ of a gas is diluted by the others weighted by
    // φᵢⱼ = (1 + (μᵢ/μⱼ)^½·(Mⱼ/Mᵢ)^¼)²/(2√2·(1 + Mᵢ/Mⱼ)^½), which is 1 of a gas with itself.
    [Theory]
    [InlineData(290, 0.0, 0.05)]
    [InlineData(308, 0.05, 0.1)]
    [InlineData(320, 0.1, 0.02)]
    public void Mixtures_follow_Wilkes_rule(double kelvin, double vapour, double carbonDioxide)
    {
        double[] masses = [28.0134, 31.9988, 39.948, 44.0095, 18.01528];
        var pure = Enumerable.Range(0, 5).Select(i => CarbonDioxideTransport.Pure(i, kelvin)).ToArray();
        var mixture = new HumidAirComposition(vapour, carbonDioxide);
        var ordinary = new HumidAirComposition(vapour, 0.01);
        Near.Relative(
            Mixed(mixture, i => pure[i].Viscosity) / Mixed(ordinary, i => pure[i].Viscosity),
            CarbonDioxideTransport.ViscosityFactor(kelvin, mixture),
            1e-12
        );
        Near.Relative(
            Mixed(mixture, i => pure[i].Conductivity) / Mixed(ordinary, i => pure[i].Conductivity),
            CarbonDioxideTransport.ConductivityFactor(kelvin, mixture),
            1e-12
        );

        double Mixed(HumidAirComposition of, Func<int, double> property)
        {
            double[] y = [of.Nitrogen, of.Oxygen, of.Argon, of.CarbonDioxide, of.WaterVapour];
            Near.Relative(1, y.Sum(), 1e-12);
            return Enumerable
                .Range(0, 5)
                .Sum(i => y[i] * property(i) / Enumerable.Range(0, 5).Sum(j => y[j] * Phi(i, j)));
        }

        double Phi(int i, int j) =>
            Math.Pow(
                1 + Math.Sqrt(pure[i].Viscosity / pure[j].Viscosity) * Math.Pow(masses[j] / masses[i], 0.25),
                2
            ) / (2 * Math.Sqrt(2) * Math.Sqrt(1 + masses[i] / masses[j]));
    }

    // Outside the standard's range the mixture is scaled by what the two differ by at the nearest state inside it.
    [Theory]
    [InlineData(40, 20, 60, 0.03, 30, 75, 0.01)]
    [InlineData(-5, 50, 105, 0.02, 0, 102, 0.01)]
    [InlineData(45, 100, 101.325, 0.0004, 30, 101.325, 0.0004)] // wetter than 6 %
    public void Outside_its_range_the_standard_speaks_at_the_nearest_state(
        double celsius,
        double percent,
        double kilopascals,
        double carbonDioxide,
        double nearestCelsius,
        double nearestKilopascals,
        double nearestCarbonDioxide
    )
    {
        var air = AirAt(celsius, percent, kilopascals, carbonDioxide);
        var vapour = Math.Min(air.State!.WaterVapour, 0.06);
        var mixture = GasMixture.Evaluate(air.State);
        var pascals = 1000 * nearestKilopascals;
        var edge = GasMixture.Evaluate(nearestCelsius, pascals, vapour, nearestCarbonDioxide);
        var standard = Iec61094.Evaluate(nearestCelsius, pascals, vapour, nearestCarbonDioxide);
        Near.Relative(
            standard.SpeedOfSound / edge.SpeedOfSound,
            air.Constants.SpeedOfSound / mixture.SpeedOfSound,
            1e-12
        );
        Near.Relative(standard.Density / edge.Density, air.Constants.Density / mixture.Density, 1e-12);
        Near.Relative(
            standard.HeatCapacity / edge.HeatCapacity,
            air.Constants.HeatCapacity / mixture.HeatCapacity,
            1e-12
        );
        Near.Relative(
            standard.HeatCapacityRatio / edge.HeatCapacityRatio,
            air.Constants.HeatCapacityRatio / mixture.HeatCapacityRatio,
            1e-12
        );
    }

    // A step of a millionth of the quantity moves nothing by more than some millionths; the two models differ by up to a
    // hundred of them in speed and density, a thousand in heat capacity.
    [Theory]
    [InlineData(30 + 1e-6, 50, 101.325, 0.0004)]
    [InlineData(-1e-6, 50, 101.325, 0.0004)]
    [InlineData(20, 50, 102 + 1e-6, 0.0004)]
    [InlineData(20, 50, 75 - 1e-6, 0.0004)]
    [InlineData(20, 50, 101.325, 0.01 + 1e-8)]
    public void No_constant_jumps_where_the_mixture_takes_over(
        double celsius,
        double percent,
        double kilopascals,
        double carbonDioxide
    )
    {
        var outside = AirAt(celsius, percent, kilopascals, carbonDioxide);
        var inside = AirAt(
            Math.Clamp(celsius, 0, 30),
            percent,
            Math.Clamp(kilopascals, 75, 102),
            Math.Min(carbonDioxide, 0.01)
        );
        Assert.Equal(AirModel.GasMixture, outside.Model);
        Assert.Equal(AirModel.Iec61094, inside.Model);
        var (a, b) = (inside.Constants, outside.Constants);
        Near.Relative(a.SpeedOfSound, b.SpeedOfSound, 1e-7);
        Near.Relative(a.Density, b.Density, 1e-7);
        Near.Relative(a.Viscosity, b.Viscosity, 1e-7);
        Near.Relative(a.Conductivity, b.Conductivity, 1e-7);
        Near.Relative(a.HeatCapacity, b.HeatCapacity, 1e-7);
        Near.Relative(a.HeatCapacityRatio, b.HeatCapacityRatio, 1e-7);
    }
}
