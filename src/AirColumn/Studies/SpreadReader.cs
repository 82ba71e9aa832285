using AirColumn.Documents;

namespace AirColumn.Studies;

/// <summary>Reads which values a parameter takes.</summary>
internal static class SpreadReader
{
    private const int MostSteps = 1_000_000;
    private const double LargestFactor = 100;

    /// <summary>The keys, of which each parameter has one.</summary>
    public static string[] Kinds { get; } = ["values", "steps", "uniform", "normal", "lognormal"];

    /// <summary>Reads them.</summary>
    /// <param name="item">The parameter.</param>
    /// <param name="unit">The unit of its values.</param>
    public static Spread Read(DocumentObject item, string unit)
    {
        string[] given = [.. Kinds.Where(item.Has)];
        if (given.Length != 1)
        {
            throw new ColumnDocumentException(
                item.Path,
                given.Length == 0
                    ? $"{item.Path} does not say which values the parameter takes; write one of {string.Join(", ", Kinds)}, such as {Example("uniform", unit)}."
                    : $"{item.Path} says in {given.Length} ways which values the parameter takes ({string.Join(", ", given)}); say it in one."
            );
        }

        var kind = given[0];
        var value = item.Optional(kind)!;
        if (kind == "values")
        {
            return Values(value, unit);
        }

        var spread = DocumentObject.Of(value, Example(kind, unit));
        switch (kind)
        {
            case "steps":
                spread.AllowOnly(["from", "to", "count"]);
                var (first, last) = Range(spread, unit);
                return new Stepped(first, last, (int)spread.Required("count", "11").Whole(2, MostSteps));
            case "uniform":
                spread.AllowOnly(["from", "to"]);
                var (from, to) = Range(spread, unit);
                return new Uniform(from, to);
            case "normal":
                spread.AllowOnly(["mean", "deviation"]);
                var mean = Number(spread.Required("mean", Quoted(unit)), unit);
                return new Gaussian(mean, Deviation(spread.Required("deviation", Difference(unit)), unit));
            default:
                spread.AllowOnly(["median", "factor"]);
                var median = spread.Required("median", Quoted(unit));
                var factor = spread.Required("factor", "1.05");
                return new LogGaussian(
                    Number(median, unit) is > 0 and var above
                        ? above
                        : throw median.Wrong("it must be above 0."),
                    factor.Number() is > 1 and <= LargestFactor and var one
                        ? one
                        : throw factor.Wrong(
                            $"it must be above 1, up to {Require.Show(LargestFactor, "")}: the factor by which one standard deviation multiplies or divides."
                        )
                );
        }
    }

    private static Listed Values(DocumentValue list, string unit)
    {
        var allowed = $"it must be a list of at least 1 value, such as [{Quoted(unit)}].";
        var values = list.List(MostSteps, allowed);
        return values.Count == 0
            ? throw list.Wrong(allowed)
            : new Listed([.. values.Select(value => Number(value, unit))]);
    }

    private static (double From, double To) Range(DocumentObject spread, string unit)
    {
        var from = Number(spread.Required("from", Quoted(unit)), unit);
        var last = spread.Required("to", Quoted(unit));
        var to = Number(last, unit);
        return to > from ? (from, to) : throw last.Wrong($"it must be above {spread.PathOf("from")}.");
    }

    private static double Deviation(DocumentValue value, string unit)
    {
        // 2 °C is a temperature, 275.15 K: a difference is written in K.
        if (
            unit == "K"
            && !value.Text($"it must be a text, such as {Difference(unit)}.").Trim().EndsWith('K')
        )
        {
            throw value.Wrong($"it must be a difference in K, such as {Difference(unit)}.");
        }

        return Number(value, unit) is > 0 and var deviation
            ? deviation
            : throw value.Wrong("it must be above 0.");
    }

    private static double Number(DocumentValue value, string unit) =>
        unit switch
        {
            "m" => value.Length(Plain(unit)).Meters,
            "K" => value.Quantity(QuantityText.ParseTemperature, Plain(unit)).Kelvins,
            "Pa" => value.Quantity(QuantityText.ParsePressure, Plain(unit)).Pascals,
            _ => value.Quantity(QuantityText.ParseRatio, Plain(unit)).DecimalFractions,
        };

    private static string Plain(string unit) =>
        unit switch
        {
            "m" => "25 mm",
            "K" => "20 °C",
            "Pa" => "101.325 kPa",
            _ => "50 %",
        };

    private static string Quoted(string unit) => $"\"{Plain(unit)}\"";

    private static string Difference(string unit) =>
        unit switch
        {
            "m" => "\"0.2 mm\"",
            "K" => "\"2 K\"",
            "Pa" => "\"1 kPa\"",
            _ => "\"5 %\"",
        };

    private static string Example(string kind, string unit) =>
        kind switch
        {
            "steps" => $"\"steps\": {{ \"from\": {Quoted(unit)}, \"to\": …, \"count\": 11 }}",
            "uniform" => $"\"uniform\": {{ \"from\": {Quoted(unit)}, \"to\": … }}",
            "normal" => $"\"normal\": {{ \"mean\": {Quoted(unit)}, \"deviation\": {Difference(unit)} }}",
            _ => $"\"lognormal\": {{ \"median\": {Quoted(unit)}, \"factor\": 1.05 }}",
        };
}
