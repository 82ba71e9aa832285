using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// The acoustic constants of air: speed of sound, density, viscosity, conductivity and heat capacities, either computed
/// from a state or given directly. Immutable and safe to share between threads. Two airs are equal when their constants, state and model are equal.
/// </summary>
[JsonConverter(typeof(JsonAnswerConverter<Air>))]
public sealed class Air : IEquatable<Air>, IJsonAnswer
{
    private const double MaxHeatCapacityRatio = 2; // a monatomic gas has 5/3, and no gas more than a little above it

    private Air(GasConstants constants, AirModel model, AirState? state, IReadOnlyList<string> warnings)
    {
        Constants = constants;
        Model = model;
        State = state;
        Warnings = warnings;
    }

    /// <summary>The model that gave the constants.</summary>
    public AirModel Model { get; }

    /// <summary>The state the constants were computed for; null if they were given directly.</summary>
    public AirState? State { get; }

    /// <summary>
    /// True if the state is inside every range stated by the model's sources; then <see cref="Warnings"/> is empty. Constants given directly
    /// have no such range and count as inside.
    /// </summary>
    public bool IsInsideStatedRange => Warnings.Count == 0;

    /// <summary>
    /// A plain sentence for each stated range that the state is outside of. It names the quantity, its value, the range, the source of the
    /// range and the claim that no longer holds.
    /// </summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>c, speed of sound at low frequency, in m/s.</summary>
    public Speed SpeedOfSound => Speed.FromMetersPerSecond(Constants.SpeedOfSound);

    /// <summary>ρ, density, in kg/m³.</summary>
    public Density Density => Density.FromKilogramsPerCubicMeter(Constants.Density);

    /// <summary>μ, dynamic (shear) viscosity, in Pa·s.</summary>
    public DynamicViscosity DynamicViscosity => DynamicViscosity.FromPascalSeconds(Constants.Viscosity);

    /// <summary>κ, thermal conductivity, in W/(m·K).</summary>
    public ThermalConductivity ThermalConductivity =>
        ThermalConductivity.FromWattsPerMeterKelvin(Constants.Conductivity);

    /// <summary>
    /// Cp, heat capacity per mass at constant pressure, in J/(kg·K). UnitsNet has no type of that name;
    /// <see cref="SpecificEntropy"/> is its type for the unit.
    /// </summary>
    public SpecificEntropy SpecificHeatCapacity =>
        SpecificEntropy.FromJoulesPerKilogramKelvin(Constants.HeatCapacity);

    /// <summary>γ = Cp/Cv, dimensionless.</summary>
    public double HeatCapacityRatio => Constants.HeatCapacityRatio;

    /// <summary>
    /// κ/(ρ·Cp), in m²/s. UnitsNet has no type of that name; <see cref="KinematicViscosity"/>, the diffusivity of
    /// momentum, is its type for the unit.
    /// </summary>
    public KinematicViscosity ThermalDiffusivity =>
        KinematicViscosity.FromSquareMetersPerSecond(Constants.ThermalDiffusivity);

    /// <summary>μ·Cp/κ, dimensionless: about 0.72 in air.</summary>
    public double PrandtlNumber => Constants.PrandtlNumber;

    internal GasConstants Constants { get; }

    /// <summary>Air of a given temperature and humidity.</summary>
    /// <param name="temperature">Temperature, −20 °C to 50 °C.</param>
    /// <param name="humidity">Relative humidity, 0 % to 100 %, with respect to liquid water.</param>
    /// <param name="pressure">Static pressure, 50 kPa to 110 kPa. Default: 101.325 kPa.</param>
    /// <param name="carbonDioxide">
    /// Mole fraction of carbon dioxide in the dry part of the air, 0 to 10 %. Default: 400 ppm.
    /// </param>
    /// <returns>The air, with <see cref="Warnings"/> if the state is outside the model's stated ranges.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A value is outside its range, or the air would hold more than 13 % water vapour by mole.
    /// </exception>
    /// <remarks><inheritdoc cref="At(AirState)" path="/remarks"/></remarks>
    public static Air At(
        Temperature temperature,
        RelativeHumidity humidity,
        Pressure? pressure = null,
        Ratio? carbonDioxide = null
    ) => At(new AirState(temperature, humidity, pressure, carbonDioxide));

    /// <summary>Air of a given state.</summary>
    /// <param name="state">Temperature, humidity, pressure and carbon dioxide.</param>
    /// <returns>The air, with <see cref="Warnings"/> if the state is outside the model's stated ranges.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="state"/> is null.</exception>
    /// <remarks>
    /// Inside the range of Cramer's speed of sound (cramer1993) the model is IEC 61094-2:2009, Annex F (iec61094-2). That range is 0 to 30
    /// °C, 75 to 102 kPa, at most 6 % water vapour and 1 % carbon dioxide. Speed and heat capacity ratio are Cramer's, stated to 300 and
    /// 320 ppm; density is CIPM-2007 (picard2008). The annex itself states 15 to 27 °C, 60 to 110 kPa and
    /// 10 to 90 % humidity; beyond these limits <see cref="Warnings"/> name the extrapolated quantities.
    /// <para>
    /// Outside Cramer's range the constants are those of a mixture of gases (<see cref="AirModel.GasMixture"/>). The mixture is scaled to
    /// meet the standard at the edge of the range, so no constant jumps there. Inside the range, the unscaled mixture agrees with the
    /// standard within 110 ppm in the speed of sound, 120 ppm in density and 0.03 % in the heat capacity ratio.
    /// </para>
    /// </remarks>
    public static Air At(AirState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return Iec61094.Holds(state)
            ? At(state, AirModel.Iec61094)
            : new(GasMixture.FromTheEdge(state), AirModel.GasMixture, state, []);
    }

    /// <summary>Air of a given state by a model that you choose, for comparison.</summary>
    /// <param name="state">Temperature, humidity, pressure and carbon dioxide.</param>
    /// <param name="model">
    /// <see cref="AirModel.Iec61094"/>, whose formulas warn outside their ranges. Outside these ranges the formulas are off by up to 0.08 %
    /// in the speed of sound (0.23 % in the wettest air) and 2.5 % in heat capacity. Or <see cref="AirModel.GasMixture"/>, here without any
    /// scaling.
    /// </param>
    /// <returns>The air.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="state"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="model"/> does not compute air from a state.</exception>
    public static Air At(AirState state, AirModel model)
    {
        ArgumentNullException.ThrowIfNull(state);
        return model switch
        {
            AirModel.Iec61094 => new(Iec61094.Evaluate(state), model, state, Iec61094.Warnings(state)),
            AirModel.GasMixture => new(GasMixture.Evaluate(state), model, state, []),
            _ => throw new ArgumentOutOfRangeException(
                nameof(model),
                model,
                $"model is {model}; allowed are Iec61094 and GasMixture, which compute air from its state."
            ),
        };
    }

    /// <summary>Air of another state by the same model.</summary>
    /// <exception cref="InvalidOperationException">This air was given by constants and has no state.</exception>
    internal Air With(Func<AirState, AirState> change)
    {
        if (State is null)
        {
            throw new InvalidOperationException(
                "This air was given by constants, so it has no temperature or humidity to change; make the air with Air.At."
            );
        }

        // Chosen by state, as most air is, or by name.
        var changed = change(State);
        return At(State).Constants == Constants ? At(changed) : At(changed, Model);
    }

    /// <summary>A gas whose constants are known, for example to reproduce a published calculation.</summary>
    /// <param name="speedOfSound">c, greater than zero.</param>
    /// <param name="density">ρ, greater than zero.</param>
    /// <param name="viscosity">μ, dynamic viscosity, greater than zero.</param>
    /// <param name="conductivity">κ, thermal conductivity, greater than zero.</param>
    /// <param name="heatCapacity">Cp, per mass at constant pressure, greater than zero.</param>
    /// <param name="heatCapacityRatio">γ = Cp/Cv, greater than 1 and less than 2.</param>
    /// <returns>The gas.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Air FromConstants(
        Speed speedOfSound,
        Density density,
        DynamicViscosity viscosity,
        ThermalConductivity conductivity,
        SpecificEntropy heatCapacity,
        double heatCapacityRatio
    )
    {
        var constants = new GasConstants(
            Require.Positive(speedOfSound.MetersPerSecond, "m/s", nameof(speedOfSound)),
            Require.Positive(density.KilogramsPerCubicMeter, "kg/m³", nameof(density)),
            Require.Positive(viscosity.PascalSeconds, "Pa·s", nameof(viscosity)),
            Require.Positive(conductivity.WattsPerMeterKelvin, "W/(m·K)", nameof(conductivity)),
            Require.Positive(heatCapacity.JoulesPerKilogramKelvin, "J/(kg·K)", nameof(heatCapacity)),
            heatCapacityRatio
        );
        if (!(heatCapacityRatio > 1 && heatCapacityRatio < MaxHeatCapacityRatio))
        {
            throw new ArgumentOutOfRangeException(
                nameof(heatCapacityRatio),
                heatCapacityRatio,
                $"{nameof(heatCapacityRatio)} is {Require.Show(heatCapacityRatio, "")}; it must be greater than 1 and "
                    + "less than 2 (air 1.4, monatomic gases 1.67)."
            );
        }

        return new(constants, AirModel.Constants, state: null, warnings: []);
    }

    /// <inheritdoc/>
    public bool Equals(Air? other) =>
        other is not null && Constants == other.Constants && Model == other.Model && State == other.State;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Air);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Constants, Model, State);

    /// <summary>State and main constants, in the invariant culture.</summary>
    /// <returns>State and main constants, as text.</returns>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{State?.ToString() ?? "given constants"}: {Constants.SpeedOfSound:G7} m/s, {Constants.Density:G7} kg/m³, heat capacity ratio {HeatCapacityRatio:G7}"
        );

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        if (State is { } state)
        {
            json.Object("state", state);
        }

        json.WriteString("model", Model.ToString());
        json.Number("speedOfSoundMetresPerSecond", Constants.SpeedOfSound);
        json.Number("densityKgPerM3", Constants.Density);
        json.Number("viscosityPaS", Constants.Viscosity);
        json.Number("conductivityWPerMK", Constants.Conductivity);
        json.Number("heatCapacityJPerKgK", Constants.HeatCapacity);
        json.Number("heatCapacityRatio", Constants.HeatCapacityRatio);
        json.Texts("warnings", Warnings);
    }
}
