using System.Text.Json;

namespace Samples.Tests;

/// <summary>What a program did.</summary>
internal sealed record Outcome(int ExitCode, string Output, string Error)
{
    /// <summary>The output of a run that went well and had nothing to warn of.</summary>
    public string Succeeded()
    {
        Assert.Equal("", Error);
        Assert.Equal(0, ExitCode);
        Assert.DoesNotContain('\r', Output);
        return Output;
    }

    /// <summary>The same as JSON.</summary>
    public JsonElement Json()
    {
        using var json = JsonDocument.Parse(Succeeded());
        return json.RootElement.Clone();
    }

    /// <summary>The rows of CSV below the header.</summary>
    public double[][] Rows(string header)
    {
        var lines = Succeeded().Split('\n');
        Assert.Equal(header, lines[0]);
        Assert.Equal("", lines[^1]);
        return [.. lines[1..^1].Select(line => line.Split(',').Select(Number).ToArray())];
    }

    /// <summary>Asserts a run that refused: nothing written, one or two lines that say why and no stack trace.</summary>
    public void Refused(int exitCode, string message)
    {
        Assert.Equal("", Output);
        Assert.Equal(exitCode, ExitCode);
        Assert.EndsWith("\n", Error, StringComparison.Ordinal);
        var lines = Error.TrimEnd('\n').Split('\n');
        Assert.InRange(lines.Length, 1, 2);
        Assert.Equal($"error: {message}", lines[0]);
        Assert.All(lines, line => Assert.InRange(line.Length, 10, 520));
        Assert.DoesNotContain("   at ", Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", Error, StringComparison.Ordinal);
        Assert.DoesNotContain("(Parameter", Error, StringComparison.Ordinal);
    }

    private static double Number(string text)
    {
        var number = double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
        // Full precision: the text is the shortest that names this number and no other.
        Assert.Equal(text, number.ToString("R", System.Globalization.CultureInfo.InvariantCulture));
        return number;
    }
}
