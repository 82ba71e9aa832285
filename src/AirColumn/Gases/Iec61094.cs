using System.Collections.ObjectModel;

namespace AirColumn;

/// <summary>
/// The model of IEC 61094-2:2009, Annex F (iec61094-2): which formula gives which constant, and where its sources
/// stand behind it.
/// </summary>
internal static class Iec61094
{
    private const string Cramer = "Cramer (1993)";
    private const string AnnexF = "IEC 61094-2:2009, Annex F";

    private const string SpeedUncertain =
        "the 300 ppm uncertainty of the speed of sound and the 320 ppm of the heat capacity ratio no longer hold";
    private const string Extrapolated = "density, viscosity, conductivity and heat capacity are extrapolated";
    private const string CarbonDioxideUnknown =
        SpeedUncertain + ", and viscosity, conductivity and heat capacity take no account of carbon dioxide";

    private static StatedRange[] TemperatureRanges { get; } =
    [
        new("Temperature", 0, 30, "°C", Cramer, SpeedUncertain),
        new("Temperature", 15, 27, "°C", AnnexF, Extrapolated),
    ];

    private static StatedRange[] PressureRanges { get; } =
    [
        new("Pressure", 75, 102, "kPa", Cramer, SpeedUncertain),
        new("Pressure", 60, 110, "kPa", AnnexF, Extrapolated),
    ];

    private static StatedRange[] HumidityRanges { get; } =
    [new("Relative humidity", 10, 90, "%", AnnexF, Extrapolated)];

    private static StatedRange[] WaterVapourRanges { get; } =
    [new("Mole fraction of water vapour", 0, 6, "%", Cramer, SpeedUncertain)];

    private static StatedRange[] CarbonDioxideRanges { get; } =
    [new("Mole fraction of carbon dioxide", 0, 1, "%", Cramer, CarbonDioxideUnknown)];

    public static GasConstants Evaluate(AirState state) =>
        Evaluate(
            state.Temperature.DegreesCelsius,
            state.Pressure.Pascals,
            state.WaterVapour,
            state.CarbonDioxide.DecimalFractions
        );

    public static GasConstants Evaluate(
        double celsius,
        double pascals,
        double waterVapour,
        double carbonDioxide
    )
    {
        var kelvin = Celsius.ToKelvin(celsius);
        return new(
            SpeedOfSound: CramerPolynomial.SpeedOfSound(celsius, pascals, waterVapour, carbonDioxide),
            Density: HumidAirDensity.KilogramsPerCubicMetre(celsius, pascals, waterVapour, carbonDioxide),
            Viscosity: HumidAirTransport.Viscosity(kelvin, waterVapour),
            Conductivity: HumidAirTransport.Conductivity(kelvin, waterVapour),
            HeatCapacity: HumidAirTransport.HeatCapacity(kelvin, waterVapour),
            HeatCapacityRatio: CramerPolynomial.HeatCapacityRatio(
                celsius,
                pascals,
                waterVapour,
                carbonDioxide
            )
        );
    }

    /// <summary>Whether the state is inside the range Cramer states for the speed of sound.</summary>
    public static bool Holds(AirState state) =>
        !Warnings(state).Any(warning => warning.Contains(Cramer, StringComparison.Ordinal));

    /// <summary>°C, Pa and the two mole fractions of the state in Cramer's range that is nearest in each of them.</summary>
    public static (double Celsius, double Pascals, double WaterVapour, double CarbonDioxide) Nearest(
        AirState state
    ) =>
        (
            TemperatureRanges[0].Nearest(state.Temperature.DegreesCelsius),
            1000 * PressureRanges[0].Nearest(state.Pressure.Kilopascals),
            WaterVapourRanges[0].Nearest(100 * state.WaterVapour) / 100,
            CarbonDioxideRanges[0].Nearest(state.CarbonDioxide.Percent) / 100
        );

    /// <summary>One sentence for each stated range the state is outside of.</summary>
    public static ReadOnlyCollection<string> Warnings(AirState state)
    {
        (StatedRange[] Ranges, double Value)[] checks =
        [
            (TemperatureRanges, state.Temperature.DegreesCelsius),
            (HumidityRanges, state.Humidity.Percent),
            (WaterVapourRanges, state.WaterVapour * 100),
            (PressureRanges, state.Pressure.Kilopascals),
            (CarbonDioxideRanges, state.CarbonDioxide.Percent),
        ];
        return checks
            .SelectMany(check => check.Ranges.Select(range => range.Warning(check.Value)))
            .OfType<string>()
            .ToList()
            .AsReadOnly();
    }
}
