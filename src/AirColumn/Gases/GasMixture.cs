namespace AirColumn;

/// <summary>
/// Humid air as a mixture of gases whose heat capacities and molar masses are known (mcbride2002), with the second virial
/// coefficients of its pairs for what an ideal gas lacks. No fit to air as a whole is in it, so it carries on where such
/// fits end.
/// </summary>
/// <remarks>
/// The speed of sound is that of zero frequency, c² = (γ₀RT/M)·[1 + (2p/RT)(B + (γ₀−1)·TB' + (γ₀−1)²/(2γ₀)·T²B'')]
/// (cramer1993, after hirschfelder1954). Viscosity and conductivity are those of IEC 61094-2 up to 1 % of carbon dioxide;
/// beyond, they change as the mixture rule says (<see cref="CarbonDioxideTransport"/>).
/// </remarks>
internal static class GasMixture
{
    public const double MolarGasConstant = 8.314462618; // J/(mol·K), exact, SI 2019

    public static GasConstants Evaluate(AirState state) =>
        Evaluate(
            state.Temperature.DegreesCelsius,
            state.Pressure.Pascals,
            state.WaterVapour,
            state.CarbonDioxide.DecimalFractions
        );

    /// <summary>
    /// The mixture scaled so that it joins the standard's values at the edge of their range (<see cref="Iec61094"/>): by
    /// their ratio at the nearest state inside. Nothing jumps where one model takes over from the other.
    /// </summary>
    public static GasConstants FromTheEdge(AirState state)
    {
        var here = Evaluate(state);
        var (celsius, pascals, waterVapour, carbonDioxide) = Iec61094.Nearest(state);
        var edge = Evaluate(celsius, pascals, waterVapour, carbonDioxide);
        var standard = Iec61094.Evaluate(celsius, pascals, waterVapour, carbonDioxide);
        return here with
        {
            SpeedOfSound = here.SpeedOfSound * standard.SpeedOfSound / edge.SpeedOfSound,
            Density = here.Density * standard.Density / edge.Density,
            HeatCapacity = here.HeatCapacity * standard.HeatCapacity / edge.HeatCapacity,
            HeatCapacityRatio = here.HeatCapacityRatio * standard.HeatCapacityRatio / edge.HeatCapacityRatio,
        };
    }

    public static GasConstants Evaluate(
        double celsius,
        double pascals,
        double waterVapour,
        double carbonDioxide
    )
    {
        var kelvin = Celsius.ToKelvin(celsius);
        var composition = new HumidAirComposition(waterVapour, carbonDioxide);
        var molarMass = composition.Mean(species => species.MolarMass);
        var ideal = composition.Mean(species => species.HeatCapacity(kelvin)); // Cp/R
        var ratio = ideal / (ideal - 1);

        var (b, first, second) = Virial(composition, kelvin);
        var density = pascals / (MolarGasConstant * kelvin); // of molecules, as an ideal gas, mol/m³
        var real = 1 + 2 * density * (b + (ratio - 1) * (first + (ratio - 1) / (2 * ratio) * second));
        var constantPressure = ideal - density * second;
        var constantVolume = ideal - 1 - density * (2 * first + second);
        return new(
            SpeedOfSound: Math.Sqrt(ratio * MolarGasConstant * kelvin / molarMass * real),
            Density: molarMass * density / (1 + b * density),
            Viscosity: HumidAirTransport.Viscosity(kelvin, waterVapour)
                * CarbonDioxideTransport.ViscosityFactor(kelvin, composition),
            Conductivity: HumidAirTransport.Conductivity(kelvin, waterVapour)
                * CarbonDioxideTransport.ConductivityFactor(kelvin, composition),
            HeatCapacity: constantPressure * MolarGasConstant / molarMass,
            HeatCapacityRatio: constantPressure / constantVolume
        );
    }

    // Σ xᵢxⱼBᵢⱼ, nitrogen, oxygen and argon taken as one gas.
    private static Virial Virial(in HumidAirComposition composition, double kelvin)
    {
        var (water, carbon) = (composition.WaterVapour, composition.CarbonDioxide);
        var air = 1 - water - carbon;
        return air * air * AirColumn.Virial.AirAir(kelvin)
            + 2 * air * water * AirColumn.Virial.AirWater(kelvin)
            + water * water * AirColumn.Virial.WaterWater(kelvin)
            + 2
                * air
                * carbon
                * AirColumn.Virial.Between(CriticalPoint.Air, CriticalPoint.CarbonDioxide, kelvin)
            + 2
                * water
                * carbon
                * AirColumn.Virial.Between(CriticalPoint.Water, CriticalPoint.CarbonDioxide, kelvin)
            + carbon
                * carbon
                * AirColumn.Virial.Between(CriticalPoint.CarbonDioxide, CriticalPoint.CarbonDioxide, kelvin);
    }
}
