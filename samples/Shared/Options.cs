using System.CommandLine;
using System.Globalization;
using AirColumn.Documents;
using UnitsNet;

namespace Shared;

/// <summary>Command-line options whose values are read in the invariant culture and checked as they are read.</summary>
internal static class Options
{
    /// <summary>An option read by a function that throws <see cref="FormatException"/> with a plain sentence.</summary>
    public static Option<T> Parsed<T>(string name, string description, Func<string, T> parse)
    {
        return new Option<T>(name)
        {
            Description = description,
            Arity = ArgumentArity.ExactlyOne,
            CustomParser = result =>
            {
                try
                {
                    return parse(result.Tokens[0].Value);
                }
                catch (FormatException problem)
                {
                    result.AddError($"{name}: {OneLine.Of(problem)}");
                }
                catch (ArgumentException problem)
                {
                    result.AddError(OneLine.Of(problem, name));
                }

                return default;
            },
        };
    }

    /// <summary>An option that is a finite number from <paramref name="min"/> to <paramref name="max"/>.</summary>
    public static Option<double?> Number(string name, string description, double min, double max, string unit)
    {
        return Parsed<double?>(
            name,
            description,
            text =>
                Number(text) is { } value && value >= min && value <= max
                    ? value
                    : throw new FormatException(
                        $"'{text}' is not allowed; write a number from {Show(min, unit)} to {Show(max, unit)}."
                    )
        );
    }

    /// <summary>An option that is a whole number from <paramref name="min"/> to <paramref name="max"/>.</summary>
    public static Option<int?> WholeNumber(string name, string description, int min, int max)
    {
        return Parsed<int?>(
            name,
            description,
            text =>
                int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
                && value >= min
                && value <= max
                    ? value
                    : throw new FormatException(
                        $"'{text}' is not allowed; write a whole number from {Show(min, "")} to {Show(max, "")}."
                    )
        );
    }

    /// <summary>An option that is a frequency: a number in Hz, or with a unit.</summary>
    public static Option<Frequency?> Frequency(string name, string description) =>
        Parsed<Frequency?>(name, description, text => Hertz(text));

    /// <summary>A frequency: a number in Hz, or with a unit.</summary>
    public static Frequency Hertz(string text) =>
        Number(text) is { } hertz ? UnitsNet.Frequency.FromHertz(hertz) : QuantityText.ParseFrequency(text);

    /// <summary>A finite number, or null.</summary>
    public static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
        && double.IsFinite(value)
            ? value
            : null;

    /// <summary>A number with its unit, as messages write it.</summary>
    public static string Show(double value, string unit)
    {
        var number = value.ToString("G10", CultureInfo.InvariantCulture);
        return unit.Length == 0 ? number : $"{number} {unit}";
    }
}
