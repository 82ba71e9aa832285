namespace Samples.Tests;

public class ColumnToolErrorTests
{
    private const string AtWhich =
        "Say at which frequencies: either --at, such as 30 and 33.17, or --from, --to and --points, such as 20, 2000 and 4096.";

    private const int Failure = 1;
    private const int BadArguments = 2;
    private const int BadFile = 3;
    private const int BadDocument = 4;
    private const string Verbs =
        "column, impedance, reflection, matrix, transfer, resonances, inside, power, quality, length, shape, holes, uncertainty, fit, trim, air, sweep, study, merge, lines, schema, reference";

    // C12 is 440·2^(87/12) Hz. Plane waves end at ka = 3.8317, the first zero of J1 (from memory), with a = 20 mm.
    [Theory]
    [InlineData("", "Say what to do; the verbs of ColumnTool are " + Verbs + ".")]
    [InlineData("impedence|-|--at|30", "'impedence' is not a verb of ColumnTool; did you mean 'impedance'?")]
    [InlineData("impedance", "Required argument 'FILE' missing for command: 'impedance'.")]
    [InlineData("impedance|-|--at|30|--loud", "'--loud' is not an option of ColumnTool impedance.")]
    [InlineData(
        "resonances|-|other.json",
        "'other.json' is not an option of ColumnTool resonances or is one argument too many."
    )]
    [InlineData("impedance|-", AtWhich)]
    [InlineData("impedance|-|--at|30|--from|20", AtWhich)]
    [InlineData(
        "impedance|-|--at|30,NaN",
        "--at: 'NaN' is not allowed; write a number from 1E-06 Hz to 1000000000 Hz."
    )]
    [InlineData(
        "impedance|-|--at|0",
        "--at: '0' is not allowed; write a number from 1E-06 Hz to 1000000000 Hz."
    )]
    [InlineData(
        "impedance|-|--at|1e400",
        "--at: '1e400' is not allowed; write a number from 1E-06 Hz to 1000000000 Hz."
    )]
    [InlineData("impedance|-|--from|60|--to|20|--points|5", "--to is 20 Hz; it must be above --from, 60 Hz.")]
    [InlineData(
        "impedance|-|--from|NaN|--to|20|--points|5",
        "--from: 'NaN' is not allowed; write a number from 1E-06 Hz to 1000000000 Hz."
    )]
    [InlineData(
        "impedance|-|--from|20|--to|60|--points|1",
        "--points: '1' is not allowed; write a whole number from 2 to 1000000."
    )]
    [InlineData(
        "impedance|-|--from|20|--to|20.000000000000004|--points|5",
        "--points is 5; --from 20 Hz and --to 20.000000000000004 Hz are too close together for that: some would coincide. Ask for fewer."
    )]
    [InlineData(
        "resonances|-|--count|0",
        "--count: '0' is not allowed; write a whole number from 1 to 10000."
    )]
    [InlineData(
        "resonances|-|--count|two",
        "--count: 'two' is not allowed; write a whole number from 1 to 10000."
    )]
    [InlineData("resonances|-|--below|-3", "--below is -3 Hz; it must be a finite number greater than zero.")]
    [InlineData("resonances|-|--reference|0", "--reference is 0 Hz; allowed is 1 Hz to 10000 Hz.")]
    [InlineData("length|-|--pitch|C2", "Option '--section' is required.")]
    [InlineData("length|-|--section|3|--pitch|C2", "--section is 3; allowed is 1 to 2 in this document.")]
    [InlineData(
        "length|-|--section|1|--pitch|H2",
        "--pitch: 'H2' is not a pitch: 'H' is not a letter from A to G (the German H is B)."
    )]
    [InlineData(
        "length|-|--section|1|--pitch|C12",
        "--pitch C12 is 66976.1 Hz; allowed is up to 10367.2 Hz in this bore."
    )]
    [InlineData("air", "Option '--temperature' is required.")]
    [InlineData("air|--temperature|20", "--temperature: '20' is a number without a unit; write \"20 °C\".")]
    [InlineData(
        "air|--temperature|NaN °C",
        "--temperature: 'NaN °C' is not a temperature; write a number and a unit, such as \"20 °C\"."
    )]
    [InlineData("air|--temperature|200 °C", "--temperature is 200 °C; allowed is -20 °C to 50 °C.")]
    [InlineData("air|--temperature|-5 °C|--humidity|130 %", "--humidity is 130 %; allowed is 0 % to 100 %.")]
    [InlineData("air|--temperature|20 °C|--co2|50 %", "--co2 is 50 %; allowed is 0 % to 10 %.")]
    public void Says_what_is_wrong_with_the_arguments(string arguments, string message) =>
        Sample
            .ColumnTool(IdealTube.Open, arguments.Length == 0 ? [] : arguments.Split('|'))
            .Refused(BadArguments, message);

    [Theory]
    [InlineData("no such file.json", "There is no file 'no such file.json'.")]
    [InlineData(".", "'.' is a folder, not a file.")]
    [InlineData("", "The name of the file is empty.")]
    public void Says_what_is_wrong_with_the_file(string file, string message) =>
        Sample.ColumnTool("", "impedance", file, "--at", "30").Refused(BadFile, message);

    [UnixTheory]
    [InlineData("resonances", "-")]
    [InlineData("sweep", "--list", "-")]
    [InlineData("lines")]
    public void Says_that_the_standard_input_is_closed(params string[] arguments)
    {
        var outcome = Sample.ColumnToolWithClosedInput(arguments);
        Assert.Equal(BadFile, outcome.ExitCode);
        Assert.Equal(
            "error: The standard input is closed, so nothing can be read from it; pipe something into it, or name a file.\n",
            outcome.Error
        );
    }

    [Theory]
    [InlineData("\"25 cm\"", "25", "sections[0].length is 25, a number without a unit; write \"25 mm\".")]
    [InlineData(
        "\"25 cm\"",
        "\"25 kg\"",
        "sections[0].length: '25 kg' is not a length: 'kg' is not a unit of it; write a number and a unit, such as \"25 mm\"."
    )]
    [InlineData(
        "\"25 cm\"",
        "\"NaN mm\"",
        "sections[0].length: 'NaN mm' is not a length; write a number and a unit, such as \"25 mm\"."
    )]
    [InlineData(
        "\"25 cm\"",
        "\"-25 cm\"",
        "sections[0].length is -250 mm; allowed is 0.001 mm to 1000000 mm."
    )]
    [InlineData("\"25 cm\"", "NaN", "The document is not JSON; line 8, position 59: 'N' cannot stand here.")]
    [InlineData(
        "\"column\": 1",
        "\"column\": 3",
        "column is 3; this reader knows versions 1 and 2 of the format; write \"column\": 2."
    )]
    [InlineData(
        "\"name\"",
        "\"nam\"",
        "'nam' is not a known key; did you mean 'name'? Known here: column, name, air, losses, wavefronts, modes, blownEnd, correction, sections, farEnd."
    )]
    [InlineData(
        "\"cylinder\"",
        "\"bell\"",
        "sections[0].shape is 'bell'; allowed: cylinder, cone, horn, profile."
    )]
    public void Says_what_is_wrong_with_the_document(string old, string replacement, string message)
    {
        Assert.Contains(old, IdealTube.Open, StringComparison.Ordinal);
        var text = IdealTube.Open.Replace(old, replacement, StringComparison.Ordinal);
        Sample
            .ColumnTool(text, "resonances", "-", "--count", "3", "--json")
            .Refused(BadDocument, $"standard input: {message}");
    }

    [Fact]
    public void Says_that_a_document_is_empty_or_ends_too_early()
    {
        Sample
            .ColumnTool("", "resonances", "-")
            .Refused(
                BadDocument,
                "standard input: The document is empty; it must be a JSON object that begins with \"column\": 2."
            );
        Sample
            .ColumnTool("{\"column\": 1,\n", "resonances", "-")
            .Refused(
                BadDocument,
                "standard input: The document is not complete JSON; line 1, position 14: it ends too early; a quotation mark, a brace or a bracket is not closed."
            );
    }

    [Fact]
    public void Names_the_file_that_is_wrong()
    {
        var path = Path.GetTempFileName();
        try
        {
            Sample
                .ColumnTool("", "resonances", path)
                .Refused(
                    BadDocument,
                    $"{path}: The document is empty; it must be a JSON object that begins with \"column\": 2."
                );
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void Frequencies_beyond_the_radiation_model_are_refused()
    {
        var text = IdealTube.Open.Replace("\"ideal\"", "\"open\"", StringComparison.Ordinal);
        // ka = 3.8 in a tube of 20 mm radius: f = 3.8·c/(2πa).
        var highest = 3.8 * IdealTube.SpeedOfSound / (2 * Math.PI * 0.02);
        var outcome = Sample.ColumnTool(text, "impedance", "-", "--at", "30,20000");
        var known = highest.ToString("G10", System.Globalization.CultureInfo.InvariantCulture);
        outcome.Refused(
            BadArguments,
            $"The highest frequency is 20000 Hz; the radiation of this open end is known up to {known} Hz. Ask for a lower frequency."
        );
    }

    [Fact]
    public void A_length_that_cannot_be_is_a_failure_and_not_bad_input() =>
        // A4 needs 193 mm, but the other section alone has 750 mm: c/4L is 113.3 Hz, 1200·log2(113.3/440) cents.
        Sample
            .ColumnTool(IdealTube.Open, "length", "-", "--section", "1", "--pitch", "A4", "--json")
            .Refused(
                Failure,
                "Even with section 1 0.01 mm long the first resonance lies 2348 cents below 440 Hz; shorten another section."
            );

    [UnixFact]
    public void A_closed_output_is_a_failure_that_says_so()
    {
        var outcome = Sample.ColumnToolWithClosedOutput("air", "--temperature", "20 °C");
        Assert.Equal(Failure, outcome.ExitCode);
        Assert.StartsWith("error: The output cannot be written: ", outcome.Error, StringComparison.Ordinal);
        Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
    }
}
