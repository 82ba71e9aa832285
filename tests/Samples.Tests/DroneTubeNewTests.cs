namespace Samples.Tests;

/// <summary>The verb that asks for a parts file, with answers from a pipe.</summary>
public sealed class DroneTubeNewTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("drone-tube-");

    public void Dispose() => folder.Delete(true);

    [Fact]
    public void Empty_lines_make_a_parts_file_that_can_be_planned()
    {
        var file = In("tube.json");
        var asked = Sample.DroneTubeAsking(new string('\n', 9), "new", "--out", file);
        Assert.Equal(0, asked.ExitCode);
        Assert.StartsWith($"The parts file is {file}.", asked.Output, StringComparison.Ordinal);
        Assert.Contains("What do you call the tube? [My tube]", asked.Error, StringComparison.Ordinal);
        var table = Sample.DroneTube("table", file, "--from", "D2", "--to", "D2").Succeeded();
        Assert.Contains("D2", table, StringComparison.Ordinal);

        // What is there stays.
        var written = File.ReadAllText(file);
        Sample
            .DroneTubeAsking("", "new", "--out", file)
            .Refused(
                2,
                $"'{file}' is there already; --force writes over it, or name another file with --out."
            );
        Assert.Equal(written, File.ReadAllText(file));
    }

    [Fact]
    public void Answers_that_end_too_early_are_told_and_nothing_is_written()
    {
        var asked = Sample.DroneTubeAsking("Grey one\n", "new", "--out", In("tube.json"));
        Assert.Equal((2, ""), (asked.ExitCode, asked.Output));
        Assert.Contains(
            "the standard input is closed or at its end. Nothing is written.",
            asked.Error,
            StringComparison.Ordinal
        );
        Assert.Empty(folder.GetFiles());
    }

    [Fact]
    public void A_wrong_line_is_told_and_nothing_is_written()
    {
        var asked = Sample.DroneTubeAsking("\nmeasured\n50\n", "new", "--out", In("tube.json"));
        Assert.Equal((2, ""), (asked.ExitCode, asked.Output));
        Assert.Contains(
            "error: Line 3, '50', to 'How wide is the pipe inside, by caliper? Such as 40.6 mm or 1\u215D in': '50' is a number without a unit; write \"50 mm\". Nothing is written.\n",
            asked.Error,
            StringComparison.Ordinal
        );
        Assert.Empty(folder.GetFiles());
    }

    [UnixFact]
    public void A_closed_input_is_said_to_be_closed()
    {
        var asked = Sample.DroneTubeWithClosedInput("new", "--out", In("tube.json"));
        Assert.Equal((2, ""), (asked.ExitCode, asked.Output));
        Assert.Contains("the standard input is closed", asked.Error, StringComparison.Ordinal);
        Sample
            .DroneTubeWithClosedInput("table", "-")
            .Refused(
                2,
                "The standard input is closed, so nothing can be read from it; pipe something into it, or name a file."
            );
    }

    private string In(string name) => Path.Combine(folder.FullName, name);
}
