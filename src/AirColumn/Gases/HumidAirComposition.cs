namespace AirColumn;

/// <summary>
/// Mole fractions of the gases in humid air. The dry part is that of picard2008, table 1: carbon dioxide stands in the
/// place of oxygen, as in air that has been breathed, and traces count as nitrogen.
/// </summary>
internal readonly record struct HumidAirComposition(double WaterVapour, double DryCarbonDioxide)
{
    private const double DryArgon = 0.009332;
    private const double DryOxygenWithCarbonDioxide = 0.20979;

    private double Dry => 1 - WaterVapour;

    public double CarbonDioxide => DryCarbonDioxide * Dry;

    public double Argon => DryArgon * Dry;

    public double Oxygen => (DryOxygenWithCarbonDioxide - DryCarbonDioxide) * Dry;

    public double Nitrogen => (1 - DryArgon - DryOxygenWithCarbonDioxide) * Dry;

    /// <summary>Σ xᵢ·propertyᵢ.</summary>
    public double Mean(Func<Species, double> property) =>
        Nitrogen * property(Species.Nitrogen)
        + Oxygen * property(Species.Oxygen)
        + Argon * property(Species.Argon)
        + CarbonDioxide * property(Species.CarbonDioxide)
        + WaterVapour * property(Species.Water);
}
