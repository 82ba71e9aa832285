using UnitsNet;
using UnitsNet.Units;

namespace AirColumn.Documents;

/// <summary>Reads quantities from text: a number and a unit, the same in every culture.</summary>
/// <remarks>
/// <para>
/// Numbers have a decimal point and may have an exponent ("1.814e-5 Pa·s"). The space between number and unit is optional. Units are the usual
/// abbreviations; products, powers and parentheses may be written in ASCII: "kg/m3",
/// "Pa.s" or "Pa s", "W/(m K)", "J/(kg K)", "degC". Upper and lower case differ: mm is a millimetre, Mm a megametre.
/// </para>
/// <para>
/// Every method throws <see cref="ArgumentNullException"/> for null. It throws <see cref="FormatException"/> for text that is not a quantity
/// of the kind in the name of the method, and for values of 1e200 or more. The message says what is wrong and shows an example.
/// </para>
/// </remarks>
public static class QuantityText
{
    private static readonly QuantityKind<Length, LengthUnit> Lengths = new(
        "length",
        "25 mm",
        (value, unit) => new(value, unit),
        length => length.Meters,
        new(
            Length.Info,
            ("inch", LengthUnit.Inch),
            ("inches", LengthUnit.Inch),
            ("Inch", LengthUnit.Inch),
            ("Inches", LengthUnit.Inch),
            ("\u201D", LengthUnit.Inch), // the quotation mark a word processor makes of "
            ("foot", LengthUnit.Foot),
            ("feet", LengthUnit.Foot),
            ("\u2019", LengthUnit.Foot), // and of '
            ("millimetre", LengthUnit.Millimeter),
            ("millimetres", LengthUnit.Millimeter),
            ("millimeter", LengthUnit.Millimeter),
            ("millimeters", LengthUnit.Millimeter)
        ),
        Fractions: true
    );

    private static readonly QuantityKind<Temperature, TemperatureUnit> Temperatures = new(
        "temperature",
        "20 °C",
        (value, unit) => new(value, unit),
        temperature => temperature.Kelvins,
        new(
            Temperature.Info,
            ("C", TemperatureUnit.DegreeCelsius),
            ("degC", TemperatureUnit.DegreeCelsius),
            ("℃", TemperatureUnit.DegreeCelsius),
            ("F", TemperatureUnit.DegreeFahrenheit),
            ("degF", TemperatureUnit.DegreeFahrenheit),
            ("℉", TemperatureUnit.DegreeFahrenheit)
        )
    );

    private static readonly QuantityKind<RelativeHumidity, RelativeHumidityUnit> Humidities = new(
        "relative humidity",
        "50 %",
        (value, unit) => new(value, unit),
        humidity => humidity.Percent,
        new(RelativeHumidity.Info, ("%", RelativeHumidityUnit.Percent))
    );

    private static readonly QuantityKind<Pressure, PressureUnit> Pressures = new(
        "pressure",
        "101.325 kPa",
        (value, unit) => new(value, unit),
        pressure => pressure.Pascals,
        new(Pressure.Info)
    );

    private static readonly QuantityKind<Ratio, RatioUnit> Ratios = new(
        "ratio",
        "400 ppm",
        (value, unit) => new(value, unit),
        ratio => ratio.DecimalFractions,
        new(Ratio.Info, ("mol/mol", RatioUnit.DecimalFraction))
    );

    private static readonly QuantityKind<Angle, AngleUnit> Angles = new(
        "angle",
        "90 °",
        (value, unit) => new(value, unit),
        angle => angle.Radians,
        new(Angle.Info)
    );

    private static readonly QuantityKind<Speed, SpeedUnit> Speeds = new(
        "speed",
        "343.37 m/s",
        (value, unit) => new(value, unit),
        speed => speed.MetersPerSecond,
        new(Speed.Info)
    );

    private static readonly QuantityKind<Density, DensityUnit> Densities = new(
        "density",
        "1.2045 kg/m³",
        (value, unit) => new(value, unit),
        density => density.KilogramsPerCubicMeter,
        new(Density.Info)
    );

    private static readonly QuantityKind<DynamicViscosity, DynamicViscosityUnit> Viscosities = new(
        "dynamic viscosity",
        "1.814e-5 Pa·s",
        (value, unit) => new(value, unit),
        viscosity => viscosity.PascalSeconds,
        new(DynamicViscosity.Info)
    );

    private static readonly QuantityKind<ThermalConductivity, ThermalConductivityUnit> Conductivities = new(
        "thermal conductivity",
        "0.0258 W/(m·K)",
        (value, unit) => new(value, unit),
        conductivity => conductivity.WattsPerMeterKelvin,
        new(ThermalConductivity.Info)
    );

    private static readonly QuantityKind<SpecificEntropy, SpecificEntropyUnit> HeatCapacities = new(
        "heat capacity per mass",
        "1006 J/(kg·K)",
        (value, unit) => new(value, unit),
        capacity => capacity.JoulesPerKilogramKelvin,
        new(SpecificEntropy.Info)
    );

    private static readonly QuantityKind<Frequency, FrequencyUnit> Frequencies = new(
        "frequency",
        "440 Hz",
        (value, unit) => new(value, unit),
        frequency => frequency.Hertz,
        new(Frequency.Info)
    );

    /// <summary>A length, such as "25 mm", "1.24 m", "46.5 in", "46 15/16 in", "46⅞ in", "1.5\"" or "4' 2 1/2\"".</summary>
    /// <param name="text">A number or a fraction, and a unit; or feet and inches.</param>
    /// <returns>The length.</returns>
    /// <exception cref="FormatException">The text is not a length with a unit.</exception>
    public static Length ParseLength(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return FeetAndInches.Read(text) ?? Lengths.Parse(text);
    }

    /// <summary>A temperature, such as "20 °C", "20 C", "68 °F" or "293.15 K".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The temperature.</returns>
    /// <exception cref="FormatException">The text is not a temperature with a unit.</exception>
    public static Temperature ParseTemperature(string text) => Temperatures.Parse(text);

    /// <summary>A relative humidity, such as "50 %".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The relative humidity.</returns>
    /// <exception cref="FormatException">The text is not a relative humidity with a unit.</exception>
    public static RelativeHumidity ParseRelativeHumidity(string text) => Humidities.Parse(text);

    /// <summary>A pressure, such as "101.325 kPa", "1013 hPa" or "29.9 inHg".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The pressure.</returns>
    /// <exception cref="FormatException">The text is not a pressure with a unit.</exception>
    public static Pressure ParsePressure(string text) => Pressures.Parse(text);

    /// <summary>A part of a whole, such as "400 ppm", "0.04 %" or "0.0004 mol/mol".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The ratio.</returns>
    /// <exception cref="FormatException">The text is not a ratio with a unit.</exception>
    public static Ratio ParseRatio(string text) => Ratios.Parse(text);

    /// <summary>An angle, such as "90 °", "90 deg" or "1.5 rad".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The angle.</returns>
    /// <exception cref="FormatException">The text is not an angle with a unit.</exception>
    public static Angle ParseAngle(string text) => Angles.Parse(text);

    /// <summary>A speed, such as "343.37 m/s".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The speed.</returns>
    /// <exception cref="FormatException">The text is not a speed with a unit.</exception>
    public static Speed ParseSpeed(string text) => Speeds.Parse(text);

    /// <summary>A density, such as "1.2045 kg/m³" or "1.2045 kg/m3".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The density.</returns>
    /// <exception cref="FormatException">The text is not a density with a unit.</exception>
    public static Density ParseDensity(string text) => Densities.Parse(text);

    /// <summary>A dynamic viscosity, such as "1.814e-5 Pa·s" or "1.814e-5 Pa s".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The viscosity.</returns>
    /// <exception cref="FormatException">The text is not a dynamic viscosity with a unit.</exception>
    public static DynamicViscosity ParseDynamicViscosity(string text) => Viscosities.Parse(text);

    /// <summary>A thermal conductivity, such as "0.0258 W/(m·K)" or "0.0258 W/(m K)".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The conductivity.</returns>
    /// <exception cref="FormatException">The text is not a thermal conductivity with a unit.</exception>
    public static ThermalConductivity ParseThermalConductivity(string text) => Conductivities.Parse(text);

    /// <summary>
    /// A heat capacity per mass, such as "1006 J/(kg·K)" or "1.006 kJ/(kg K)". <see cref="SpecificEntropy"/> is the
    /// type UnitsNet has for the unit.
    /// </summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The heat capacity.</returns>
    /// <exception cref="FormatException">The text is not a heat capacity with a unit.</exception>
    public static SpecificEntropy ParseSpecificHeatCapacity(string text) => HeatCapacities.Parse(text);

    /// <summary>A frequency, such as "440 Hz" or "1.2 kHz".</summary>
    /// <param name="text">A number and a unit.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="FormatException">The text is not a frequency with a unit.</exception>
    public static Frequency ParseFrequency(string text) => Frequencies.Parse(text);
}
