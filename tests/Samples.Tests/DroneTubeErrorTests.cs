namespace Samples.Tests;

public class DroneTubeErrorTests
{
    [Theory]
    [InlineData(
        "--note",
        "H2",
        "--note: 'H2' is not a pitch: 'H' is not a letter from A to G (the German H is B)."
    )]
    [InlineData("--note", "D", "--note: 'D' is not a pitch: it has no octave; write D2, not D.")]
    [InlineData("--pipe-diameter", "0 mm", "--pipe-diameter is 0 mm; allowed is 5 mm to 500 mm.")]
    [InlineData("--pipe-diameter", "-3 mm", "--pipe-diameter is -3 mm; allowed is 5 mm to 500 mm.")]
    [InlineData(
        "--pipe-diameter",
        "NaN mm",
        "--pipe-diameter: 'NaN mm' is not a length; write a number and a unit, such as \"25 mm\"."
    )]
    [InlineData(
        "--pipe-diameter",
        "38",
        "--pipe-diameter: '38' is a number without a unit; write \"38 mm\"."
    )]
    [InlineData(
        "--pipe-diameter",
        "1e999 mm",
        "--pipe-diameter: '1e999 mm' is too large a number for a length."
    )]
    [InlineData(
        "--pipe-diameter",
        "38 kg",
        "--pipe-diameter: '38 kg' is not a length: 'kg' is not a unit of it; write a number and a unit, such as \"25 mm\"."
    )]
    [InlineData("--wall", "-1 mm", "--wall is -1 mm; allowed is 0 mm to 100 mm.")]
    [InlineData("--mouth-adds", "-25 mm", "--mouth-adds is -25 mm; allowed is 0.1 mm to 10000 mm.")]
    [InlineData("--mouth-diameter", "1 m", "--mouth-diameter is 1000 mm; allowed is 5 mm to 500 mm.")]
    [InlineData("--end-adds", "0 mm", "--end-adds is 0 mm; allowed is 0.1 mm to 10000 mm.")]
    [InlineData("--end-diameter", "0 mm", "--end-diameter is 0 mm; allowed is 5 mm to 500 mm.")]
    [InlineData("--humidity", "130 %", "--humidity is 130 %; allowed is 0 % to 100 %.")]
    [InlineData("--temperature", "200 °C", "--temperature is 200 °C; allowed is -20 °C to 50 °C.")]
    [InlineData(
        "--reference",
        "0 Hz",
        "--reference: 0 Hz is not possible for A4, the A above middle C; write 300 Hz to 600 Hz, usually 440 Hz. The note of the tube is --note."
    )]
    public void Impossible_value_is_named_with_what_is_allowed(string option, string value, string message) =>
        Sample.DroneTube("plan", option, value).Refused(2, message);

    [Fact]
    public void Missing_options_are_named_together()
    {
        Sample
            .DroneTube("plan")
            .Refused(2, "--note and --pipe-diameter are missing, e.g. --note E2 --pipe-diameter \"50 mm\"");
        Sample
            .DroneTube("plan", "--note", "D2")
            .Refused(2, "--pipe-diameter is missing, e.g. --pipe-diameter \"50 mm\"");
        Sample.DroneTube("plan", "--pipe-diameter", "40 mm").Refused(2, "--note is missing, e.g. --note E2");
    }

    [Theory]
    [InlineData("--mouth-adds", "--mouth-diameter", "mouth fitting")]
    [InlineData("--mouth-diameter", "--mouth-adds", "mouth fitting")]
    [InlineData("--end-adds", "--end-diameter", "far-end fitting")]
    [InlineData("--end-diameter", "--end-adds", "far-end fitting")]
    public void Half_a_fitting_is_refused(string given, string missing, string fitting) =>
        Sample
            .DroneTube("plan", "--note", "D2", "--pipe-diameter", "38 mm", given, "30 mm")
            .Refused(
                2,
                $"{missing} is missing, e.g. {missing} \"30 mm\": a {fitting} needs it beside {given}"
            );

    [Fact]
    public void Unknown_words_are_named()
    {
        Sample
            .DroneTube()
            .Refused(
                2,
                "Say what to do; the verbs of DroneTube are new, plan, sheet, template, column, table, compare, cuts, trim, listen, ring, preview, stock."
            );
        Sample
            .DroneTube("melt")
            .Refused(
                2,
                "'melt' is not a verb of DroneTube; its verbs are new, plan, sheet, template, column, table, compare, cuts, trim, listen, ring, preview, stock."
            );
        Sample
            .DroneTube("plan", "--note", "D2", "--pipe-diameter", "38 mm", "--colour", "red")
            .Refused(2, "'--colour' is not an option of DroneTube plan.");
    }

    [Fact]
    public void Notes_out_of_reach_fail_with_the_reason()
    {
        // B22 is 440·2^(218/12) Hz; the table of open ends stops at ka = 3.8, with a = 19 mm and
        // c = 343.986 m/s (IEC 61094-2 at 20 °C and 50 %).
        var tooHigh = Plan("--note", "B22", "--pipe-diameter", "38 mm");
        Assert.Equal((1, ""), (tooHigh.ExitCode, tooHigh.Output));
        Assert.Matches(
            @"error: No pipe length gives B22: it is \d+\.\d\d Hz, and in a tube this wide the computation ends at 109[45]\d\.\d\d Hz; choose a lower note\.\n$",
            tooHigh.Error
        );

        // A mouth fitting of 1 m closed at the lips sounds F2 or lower whatever follows; C4 is 261.63 Hz.
        var tooLong = Sample.DroneTube(
            "plan",
            "--note",
            "C4",
            "--pipe-diameter",
            "38 mm",
            "--mouth-adds",
            "1 m",
            "--mouth-diameter",
            "38 mm"
        );
        Assert.Equal((1, ""), (tooLong.ExitCode, tooLong.Output));
        Assert.Matches(
            @"error: No pipe length gives C4: even with next to no pipe the first resonance is \d+(\.\d)? cents below 261\.63 Hz; choose a lower note or shorter fittings\.\n$",
            tooLong.Error
        );
    }

    private static Outcome Plan(params string[] options) => Sample.DroneTube(["plan", .. options]);
}
