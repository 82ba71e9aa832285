namespace AirColumn.Tests.Gases;

/// <summary>
/// Humid air as a mixture of ideal gases, independent of the fits under test: heat capacities and molar masses of
/// mcbride2002 (200 to 1000 K), dry composition of picard2008 (table 1; oxygen and carbon dioxide together 0.20979).
/// An ideal gas lacks the forces between molecules, worth some 0.02 % of c and 0.1 to 0.2 % of γ at one atmosphere.
/// </summary>
internal sealed class IdealGasMixture
{
    private const double GasConstant = 8.314462618; // J/(mol·K), exact, SI 2019

    // Molar mass in kg/mol, and a1 to a7 of Cp/R = Σ a_i·T^(i−3).
    private static readonly Species Nitrogen = new(
        28.0134e-3,
        [
            2.210371497e4,
            -3.818461820e2,
            6.082738360,
            -8.530914410e-3,
            1.384646189e-5,
            -9.625793620e-9,
            2.519705809e-12,
        ]
    );
    private static readonly Species Oxygen = new(
        31.9988e-3,
        [
            -3.425563420e4,
            4.847000970e2,
            1.119010961,
            4.293889240e-3,
            -6.836300520e-7,
            -2.023372700e-9,
            1.039040018e-12,
        ]
    );
    private static readonly Species Argon = new(39.948e-3, [0, 0, 2.5, 0, 0, 0, 0]);
    private static readonly Species CarbonDioxide = new(
        44.0095e-3,
        [
            4.943650540e4,
            -6.264116010e2,
            5.301725240,
            2.503813816e-3,
            -2.127308728e-7,
            -7.689988780e-10,
            2.849677801e-13,
        ]
    );
    private static readonly Species Water = new(
        18.01528e-3,
        [
            -3.947960830e4,
            5.755731020e2,
            9.317826530e-1,
            7.222712860e-3,
            -7.342557370e-6,
            4.955043490e-9,
            -1.336933246e-12,
        ]
    );

    public IdealGasMixture(double celsius, double waterVapour, double carbonDioxide)
    {
        const double argon = 0.009332;
        const double oxygenWithCarbonDioxide = 0.20979;
        const double nitrogenWithTraces = 1 - argon - oxygenWithCarbonDioxide;
        var dry = 1 - waterVapour;
        (Species Species, double Fraction)[] parts =
        [
            (Nitrogen, nitrogenWithTraces * dry),
            (Oxygen, (oxygenWithCarbonDioxide - carbonDioxide) * dry),
            (Argon, argon * dry),
            (CarbonDioxide, carbonDioxide * dry),
            (Water, waterVapour),
        ];
        var kelvin = celsius + 273.15;
        var molarMass = parts.Sum(part => part.Fraction * part.Species.MolarMass);
        var heatCapacity = parts.Sum(part => part.Fraction * part.Species.HeatCapacity(kelvin));

        HeatCapacityRatio = heatCapacity / (heatCapacity - 1);
        HeatCapacity = heatCapacity * GasConstant / molarMass;
        SpeedOfSound = Math.Sqrt(HeatCapacityRatio * GasConstant * kelvin / molarMass);
        DensityPerPascal = molarMass / (GasConstant * kelvin);
    }

    public double SpeedOfSound { get; }

    public double HeatCapacityRatio { get; }

    public double HeatCapacity { get; }

    public double DensityPerPascal { get; }

    private sealed record Species(double MolarMass, double[] Coefficients)
    {
        /// <summary>Cp/R, dimensionless.</summary>
        public double HeatCapacity(double kelvin) =>
            Coefficients.Select((a, index) => a * Math.Pow(kelvin, index - 2)).Sum();
    }
}
