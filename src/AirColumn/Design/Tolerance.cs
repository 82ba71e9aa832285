using MathNet.Numerics.Distributions;
using UnitsNet;

namespace AirColumn;

/// <summary>The tolerance of a parameter: how far it may be from its assumed value. Immutable, equal by value.</summary>
/// <remarks>
/// If all values between the limits are equally likely, the standard deviation is half the width over √3
/// (source: jcgm100, 4.3.7). Tolerances are independent of each other; dimensions that vary together are one parameter,
/// <see cref="ColumnParameter.Together"/>.
/// </remarks>
public sealed record Tolerance
{
    /// <summary>
    /// Gives a parameter limits to either side, in SI units. For a length in millimetres use the overload that takes <see cref="Length"/>.
    /// </summary>
    /// <param name="parameter">The parameter.</param>
    /// <param name="plusMinus">Half the distance between the limits, in the parameter's unit (metres for a length); above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The half width is not a finite number above 0.</exception>
    public Tolerance(ColumnParameter parameter, double plusMinus)
    {
        ArgumentNullException.ThrowIfNull(parameter);
        Parameter = parameter;
        PlusMinus = Require.Positive(plusMinus, parameter.Unit, nameof(plusMinus));
    }

    /// <summary>Gives a length or a diameter limits to either side.</summary>
    /// <param name="parameter">A parameter that is a length.</param>
    /// <param name="plusMinus">Half the distance between the limits; above 0.</param>
    /// <exception cref="ArgumentException">The parameter is not a length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The half width is not above 0.</exception>
    public Tolerance(ColumnParameter parameter, Length plusMinus)
        : this(DesignVariable.OfUnit(parameter, "m"), plusMinus.Meters) { }

    /// <summary>The parameter.</summary>
    public ColumnParameter Parameter { get; }

    /// <summary>Half the distance between the limits, in the parameter's unit. If <see cref="IsNormal"/>, the limits hold 95 % of all values.</summary>
    public double PlusMinus { get; }

    /// <summary>
    /// True if values are normally distributed and the limits hold 95 % of them, as for repeated measurements. False, the default, means that all
    /// values
    /// between the limits are equally likely and none lie beyond.
    /// </summary>
    public bool IsNormal { get; init; }

    /// <summary>Standard deviation in the parameter's unit.</summary>
    public double StandardDeviation => PlusMinus / (IsNormal ? Coverage.OfNormal : Math.Sqrt(3));

    /// <summary>Limits for the temperature of the air.</summary>
    /// <param name="plusMinus">Half the distance between the limits; above 0.</param>
    /// <returns>The tolerance.</returns>
    public static Tolerance Temperature(TemperatureDelta plusMinus) =>
        new(ColumnParameter.Temperature, plusMinus.Kelvins);

    /// <summary>Limits for the relative humidity of the air.</summary>
    /// <param name="plusMinus">Half the distance between the limits, as a part of saturation; above 0.</param>
    /// <returns>The tolerance.</returns>
    public static Tolerance Humidity(Ratio plusMinus) =>
        new(ColumnParameter.Humidity, plusMinus.DecimalFractions);

    /// <summary>A deviation from the assumed value, drawn at random.</summary>
    internal double Draw(Random random) =>
        IsNormal
            ? Normal.InvCDF(0, StandardDeviation, Math.Max(random.NextDouble(), double.Epsilon))
            : PlusMinus * (2 * random.NextDouble() - 1);

    /// <summary>Parameter and limits, in the invariant culture.</summary>
    /// <returns>Parameter and limits, as text.</returns>
    public override string ToString() =>
        $"{Parameter} ± {Parameter.Show(PlusMinus)}{(IsNormal ? " (95 %)" : "")}";
}
