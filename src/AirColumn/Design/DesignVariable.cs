using UnitsNet;

namespace AirColumn;

/// <summary>A design variable: a parameter that a search may choose, with its bounds. Immutable, equal by value.</summary>
public sealed record DesignVariable
{
    /// <summary>
    /// Leaves a parameter to be chosen between two numbers in SI units. For a length in millimetres use the overload that takes
    /// <see cref="Length"/>.
    /// </summary>
    /// <param name="parameter">The parameter.</param>
    /// <param name="from">The least value, in the parameter's unit: metres for a length.</param>
    /// <param name="to">The greatest value, above the least.</param>
    /// <exception cref="ArgumentException">The greatest value is not above the least, or a value is not a finite number.</exception>
    public DesignVariable(ColumnParameter parameter, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(parameter);
        if (!(double.IsFinite(from) && double.IsFinite(to) && from < to))
        {
            throw new ArgumentException(
                $"The {parameter} may lie between {parameter.Show(from)} and {parameter.Show(to)}; "
                    + "the second must be above the first, and both finite.",
                nameof(to)
            );
        }

        (Parameter, From, To) = (parameter, from, to);
    }

    /// <summary>Leaves a length or a diameter to be chosen.</summary>
    /// <param name="parameter">A parameter that is a length.</param>
    /// <param name="from">The least value.</param>
    /// <param name="to">The greatest value, above the least.</param>
    /// <exception cref="ArgumentException">The greatest is not above the least, or the parameter is not a length.</exception>
    public DesignVariable(ColumnParameter parameter, Length from, Length to)
        : this(OfUnit(parameter, "m"), from.Meters, to.Meters) { }

    /// <summary>The parameter.</summary>
    public ColumnParameter Parameter { get; }

    /// <summary>The least value, in the parameter's unit.</summary>
    public double From { get; }

    /// <summary>The greatest value, in the parameter's unit.</summary>
    public double To { get; }

    internal static ColumnParameter OfUnit(ColumnParameter parameter, string unit)
    {
        ArgumentNullException.ThrowIfNull(parameter);
        return parameter.Unit == unit
            ? parameter
            : throw new ArgumentException(
                $"The {parameter} is not in {unit} but in {(parameter.Unit.Length == 0 ? "parts of 1" : parameter.Unit)}; give its bounds in that unit.",
                nameof(parameter)
            );
    }

    /// <summary>The parameter and its bounds, in the invariant culture.</summary>
    /// <returns>Parameter and bounds, as text.</returns>
    public override string ToString() => $"{Parameter}, {Parameter.Show(From)} to {Parameter.Show(To)}";
}
