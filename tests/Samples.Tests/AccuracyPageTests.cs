using System.Diagnostics;
using System.Globalization;
using System.Reflection;

namespace Samples.Tests;

/// <summary>docs/accuracy.md is what its command writes.</summary>
public sealed class AccuracyPageTests : IDisposable
{
    private static readonly string Top = typeof(AccuracyPageTests)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(data => data.Key == "Top")
        .Value!;

    private readonly string folder = Directory.CreateTempSubdirectory("accuracy").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    [Trait(Amount.Trait, Amount.Long)]
    public async Task The_page_shows_what_its_command_prints()
    {
        var project = Path.Combine(Top, "benchmarks", "AirColumn.Accuracy");
        var start = new ProcessStartInfo(
            "dotnet",
            ["run", "-c", "Release", "--project", project, "--", folder]
        )
        {
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);

        var written = Lines(Path.Combine(folder, "accuracy.md"));
        var committed = Lines(Path.Combine(Top, "docs", "accuracy.md"));
        Assert.Equal(committed.Length, written.Length);
        for (var i = 0; i < written.Length; i++)
        {
            var (theirs, ours) = (committed[i].Split('|'), written[i].Split('|'));
            Assert.Equal(theirs.Length, ours.Length);
            for (var column = 0; column < ours.Length; column++)
            {
                Assert.True(Same(theirs[column], ours[column]), $"{committed[i]}\n{written[i]}");
            }
        }

        Assert.Equal(Files(Path.Combine(Top, "docs", "accuracy")), Files(Path.Combine(folder, "accuracy")));
    }

    // Figures near rounding differ from one processor to the next; others in their last digit at most.
    private static bool Same(string a, string b) =>
        a == b
        || (
            Number(a) is { } x && Number(b) is { } y && (Math.Max(x, y) < 1e-11 || Math.Abs(x - y) <= 0.1 * x)
        );

    private static double? Number(string cell) =>
        cell.Trim() == "< 1e-12" ? 0
        : double.TryParse(
            cell.Trim().Split(' ')[0],
            NumberStyles.Float,
            CultureInfo.InvariantCulture,
            out var number
        )
            ? number
        : null;

    private static string[] Lines(string file) => File.ReadAllText(file).ReplaceLineEndings("\n").Split('\n');

    private static string?[] Files(string folder) =>
        [.. Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)];
}
