using System.Reflection;
using System.Text.RegularExpressions;
using SkiaSharp;

namespace AirColumn.Plots.Tests;

/// <summary>docs/plots.md shows code that runs and pictures that are there.</summary>
public partial class PageTests
{
    private static readonly string Top = typeof(PageTests)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(a => a.Key == "Top")
        .Value!;

    private static readonly string Text = File.ReadAllText(Path.Combine(Top, "docs", "plots.md"));

    [Fact]
    public void Its_code_is_that_of_the_program_that_writes_its_pictures()
    {
        var program = File.ReadAllText(Path.Combine(Top, "samples", "PlotGallery", "Program.cs"));
        var code = Code().Match(Text).Groups[1].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(6, code.Length);
        Assert.All(code, line => Assert.Contains(line.Trim(), program, StringComparison.Ordinal));
    }

    [Fact]
    public void Its_pictures_are_there_at_screen_size()
    {
        var pictures = Image().Matches(Text).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(2, pictures.Count);
        Assert.All(
            pictures,
            path =>
            {
                using var bitmap = SKBitmap.Decode(Path.Combine(Top, "docs", path));
                Assert.Equal(880, bitmap.Width);
            }
        );
    }

    [GeneratedRegex("```csharp\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Code();

    [GeneratedRegex(@"!\[[^\]]+\]\(([^)]+)\)")]
    private static partial Regex Image();
}
