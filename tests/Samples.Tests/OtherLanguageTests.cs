using System.Diagnostics;
using System.Globalization;

namespace Samples.Tests;

/// <summary>The programs in other languages, which have nothing but lines of JSON.</summary>
public class OtherLanguageTests
{
    [NeedsTheory("python3")]
    [InlineData("python3", "tubes.py")]
    public void Python_asks(string program, string script) => AsksForTubes(program, script);

    [NeedsTheory("node")]
    [InlineData("node", "tubes.mjs")]
    public void Node_asks(string program, string script) => AsksForTubes(program, script);

    private static void AsksForTubes(string program, string script)
    {
        var lines = Sample
            .WithColumnTool(program, Path.Combine(ShownPage.Top, "samples", "AnyLanguage", script))
            .Succeeded()
            .Split('\n');
        var document =
            """{"column":1,"air":{"temperature":"20 °C","humidity":"50 %"},"sections":[{"shape":"cylinder","diameter":"38 mm","length":"1140 mm"}],"farEnd":{"kind":"open","wall":"3 mm"}}""";
        var first = Sample
            .ColumnTool(document, "resonances", "-", "--count", "1", "--json")
            .Json()
            .GetProperty("resonances")[0];
        var (hertz, cents) = (
            first.GetProperty("frequencyHz").GetDouble(),
            first.GetProperty("cents").GetDouble()
        );
        Assert.Equal(
            string.Create(
                CultureInfo.InvariantCulture,
                $"1140 mm  {hertz:F3} Hz  D2 {cents:+0.0;-0.0} cents"
            ),
            lines[2]
        );
        var length = Sample
            .ColumnTool(document, "length", "-", "--section", "1", "--pitch", "D2", "--json")
            .Json()
            .GetProperty("lengthMetres")
            .GetDouble();
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"D2: {1000 * length:F2} mm"), lines[6]);
        Assert.Equal(
            "document, sections[0].length: sections[0].length is -5 mm; allowed is 0.001 mm to 1000000 mm.",
            lines[7]
        );
        Assert.Equal(9, lines.Length);
    }
}

/// <summary>A test that needs a program of the machine.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class NeedsTheoryAttribute : TheoryAttribute
{
    public NeedsTheoryAttribute(string program)
    {
        if (!IsThere(program))
        {
            Skip = $"There is no {program} on this machine.";
        }
    }

    private static bool IsThere(string program)
    {
        try
        {
            using var process = Process.Start(
                new ProcessStartInfo(program, "--version") { RedirectStandardOutput = true }
            )!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
