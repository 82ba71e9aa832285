using AirColumn.Workshop;

namespace Docs.Tests;

/// <summary>The page on safety says what plans and build sheets say.</summary>
public class SafetyPageTests
{
    [Fact]
    public void The_page_has_all_cautions_and_no_other()
    {
        var lines = File.ReadAllLines(Repository.File("docs/concepts/safety.md"));
        Assert.Equal(
            Cautions.All.Select(caution => $"- **{caution.Title}.** {caution.Text} *{caution.Source}*"),
            lines.Where(line => line.StartsWith('-'))
        );
        Assert.Equal(
            HeatLimits.All.Select(limits => $"  - {limits.Text} *{limits.Source}*"),
            lines.Where(line => line.StartsWith("  -", StringComparison.Ordinal))
        );
        Assert.Contains(lines, line => line.StartsWith(Cautions.First, StringComparison.Ordinal));
    }
}
