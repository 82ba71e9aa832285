namespace Samples.Tests;

/// <summary>The slips that makers are likely to make, and what they are told.</summary>
public sealed class DroneTubeSlipTests : IDisposable
{
    private static readonly string Shown = Path.Combine(
        ShownPage.Top,
        "samples",
        "DroneTube",
        "workshop-tube.json"
    );

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("drone-tube-");

    public void Dispose() => folder.Delete(true);

    [Theory]
    [InlineData(
        "--cut: put quotation marks around a value of several words: --cut \"1090 mm\".",
        "--note D2 --cut 1090 mm"
    )]
    [InlineData(
        "--cut: put quotation marks around a value of several words: --cut \"42 1/2 in\".",
        "--cut 42 1/2 in --note D2"
    )]
    [InlineData(
        "--cut: put quotation marks around a value of several words: --cut \"3' 6\"\".",
        "--cut 3' 6\" --note D2"
    )]
    [InlineData(
        "--heard: put quotation marks around a value of several words: --heard \"D2 \u221226 cents\".",
        "--note D2 --cut 1090mm --heard D2 \u221226 cents"
    )]
    [InlineData(
        "--temperature: put quotation marks around a value of several words: --temperature \"20 C\".",
        "--note D2 --cut 1090mm --temperature 20 C"
    )]
    [InlineData(
        "\u201C1090 mm\u201D stands in curly quotation marks; write straight ones: \"1090 mm\".",
        "--note D2 --cut \u201C1090 mm\u201D"
    )]
    [InlineData(
        "'--noet' is not an option of DroneTube trim; did you mean '--note'?",
        "--noet D2 --cut 1090mm"
    )]
    [InlineData("'--colour' is not an option of DroneTube trim.", "--note D2 --cut 1090mm --colour")]
    [InlineData(
        "'--hear' is not an option of DroneTube trim; did you mean '--heard'?",
        "--note D2 --cut 1090mm --hear=71"
    )]
    [InlineData("'—cut' is not an option of DroneTube trim; did you mean '--cut'?", "--note D2 —cut 1090mm")]
    [InlineData("--note: 'C-2' is 4.09 Hz, too low to hear; did you mean C2?", "--note C-2 --cut 1090mm")]
    [InlineData(
        "--reference: 44 Hz is not possible for A4, the A above middle C; write 300 Hz to 600 Hz, usually 440 Hz. The note of the tube is --note.",
        "--note D2 --cut 1090mm --reference 44"
    )]
    [InlineData(
        "--cut: '1090 MM' is not a length: 'MM' is not a unit of it; did you mean \"1090 mm\"?",
        "--note D2 --cut 1090_MM"
    )]
    [InlineData(
        "--heard: 'flat' is not a note that was heard; write its frequency, such as \"71.3 Hz\", or what a tuner shows, such as \"D2 -26 cents\".",
        "--note D2 --cut 1090mm --heard flat"
    )]
    [InlineData(
        "--heard: 'D2 -260 cents' is more than 100 cents from its note; name the nearest note, such as \"D2 -26 cents\".",
        "--note D2 --cut 1090mm --heard D2_-260_cents"
    )]
    public void Is_told_what_to_write(string message, string arguments)
    {
        string[] written = ["trim", Shown, .. arguments.Split(' ').Select(text => text.Replace('_', ' '))];
        Sample.DroneTube(written).Refused(2, message);
    }

    [Fact]
    public void An_option_that_is_not_known_is_no_file()
    {
        Sample
            .DroneTube("compare", Shown, "--note", "D2", "--jsno")
            .Refused(2, "'--jsno' is not an option of DroneTube compare; did you mean '--json'?");
        Sample
            .ColumnTool("", "sweep", "--cuont", "3", "a.json")
            .Refused(2, "'--cuont' is not an option of ColumnTool sweep; did you mean '--count'?");
        Sample.DroneTubeProcess("plam").Refused(2, "'plam' is not a verb of DroneTube; did you mean 'plan'?");
    }

    [Theory]
    [InlineData("--stock", "1000 km", "--stock is 1000000000 mm; allowed is 1 mm to 100000 mm.")]
    [InlineData("--kerf", "10 m", "--kerf is 10000 mm; allowed is 0 mm to 20 mm.")]
    public void Sizes_of_cuts_are_named_as_options(string option, string value, string message) =>
        Sample
            .DroneTube([
                "cuts",
                Shown,
                "--notes",
                "D2",
                .. option == "--kerf" ? (string[])["--stock", "3 m"] : [],
                option,
                value,
            ])
            .Refused(2, message);

    [Theory]
    [InlineData("3' 6 7/8\"")]
    [InlineData("42\u215E in")]
    [InlineData("42 7\u20448 in")]
    [InlineData("42 7/8 Inches")]
    public void Tape_measures_are_understood(string cut)
    {
        // 42 7/8 in of 25.4 mm.
        var rows = Sample.DroneTube("trim", Shown, "--note", "D2", "--cut", cut, "--json").Json();
        Assert.Equal(1.089025, rows.GetProperty("rows")[0].GetProperty("pipeMetres").GetDouble(), 1e-9);
    }

    // D2 is 440·2^(−31/12) Hz at A4 = 440 Hz, 432·2^(−31/12) at 432 Hz; so many cents less by the definition of the cent.
    [Theory]
    [InlineData("D2 \u221226 cents", "440", 440)]
    [InlineData("d2 -26c", "440", 440)]
    [InlineData("D2 -26", "432", 432)]
    public void What_a_tuner_shows_is_a_frequency(string heard, string reference, double a4)
    {
        var hertz = a4 * Math.Pow(2, -31 / 12.0 - 26 / 1200.0);
        string[] arguments =
        [
            "trim",
            Shown,
            "--note",
            "D2",
            "--cut",
            "1090 mm",
            "--reference",
            reference,
            "--json",
        ];
        var shown = Sample.DroneTube([.. arguments, "--heard", heard]).Json();
        var said = Sample
            .DroneTube([.. arguments, "--heard", FormattableString.Invariant($"{hertz:R} Hz")])
            .Json();
        Assert.Equal(
            said.GetProperty("correctionCents").GetDouble(),
            shown.GetProperty("correctionCents").GetDouble(),
            1e-6
        );
    }

    [Theory]
    [InlineData("Inches", "in")]
    [InlineData("inch", "in")]
    [InlineData("MM", "mm")]
    [InlineData("millimeters", "mm")]
    public void Units_may_be_written_out(string written, string units)
    {
        string[] arguments = ["table", Shown, "--from", "D2", "--to", "D2", "--units"];
        Assert.Equal(
            Sample.DroneTube([.. arguments, units]).Succeeded(),
            Sample.DroneTube([.. arguments, written]).Succeeded()
        );
    }

    [Theory]
    [InlineData(
        "{ “tube”: 1 }",
        "The parts file is not JSON; line 1, position 3: '“' is a curly quotation mark; write straight ones, \"."
    )]
    [InlineData(
        "{ \"tube\": 1, // mine\n",
        "The parts file is not JSON; line 1, position 14: comments are not allowed; remove this one."
    )]
    [InlineData(
        "{ \"tube\": 1\n  \"parts\": [] }",
        "The parts file is not JSON; line 2, position 3: '\"' cannot stand here; perhaps a comma or a colon before it is missing."
    )]
    [InlineData(
        "{ \"tube\": 1, \"name\": \"x”,\n \"parts\": [] }",
        "The parts file is not JSON; line 1, position 26: the text before it ends in a curly quotation mark; write a straight one, \"."
    )]
    [InlineData("", "The parts file is empty; it must begin with { \"tube\": 1.")]
    [InlineData("{ \"tube\": 1, \"parst\": [] }", "unknown key \"parst\"; did you mean \"parts\"?")]
    public void A_slip_in_a_parts_file_is_told_with_its_place(string text, string message)
    {
        var file = Path.Combine(folder.FullName, "slip.json");
        File.WriteAllText(file, text);
        Sample.DroneTube("table", file).Refused(2, $"{file}: {message}");
    }

    [Theory]
    [InlineData(
        "\"prise\": 4",
        "parts[0]: unknown key \"prise\"; did you mean \"price\"? Known here: inside, length, name, outside, part, price, stock."
    )]
    [InlineData(
        "\"colour\": \"red\"",
        "parts[0]: unknown key \"colour\". Known here: inside, length, name, outside, part, price, stock."
    )]
    [InlineData("\"price\": -1", "parts[0].price is -1; it must be a finite number, zero or more.")]
    public void A_stray_key_is_told_with_what_was_meant(string key, string message) =>
        A_slip_in_a_parts_file_is_told_with_its_place(
            $$"""{ "tube": 1, "parts": [ { "part": "pipe", "inside": "40 mm", "outside": "44 mm", "length": "open", {{key}} } ] }""",
            message
        );

    [Theory]
    [InlineData("\"part\": \"pip\"", "parts[0].part: 'pip' is not known; did you mean \"pipe\"?")]
    [InlineData(
        "\"part\": \"pipe\", \"insde\": \"40 mm\", \"outside\": \"44 mm\", \"length\": \"open\"",
        "parts[0]: unknown key \"insde\"; did you mean \"inside\"?"
    )]
    [InlineData(
        "\"part\": \"pipe\", \"inside\": \"40 mm\", \"outside\": \"44 mm\", \"length\": \"opne\"",
        "parts[0].length: 'opne' is not known; did you mean \"open\"?"
    )]
    [InlineData(
        "\"part\": \"pipe\", \"inside\": 40, \"outside\": \"44 mm\", \"length\": \"open\"",
        "parts[0].inside: it must be a text in quotes, such as \"40.6 mm\"."
    )]
    [InlineData(
        "\"part\": \"bell\", \"inside\": \"1 m\", \"length\": \"50 mm\"",
        "parts[0].inside is 1000 mm; allowed is 5 mm to 500 mm."
    )]
    [InlineData(
        "\"part\": \"bell\", \"inside\": \"70 mm\", \"length\": \"50 m\"",
        "parts[0].length is 50000 mm; allowed is 0.1 mm to 10000 mm."
    )]
    public void What_is_wrong_with_a_part_is_told_in_the_words_of_the_file(string part, string message) =>
        A_slip_in_a_parts_file_is_told_with_its_place(
            $$"""{ "tube": 1, "parts": [ { {{part}} } ] }""",
            message
        );
}
