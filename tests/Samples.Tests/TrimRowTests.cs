using System.Globalization;
using System.Text.RegularExpressions;

namespace Samples.Tests;

/// <summary>The rows of trim in inches never take off more, or leave less, than those in millimetres.</summary>
public sealed partial class TrimRowTests
{
    private static readonly string Shown = Path.Combine(
        ShownPage.Top,
        "samples",
        "DroneTube",
        "workshop-tube.json"
    );

    [Fact]
    public void Inches_are_on_the_safe_side()
    {
        var said = Sample.DroneTube("trim", Shown, "--note", "D2", "--cut", "1120 mm").Succeeded();
        var rows = Row().Matches(said);
        Assert.True(rows.Count > 3, said);
        foreach (var row in rows.Select(match => match.Groups))
        {
            Assert.InRange(25.4 * Inches(row[2].Value), 0, Number(row[1].Value) + 0.05);
            Assert.InRange(25.4 * Inches(row[4].Value), Number(row[3].Value) - 0.05, double.MaxValue);
        }
    }

    // "46 15/16", "1/4", "0"; worked by hand, not by the program's own reader.
    private static double Inches(string text) =>
        text.Split(' ')
            .Sum(part =>
                part.Split('/') is [var above, var below] ? Number(above) / Number(below) : Number(part)
            );

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^([\d.]+) mm \(([\d /]+) in\) +([\d.]+) mm \(([\d /]+) in\)", RegexOptions.Multiline)]
    private static partial Regex Row();
}
