using System.Globalization;
using System.Text;

namespace AirColumn.Accuracy;

/// <summary>The chapters as one Markdown document.</summary>
internal static class Report
{
    /// <summary>Errors below this are the rounding of one machine or another and are not told apart.</summary>
    private const double Rounding = 1e-12;

    public static string Markdown(IReadOnlyList<Chapter> chapters)
    {
        var text = new StringBuilder();
        Line(text, "# How accurate it is");
        Line(text);
        Line(
            text,
            "Every figure here is printed by `dotnet run -c Release --project benchmarks/AirColumn.Accuracy`, which compares the "
                + "engine with values from outside it and writes this page and its plots. Keys in brackets are keys of "
                + "[references.bib](references.bib). The tables of values are in `tests/AirColumn.Tests/Reference`; each states its source "
                + "and its own error at its head. *Asked* is the error that the tests "
                + "allow. [physics.md](physics.md) explains what is computed."
        );
        foreach (var chapter in chapters)
        {
            Line(text);
            Line(text, $"## {chapter.Title}");
            Line(text);
            Line(text, chapter.Validity);
            Line(text);
            Line(text, "| quantity | compared with | range | values | largest error | median | asked |");
            Line(text, "|---|---|---|--:|--:|--:|--:|");
            foreach (var q in chapter.Quantities)
            {
                Line(
                    text,
                    $"| {q.Name} | {q.Reference} | {q.Range} | {q.Errors.Count} | {Show(q.Largest, q.Unit)} | "
                        + $"{Show(q.Median, q.Unit)} | {(q.Bound is { } bound ? Show(bound, q.Unit) : "")} |"
                );
            }

            foreach (var plot in chapter.Plots)
            {
                Line(text);
                Line(text, $"![{plot.Title}](accuracy/{plot.File})");
            }
        }

        return text.ToString();
    }

    private static string Show(double value, string unit)
    {
        var number =
            value < Rounding && unit.Length == 0 ? "< 1e-12"
            : value is >= 1e-3 and < 1e4 or 0 ? value.ToString("G2", CultureInfo.InvariantCulture)
            : value.ToString("0.0e-0", CultureInfo.InvariantCulture);
        return unit.Length == 0 ? number : $"{number} {unit}";
    }

    private static void Line(StringBuilder text, string line = "") => text.Append(line).Append('\n');
}
