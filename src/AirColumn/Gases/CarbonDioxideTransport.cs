namespace AirColumn;

/// <summary>
/// How carbon dioxide in the place of oxygen changes viscosity and conductivity of humid air: the quotient of Wilke's
/// mixture rule (wilke1950; mason1958 for the conductivity) with all of it and with 1 %, where the range of the standard's
/// formulas ends, which take no account of it.
/// </summary>
/// <remarks>
/// The pure gases follow Sutherland's law. Its constants are from memory; they hold to 2 % against handbook values at 300 K,
/// and enter through a quotient only, 3 to 5 % from 1 at the most.
/// </remarks>
internal static class CarbonDioxideTransport
{
    private const double CountedFrom = 0.01;

    private static Sutherland[] Viscosities { get; } =
    [
        new(1.663e-5, 107), // nitrogen, Pa·s and K
        new(1.919e-5, 139), // oxygen
        new(2.125e-5, 114), // argon
        new(1.370e-5, 222), // carbon dioxide
        new(0.8857e-5, 961), // water vapour
    ];

    private static Sutherland[] Conductivities { get; } =
    [
        new(0.0242, 150), // nitrogen, W/(m·K) and K
        new(0.0244, 240), // oxygen
        new(0.0163, 170), // argon
        new(0.0146, 1800), // carbon dioxide
        new(0.0165, 1800), // water vapour
    ];

    private static double[] MolarMasses { get; } =
    [
        Species.Nitrogen.MolarMass,
        Species.Oxygen.MolarMass,
        Species.Argon.MolarMass,
        Species.CarbonDioxide.MolarMass,
        Species.Water.MolarMass,
    ];

    public static double ViscosityFactor(double kelvin, in HumidAirComposition composition) =>
        Factor(Viscosities, kelvin, composition);

    public static double ConductivityFactor(double kelvin, in HumidAirComposition composition) =>
        Factor(Conductivities, kelvin, composition);

    /// <summary>One of the pure gases: nitrogen, oxygen, argon, carbon dioxide, water vapour.</summary>
    internal static (double Viscosity, double Conductivity) Pure(int gas, double kelvin) =>
        (Viscosities[gas].At(kelvin), Conductivities[gas].At(kelvin));

    private static double Factor(Sutherland[] property, double kelvin, in HumidAirComposition composition)
    {
        if (composition.DryCarbonDioxide <= CountedFrom)
        {
            return 1;
        }

        var plain = composition with { DryCarbonDioxide = CountedFrom };
        return Mixture(property, kelvin, composition) / Mixture(property, kelvin, plain);
    }

    // Σ xᵢYᵢ/Σⱼ xⱼφᵢⱼ with φᵢⱼ = [1 + √(μᵢ/μⱼ)(Mⱼ/Mᵢ)^¼]²/√(8(1 + Mᵢ/Mⱼ)).
    private static double Mixture(Sutherland[] property, double kelvin, in HumidAirComposition composition)
    {
        ReadOnlySpan<double> x =
        [
            composition.Nitrogen,
            composition.Oxygen,
            composition.Argon,
            composition.CarbonDioxide,
            composition.WaterVapour,
        ];
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            var share = 0.0;
            for (var j = 0; j < x.Length; j++)
            {
                var mass = MolarMasses[j] / MolarMasses[i];
                var viscosity = Viscosities[i].At(kelvin) / Viscosities[j].At(kelvin);
                var root = 1 + Math.Sqrt(viscosity * Math.Sqrt(mass));
                share += x[j] * root * root / Math.Sqrt(8 * (1 + 1 / mass));
            }

            sum += x[i] * property[i].At(kelvin) / share;
        }

        return sum;
    }

    /// <summary>y = y₀·(T/T₀)^1.5·(T₀ + S)/(T + S), T₀ = 273.15 K.</summary>
    private readonly record struct Sutherland(double AtIcePoint, double Constant)
    {
        private const double IcePoint = 273.15;

        public double At(double kelvin) =>
            AtIcePoint * Math.Pow(kelvin / IcePoint, 1.5) * (IcePoint + Constant) / (kelvin + Constant);
    }
}
