using System.Globalization;
using AirColumn.Documents;
using UnitsNet;

namespace AirColumn.Plots.Tests;

/// <summary>What a notebook shows of an answer that has no picture.</summary>
public class AnswerViewTests
{
    [Fact]
    public void A_length_is_a_small_table()
    {
        var solution = SectionLength.Solve(Columns.Horn, new LengthQuestion(1, Frequency.FromHertz(73.42)));
        var html = RichView.Of(solution);
        Assert.InRange(html.Length, 100, 2000);
        Assert.Contains(
            string.Create(
                CultureInfo.InvariantCulture,
                $"<tr><th>lengthMetres</th><td>{solution.Length.Meters:R}</td></tr>"
            ),
            html,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Long_lists_are_counted_and_short_ones_shown()
    {
        Assert.Contains(
            "<td>100 values</td>",
            RichView.Of(Columns.Horn.StandingWaveAt(Frequency.FromHertz(84), 100)),
            StringComparison.Ordinal
        );
        Assert.Contains("levine1948", RichView.Of(Provenance.Of(Columns.Horn)), StringComparison.Ordinal);
    }
}
