using System.Globalization;
using System.Runtime.CompilerServices;

namespace AirColumn;

/// <summary>Argument checks whose messages name the parameter, its value, the allowed range and its unit.</summary>
internal static class Require
{
    /// <summary>Returns <paramref name="value"/> if it is finite and inside [min, max]; throws otherwise.</summary>
    public static double InRange(
        double value,
        double min,
        double max,
        string unit,
        [CallerArgumentExpression(nameof(value))] string parameter = ""
    )
    {
        if (!(value >= min && value <= max))
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                value,
                $"{parameter} is {Show(value, unit)}; allowed is {Show(min, unit)} to {Show(max, unit)}."
            );
        }

        return value;
    }

    /// <summary>Returns <paramref name="value"/> if it is finite and greater than zero; throws otherwise.</summary>
    public static double Positive(
        double value,
        string unit,
        [CallerArgumentExpression(nameof(value))] string parameter = ""
    )
    {
        if (!(value > 0 && double.IsFinite(value)))
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                value,
                $"{parameter} is {Show(value, unit)}; it must be a finite number greater than zero."
            );
        }

        return value;
    }

    /// <summary>Returns <paramref name="value"/> if it is finite and not negative; throws otherwise.</summary>
    public static double NotNegative(
        double value,
        string unit,
        [CallerArgumentExpression(nameof(value))] string parameter = ""
    )
    {
        if (!(value >= 0 && double.IsFinite(value)))
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                value,
                $"{parameter} is {Show(value, unit)}; it must be a finite number, zero or more."
            );
        }

        return value;
    }

    /// <summary>Returns the index if there is a thing of that index; throws otherwise, naming how many there are.</summary>
    public static int Index(
        int index,
        int count,
        string what,
        [CallerArgumentExpression(nameof(index))] string parameter = ""
    )
    {
        if (index < 0 || index >= count)
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                index,
                count == 1
                    ? $"{parameter} is {Show(index, "")}; this bore has 1 {what}, so the only index is 0."
                    : $"{parameter} is {Show(index, "")}; this bore has {Show(count, "")} {what}s, so allowed is 0 to {Show(count - 1, "")}."
            );
        }

        return index;
    }

    /// <summary>Returns <paramref name="value"/> if it is a member of its enumeration; throws otherwise.</summary>
    public static T Named<T>(T value, [CallerArgumentExpression(nameof(value))] string parameter = "")
        where T : struct, Enum =>
        Enum.IsDefined(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                value,
                $"{parameter} is {value:D}; allowed are {string.Join(", ", Enum.GetNames<T>())}."
            );

    /// <summary>A number with its unit, in the invariant culture, for messages.</summary>
    public static string Show(double value, string unit)
    {
        var number = value.ToString("G10", CultureInfo.InvariantCulture);
        return unit.Length == 0 ? number : $"{number} {unit}";
    }
}
