using System.Text;
using AirColumn.Documents;

namespace AirColumn.Tests.Documents;

public class ColumnDocumentErrorTests
{
    private const string Known =
        "column, name, air, losses, wavefronts, modes, blownEnd, correction, sections, farEnd";

    [Theory]
    // Versions and keys.
    [InlineData(
        "\"column\": 1",
        "\"column\": 3",
        "column",
        "column is 3; this reader knows versions 1 and 2 of the format; write \"column\": 2."
    )]
    [InlineData(
        "\"column\": 1",
        "\"column\": \"1\"",
        "column",
        "column is '1'; this reader knows versions 1 and 2 of the format; write \"column\": 2."
    )]
    [InlineData(
        "\"column\": 1,",
        "",
        "column",
        "column is missing; write \"column\": 2, the version of the format."
    )]
    [InlineData(
        "\"farEnd\"",
        "\"farend\"",
        "farend",
        "'farend' is not a known key; did you mean 'farEnd'? Known here: " + Known + "."
    )]
    [InlineData(
        "\"diameter\"",
        "\"diametre\"",
        "sections[0].diametre",
        "'diametre' in sections[0] is not a known key; did you mean 'diameter'? Known here: shape, diameter, length."
    )]
    [InlineData(
        "\"humidity\"",
        "\"humidty\"",
        "air.humidty",
        "'humidty' in air is not a known key; did you mean 'humidity'? Known here: temperature, humidity, pressure, co2, speedOfSound, density, viscosity, conductivity, heatCapacity, heatCapacityRatio."
    )]
    [InlineData(
        "\"column\": 1,",
        "\"column\": 1, \"column\": 1,",
        "column",
        "column is given twice; give it once."
    )]
    [InlineData(
        "\"diameter\": \"30 mm\",",
        "\"diameter\": \"30 mm\", \"diameter\": \"30 mm\",",
        "sections[0].diameter",
        "sections[0].diameter is given twice; give it once."
    )]
    [InlineData(
        ", \"length\": \"25 mm\"",
        "",
        "sections[0].length",
        "sections[0].length is missing; write \"length\": \"30 mm\"."
    )]
    [InlineData(
        "\"temperature\": \"20 °C\", ",
        "",
        "air.temperature",
        "air.temperature is missing; write \"temperature\": \"20 °C\"."
    )]
    [InlineData(
        "\"kind\": \"open\", ",
        "",
        "farEnd.kind",
        "farEnd.kind is missing; write \"kind\": \"open\"."
    )]
    [InlineData(
        "\"correction\": \"8 mm\",",
        "",
        "correction",
        "correction is missing; write \"correction\": \"8 mm\", the end correction at the open blown end."
    )]
    // Quantities.
    [InlineData(
        "\"25 mm\"",
        "25",
        "sections[0].length",
        "sections[0].length is 25, a number without a unit; write \"25 mm\"."
    )]
    [InlineData(
        "\"25 mm\"",
        "\"25\"",
        "sections[0].length",
        "sections[0].length: '25' is a number without a unit; write \"25 mm\"."
    )]
    [InlineData(
        "\"25 mm\"",
        "\"25 kg\"",
        "sections[0].length",
        "sections[0].length: '25 kg' is not a length: 'kg' is not a unit of it; write a number and a unit, such as \"25 mm\"."
    )]
    [InlineData(
        "\"25 mm\"",
        "\"NaN mm\"",
        "sections[0].length",
        "sections[0].length: 'NaN mm' is not a length; write a number and a unit, such as \"25 mm\"."
    )]
    [InlineData(
        "\"25 mm\"",
        "\"1e999 mm\"",
        "sections[0].length",
        "sections[0].length: '1e999 mm' is too large a number for a length."
    )]
    [InlineData(
        "\"25 mm\"",
        "null",
        "sections[0].length",
        "sections[0].length is null; it must be a number and a unit in quotation marks, such as \"25 mm\"."
    )]
    [InlineData(
        "\"25 mm\"",
        "\"0 mm\"",
        "sections[0].length",
        "sections[0].length is 0 mm; allowed is 0.001 mm to 1000000 mm."
    )]
    [InlineData(
        "\"30 mm\"",
        "\"-30 mm\"",
        "sections[0].diameter",
        "sections[0].diameter is -30 mm; allowed is 0.01 mm to 10000 mm."
    )]
    [InlineData(
        "\"38 mm\"",
        "\"0 mm\"",
        "sections[1].from",
        "sections[1].from is 0 mm; allowed is 0.01 mm to 10000 mm."
    )]
    [InlineData(
        "\"wall\": \"3 mm\"",
        "\"wall\": \"-3 mm\"",
        "farEnd.wall",
        "farEnd.wall is -3 mm; allowed is 0 mm to 10000 mm."
    )]
    [InlineData("\"8 mm\"", "\"2 m\"", "correction", "correction is 2000 mm; allowed is 0 mm to 1000 mm.")]
    [InlineData("\"50 %\"", "\"130 %\"", "air.humidity", "air.humidity is 130 %; allowed is 0 % to 100 %.")]
    [InlineData(
        "\"50 %\"",
        "0.5",
        "air.humidity",
        "air.humidity is 0.5, a number without a unit; write \"0.5 %\"."
    )]
    [InlineData("\"400 ppm\"", "\"40 %\"", "air.co2", "air.co2 is 40 %; allowed is 0 % to 10 %.")]
    [InlineData(
        "\"20 °C\"",
        "\"200 °C\"",
        "air.temperature",
        "air.temperature is 200 °C; allowed is -20 °C to 50 °C."
    )]
    [InlineData(
        "\"101.325 kPa\"",
        "\"101.325 Pa\"",
        "air.pressure",
        "air.pressure is 0.101325 kPa; allowed is 50 kPa to 110 kPa."
    )]
    [InlineData(
        "\"temperature\"",
        "\"speedOfSound\": \"343 m/s\", \"temperature\"",
        "air.speedOfSound",
        "air gives both a state (temperature) and constants (speedOfSound); give one of the two."
    )]
    // Words.
    [InlineData(
        "\"cylinder\"",
        "\"tube\"",
        "sections[0].shape",
        "sections[0].shape is 'tube'; allowed: cylinder, cone, horn, profile."
    )]
    [InlineData(
        "\"cylinder\"",
        "\"horn\"",
        "sections[0].law",
        "sections[0].law is missing; write \"law\": \"exponential\"."
    )]
    [InlineData(
        "\"straight\"",
        "\"welded\"",
        "sections[2].join",
        "sections[2].join is 'welded'; allowed: straight, smooth."
    )]
    [InlineData(
        "\"plane\"",
        "\"spherical\"",
        "wavefronts",
        "wavefronts is 'spherical'; allowed: automatic, multimodal, curved, sloped, plane."
    )]
    [InlineData(
        "\"plane\"",
        "\"plane\", \"modes\": 13",
        "modes",
        "modes is 13; it must be a whole number from 1 to 12; if you leave it out, the number is chosen for the bore."
    )]
    [InlineData(
        "\"plane\"",
        "\"plane\", \"modes\": 2.5",
        "modes",
        "modes is 2.5; it must be a whole number from 1 to 12; if you leave it out, the number is chosen for the bore."
    )]
    [InlineData(
        "\"plane\"",
        "\"round\"",
        "wavefronts",
        "wavefronts is 'round'; allowed: automatic, multimodal, curved, sloped, plane."
    )]
    [InlineData("\"large-tube\"", "\"some\"", "losses", "losses is 'some'; allowed: none, full, large-tube.")]
    [InlineData("\"large-tube\"", "7", "losses", "losses is 7; allowed: none, full, large-tube.")]
    [InlineData(
        "\"blownEnd\": \"open\"",
        "\"blownEnd\": \"ajar\"",
        "blownEnd",
        "blownEnd is 'ajar'; allowed: closed, open."
    )]
    [InlineData(
        "\"blownEnd\": \"open\"",
        "\"blownEnd\": \"closed\"",
        "correction",
        "correction has a meaning only if the blown end is open; leave it out or write \"blownEnd\": \"open\"."
    )]
    [InlineData(
        "\"kind\": \"open\"",
        "\"kind\": \"flared\"",
        "farEnd.kind",
        "farEnd.kind is 'flared'; allowed: open, baffle, closed, ideal."
    )]
    [InlineData(
        "\"kind\": \"open\"",
        "\"kind\": \"baffle\"",
        "farEnd.wall",
        "farEnd.wall has no effect if farEnd.kind is 'baffle'; leave it out."
    )]
    // Shapes of the JSON.
    [InlineData(
        "{ \"kind\": \"open\", \"wall\": \"3 mm\" }",
        "\"open\"",
        "farEnd",
        "farEnd is 'open'; it must be an object, such as { \"kind\": \"open\", \"wall\": \"3 mm\" }."
    )]
    [InlineData("\"stepped tube\"", "5", "name", "name is 5; it must be a text.")]
    [InlineData(
        "\"stepped tube\"",
        "\"\\ud800\"",
        "name",
        "name holds only half of a surrogate pair; write both halves."
    )]
    [InlineData(
        "\"name\"",
        "\"\\ud800\"",
        "",
        "A key holds only half of a surrogate pair; write both halves."
    )]
    [InlineData(
        "[\"40 mm\", \"74 mm\"]",
        "[\"40 mm\"]",
        "sections[2].points[1]",
        "sections[2].points[1] has 1 items; it must be a place and a diameter, such as [\"40 mm\", \"44 mm\"]."
    )]
    [InlineData(
        "[\"40 mm\", \"74 mm\"]",
        "\"40 mm\"",
        "sections[2].points[1]",
        "sections[2].points[1] is '40 mm'; it must be a place and a diameter, such as [\"40 mm\", \"44 mm\"]."
    )]
    [InlineData(
        "[\"40 mm\", \"74 mm\"]",
        "[40, \"74 mm\"]",
        "sections[2].points[1][0]",
        "sections[2].points[1][0] is 40, a number without a unit; write \"40 mm\"."
    )]
    [InlineData(
        "[\"40 mm\", \"74 mm\"]",
        "[\"40 mm\", \"0 mm\"]",
        "sections[2].points[1][1]",
        "sections[2].points[1][1] is 0 mm; allowed is 0.01 mm to 10000 mm."
    )]
    [InlineData(
        "\"70 mm\"], [\"40 mm\"",
        "\"0 mm\"], [\"40 mm\"",
        "sections[2].points[0][1]",
        "sections[2].points[0][1] is 0 mm; allowed is 0.01 mm to 10000 mm."
    )]
    [InlineData(
        "[\"40 mm\", \"74 mm\"]",
        "[\"95 mm\", \"74 mm\"]",
        "sections[2].points[2][0]",
        "sections[2].points[2][0] is 90 mm, not beyond the point before it at 95 mm; places must increase. For a sudden change of diameter, use two sections."
    )]
    [InlineData(
        "[\"40 mm\", \"74 mm\"]",
        "[\"0.0005 mm\", \"74 mm\"]",
        "sections[2].points[1][0]",
        "sections[2].points[1][0] is 0.0005 mm beyond the point before it; allowed is at least 0.001 mm."
    )]
    [InlineData(
        "\"25 mm\"",
        "\"-1/2 in\"",
        "sections[0].length",
        "sections[0].length is -12.7 mm; allowed is 0.001 mm to 1000000 mm."
    )]
    [InlineData(
        "[\"0 mm\", \"70 mm\"]",
        "[\"1 mm\", \"70 mm\"]",
        "sections[2].points",
        "sections[2].points: The first profile point is at 1 mm; positions are measured from the section's inlet, so it must be at 0 mm."
    )]
    [InlineData(
        ", [\"40 mm\", \"74 mm\"], [\"90 mm\", \"80 mm\"]",
        "",
        "sections[2].points",
        "sections[2].points: A profile has 1 points; it needs at least 2, from its inlet to its outlet."
    )]
    public void Says_where_and_what_is_wrong(string old, string replacement, string path, string message)
    {
        var error = Assert.Throws<ColumnDocumentException>(() =>
            ColumnDocument.Parse(Sample.With(old, replacement))
        );
        Assert.Equal(message, error.Message);
        Assert.Equal(path, error.Path);
    }

    [Theory]
    [InlineData("", "The document is empty; it must be a JSON object that begins with \"column\": 2.")]
    [InlineData(" \n\t", "The document is empty; it must be a JSON object that begins with \"column\": 2.")]
    [InlineData("[]", "The document is a list; it must be an object, such as { \"column\": 2, … }.")]
    [InlineData("{}", "column is missing; write \"column\": 2, the version of the format.")]
    [InlineData("{\"column\":1}", "sections is missing; write \"sections\": [ … ].")]
    [InlineData(
        "{\"column\":1,\"sections\":[]}",
        "sections is empty; a bore needs at least 1 section, such as { \"shape\": \"cylinder\", \"diameter\": \"30 mm\", \"length\": \"25 mm\" }."
    )]
    [InlineData(
        "{\"column\":1,\"sections\":{}}",
        "sections is an object; it must be a list, such as [{ \"shape\": \"cylinder\", \"diameter\": \"30 mm\", \"length\": \"25 mm\" }]."
    )]
    [InlineData(
        "{\n \"name\": \"°°\", \"column\": ",
        "The document is not complete JSON; line 2, position 25: it ends too early; a quotation mark, a brace or a bracket is not closed."
    )]
    [InlineData(
        "{\n \"name\": \"°°\", \"column\": NaN }",
        "The document is not JSON; line 2, position 26: 'N' cannot stand here."
    )]
    [InlineData(
        "{\"column\": 1,\n}",
        "The document is not JSON; line 2, position 1: there is a comma before '}'; remove the comma."
    )]
    [InlineData(
        "{\"sections\": [1, ]}",
        "The document is not JSON; line 1, position 18: there is a comma before ']'; remove the comma."
    )]
    [InlineData(
        "{ // tube\n}",
        "The document is not JSON; line 1, position 3: comments are not allowed; remove this one."
    )]
    [InlineData(
        "{ \"column\": /* 1 */ 1 }",
        "The document is not JSON; line 1, position 13: comments are not allowed; remove this one."
    )]
    [InlineData(
        "{ \"column\": 1 \"name\": 2 }",
        "The document is not JSON; line 1, position 15: '\"' cannot stand here; perhaps a comma or a colon before it is missing."
    )]
    [InlineData(
        "{ 'column': 1 }",
        "The document is not JSON; line 1, position 3: write texts in double quotation marks."
    )]
    [InlineData(
        "{ \"name\": \"a\nb\" }",
        "The document is not JSON; line 1, position 13: a line break or a tab within quotation marks; write it as \\n or \\t."
    )]
    [InlineData("{\f}", "The document is not JSON; line 1, position 2: '\uFFFD' cannot stand here.")]
    [InlineData("{} \u0436", "The document is not JSON; line 1, position 4: '\u0436' cannot stand here.")]
    [InlineData("{} \U0001F600", "The document is not JSON; line 1, position 4: this cannot stand here.")]
    [InlineData("{\"column\": 01}", "The document is not JSON; line 1, position 13: '1' cannot stand here.")]
    [InlineData("{\"column\": nul}", "The document is not JSON; line 1, position 15: '}' cannot stand here.")]
    [InlineData("{\"a\": \"\\x\"}", "The document is not JSON; line 1, position 9: 'x' cannot stand here.")]
    public void Says_what_is_wrong_with_the_whole(string text, string message) =>
        Assert.Equal(
            message,
            Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Parse(text)).Message
        );

    [Fact]
    public void Every_beginning_of_a_document_ends_too_early()
    {
        for (var length = 1; length < Sample.Least.TrimEnd().Length; length++)
        {
            var error = Assert.Throws<ColumnDocumentException>(() =>
                ColumnDocument.Parse(Sample.Least[..length])
            );
            Assert.Contains("it ends too early", error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Constants_are_all_needed_and_checked()
    {
        var document = Sample.With("\"column\":1", $"\"column\":1,\"air\":{Sample.Constants}", Sample.Least);
        Assert.NotNull(ColumnDocument.Parse(document));
        AssertSays(
            "air.density is missing; write \"density\": \"1.2045 kg/m³\".",
            "\"density\": \"1.2045 kg/m³\",",
            ""
        );
        AssertSays(
            "air.density is 0 kg/m³; it must be a finite number greater than zero.",
            "\"1.2045 kg/m³\"",
            "\"0 kg/m³\""
        );
        AssertSays(
            "air.heatCapacityRatio is 1; it must be greater than 1 and less than 2 (air 1.4, monatomic gases 1.67).",
            "1.4019",
            "1"
        );
        AssertSays(
            "air.heatCapacityRatio is '1.4'; it must be a number without a unit and without quotation marks.",
            "1.4019",
            "\"1.4\""
        );
        AssertSays(
            "air.heatCapacityRatio is 1e999; it must be a number without a unit and without quotation marks.",
            "1.4019",
            "1e999"
        );
        void AssertSays(string message, string old, string replacement) =>
            Assert.Equal(
                message,
                Assert
                    .Throws<ColumnDocumentException>(() =>
                        ColumnDocument.Parse(Sample.With(old, replacement, document))
                    )
                    .Message
            );
    }

    [Fact]
    public void Size_depth_and_number_are_bounded()
    {
        AssertSays(
            "The document is larger than 16 MiB, which is the limit.",
            Sample.Least + new string(' ', 16 * 1024 * 1024)
        );
        AssertSays(
            "The document is nested more than 64 deep; line 1, position 65. That is the limit.",
            new string('[', 100_000)
        );
        AssertSays(
            "sections has 100001 items; at most 100000 are allowed.",
            Sample.With("{\"shape\"", $"{Repeat("0,")}{{\"shape\"", Sample.Least)
        );
        AssertSays(
            "sections[0].points has 100001 items; at most 100000 are allowed.",
            $"{{\"column\":1,\"sections\":[{{\"shape\":\"profile\",\"points\":[{Repeat("0,")}0]}}],\"farEnd\":{{\"kind\":\"open\"}}}}"
        );
        static string Repeat(string item) => string.Concat(Enumerable.Repeat(item, 100_000));
        static void AssertSays(string message, string text) =>
            Assert.Equal(
                message,
                Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Parse(text)).Message
            );
    }

    [Fact]
    public void A_stream_is_not_read_beyond_the_limit()
    {
        using var endless = new Endless();
        Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Read(endless));
        Assert.InRange(endless.Position, 16 * 1024 * 1024, 17 * 1024 * 1024);
    }

    [Fact]
    public void Only_UTF_8_is_read()
    {
        using var stream = new MemoryStream(
            Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(Sample.Least)).ToArray()
        );
        var error = Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Read(stream));
        Assert.Equal("The document is not UTF-8 text; save it as UTF-8.", error.Message);
        Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Parse("\uD800"));
        // Without the mark at its beginning, UTF-16 is UTF-8 with zero bytes.
        using var bare = new MemoryStream(Encoding.Unicode.GetBytes("{}"));
        Assert.Equal(
            "The document is not JSON; line 1, position 2: there is a zero byte. It looks like UTF-16; save it as UTF-8.",
            Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Read(bare)).Message
        );
    }

    private sealed class Endless : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get; set; }

        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)' ');
            Position += count;
            return count;
        }

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
