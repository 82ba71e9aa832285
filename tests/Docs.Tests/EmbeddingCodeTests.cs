using AirColumn;
using AirColumn.Documents;
using UnitsNet;

namespace Docs.Tests;

/// <summary>The code of docs/embedding.md is a part of this file, so that it compiles and runs.</summary>
public class EmbeddingCodeTests
{
    [Fact]
    public void The_code_of_the_page_runs()
    {
        var json = File.ReadAllText(Repository.File("docs/concepts/closed-tube.json"));
        using var source = new CancellationTokenSource();
        var cancellation = source.Token;

        var column = ColumnDocument.Parse(json).ToColumn();

        // Numbers for a loop: nothing is allocated once its frequencies have been asked for.
        var hertz = FrequencyGrid.Linear(20, 1500, 500).Hertz.ToArray();
        var (real, imaginary) = (new double[500], new double[500]);
        column.Impedance(hertz, real, imaginary);

        // Many columns on all cores. Nothing runs until the answers are read; each comes as soon as it is ready.
        var lowest = Batch.Map(
            Enumerable.Range(0, 20).Select(i => Length.FromMillimeters(900 + 10 * i)),
            (length, token) =>
                column.WithBore(column.Bore.WithSectionLength(0, length)).FirstResonances(1, token)[0],
            cancellationToken: cancellation
        );
        foreach (var answer in lowest)
        {
            Console.WriteLine(
                answer.Error is { } error ? error.Message : $"{answer.Question}: {answer.Answer}"
            );
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        column.Impedance(hertz, real, imaginary);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.All(real, r => Assert.True(r > 0));
        var found = lowest
            .OrderBy(each => each.Question)
            .Select(each => each.Answer.Frequency.Hertz)
            .ToList();
        Assert.Equal(20, found.Count);
        // Longer is lower.
        Assert.Equal(found.OrderDescending(), found);
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => lowest.ToList());
    }

    [Fact]
    public void It_is_what_the_page_shows()
    {
        var page = Plain(File.ReadAllText(Repository.File("docs/embedding.md")));
        var shown = page.Split("```csharp\n")[1].Split("```")[0];
        var here = Plain(File.ReadAllText(Repository.File("tests/Docs.Tests/EmbeddingCodeTests.cs")));
        Assert.Contains(shown, here, StringComparison.Ordinal);
    }

    private static string Plain(string text) =>
        string.Join('\n', text.Split('\n').Select(line => line.Trim()));
}
