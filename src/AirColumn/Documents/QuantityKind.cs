namespace AirColumn.Documents;

/// <summary>One kind of quantity: what it is called, an example of it, and how it is made.</summary>
/// <param name="Name">What it is called in messages.</param>
/// <param name="Example">A number and a unit, for messages.</param>
/// <param name="Make">Makes one of a number and a unit.</param>
/// <param name="Si">Its value in one unit, whichever: to see whether it is finite.</param>
/// <param name="Units">The names of its units.</param>
/// <param name="Fractions">Whether "46 15/16" is a number here.</param>
internal sealed record QuantityKind<TQuantity, TUnit>(
    string Name,
    string Example,
    Func<double, TUnit, TQuantity> Make,
    Func<TQuantity, double> Si,
    UnitNames<TUnit> Units,
    bool Fractions = false
)
    where TUnit : struct, Enum
{
    // Far beyond anything real, and no unit takes such a number out of the range of a double.
    private const double Limit = 1e200;

    private string Named => $"{(Name[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an" : "a")} {Name}";

    private string Advice => $"write a number and a unit, such as \"{Example}\"";

    public TQuantity Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var trimmed = text.Trim();
        if (trimmed.Length == 0)
        {
            throw new FormatException($"An empty text is not {Named}; {Advice}.");
        }

        var shown = Quote.Of(trimmed);
        if (!NumberText.TryRead(trimmed, Fractions, out var number))
        {
            throw new FormatException($"{shown} is not {Named}; {Advice}.");
        }

        if (double.IsNaN(number.Value))
        {
            throw new FormatException($"{shown} is not {Named}: the divisor of its fraction is 0.");
        }

        var unit = Unit(shown, number);
        // Infinite numbers and those that some unit would make infinite cannot be made into quantities at all.
        if (Math.Abs(number.Value) < Limit)
        {
            var quantity = Make(number.Value, unit);
            if (Math.Abs(Si(quantity)) < Limit)
            {
                return quantity;
            }
        }

        throw new FormatException($"{shown} is too large a number for {Named}.");
    }

    private TUnit Unit(string shown, NumberText number)
    {
        if (number.Rest.Length == 0)
        {
            var example = Example[Example.IndexOf(' ', StringComparison.Ordinal)..];
            throw new FormatException(
                $"{shown} is a number without a unit; write \"{Quote.Cut(number.Digits)}{example}\"."
            );
        }

        if (number.Rest[0] is ',' or '\'' or (>= '0' and <= '9') && number.Rest.Any(char.IsAsciiDigit))
        {
            throw new FormatException(
                $"{shown} is not {Named}; write numbers with a decimal point and no other separator, such "
                    + $"as \"{Example}\"."
            );
        }

        if (Units.TryFind(number.Rest, out var unit))
        {
            return unit;
        }

        var advice = Units.InOtherCapitals(number.Rest) is { } meant
            ? $"did you mean \"{Quote.Cut(number.Digits)} {meant}\"?"
            : $"{Advice}.";
        throw new FormatException(
            $"{shown} is not {Named}: {Quote.Of(number.Rest)} is not a unit of it; {advice}"
        );
    }
}
