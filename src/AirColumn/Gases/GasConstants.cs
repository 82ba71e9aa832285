namespace AirColumn;

/// <summary>What acoustics needs to know of a gas, as plain numbers in SI units.</summary>
/// <param name="SpeedOfSound">c, m/s, at zero frequency.</param>
/// <param name="Density">ρ, kg/m³.</param>
/// <param name="Viscosity">μ, dynamic (shear) viscosity, Pa·s.</param>
/// <param name="Conductivity">κ, thermal conductivity, W/(m·K).</param>
/// <param name="HeatCapacity">Cp, at constant pressure, J/(kg·K).</param>
/// <param name="HeatCapacityRatio">γ = Cp/Cv, dimensionless.</param>
internal readonly record struct GasConstants(
    double SpeedOfSound,
    double Density,
    double Viscosity,
    double Conductivity,
    double HeatCapacity,
    double HeatCapacityRatio
)
{
    /// <summary>The same gas at walls that take so many times as much from a wave in it: friction and conduction go with the root of these.</summary>
    public GasConstants AtWalls(double lossFactor) =>
        lossFactor == 1
            ? this
            : this with
            {
                Viscosity = lossFactor * lossFactor * Viscosity,
                Conductivity = lossFactor * lossFactor * Conductivity,
            };

    /// <summary>κ/(ρ·Cp), m²/s.</summary>
    public double ThermalDiffusivity => Conductivity / (Density * HeatCapacity);

    /// <summary>μ·Cp/κ, dimensionless.</summary>
    public double PrandtlNumber => Viscosity * HeatCapacity / Conductivity;
}
