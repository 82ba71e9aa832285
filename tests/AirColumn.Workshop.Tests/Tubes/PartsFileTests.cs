using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Tests.Tubes;

public class PartsFileTests
{
    private const string Pipe =
        """{ "part": "pipe", "name": "pipe", "inside": "40 mm", "outside": "48.26 mm", "length": "open" }""";

    [Fact]
    public void Every_kind_of_part_is_read()
    {
        var file = Read(
            """
            { "part": "insert", "inside": "30 mm", "outside": "1.5 in", "inserted": "25 mm", "protrudes": "12 mm", "price": 4 },
            { "part": "pipe", "stock": "pvc-40 1-1/2", "inside": "40.6 mm", "length": "open", "price": 9.5 },
            { "part": "elbow", "before": "pvc-40 1-1/2", "after": "pvc-40 1-1/2", "inside": "41 mm", "radius": "50 mm", "angle": 90, "gap": "1 mm" },
            { "part": "pipe", "stock": "pvc-40 1-1/2", "length": "300 mm" },
            { "part": "coupling", "before": "pvc-40 1-1/2", "after": { "entrance": "60.7 mm", "bottom": "60.2 mm", "depth": "30 mm" }, "inside": "41 mm", "between": "14 mm" },
            { "part": "pipe", "stock": "pvc-40 2", "length": "800 mm" },
            { "part": "bend", "radius": "150 mm", "angle": 90, "straightAfter": "100 mm" },
            { "part": "bell", "name": "bell", "inside": "72 mm", "length": "60 mm" }
            """
        );
        Assert.Equal("a tube", file.Name);
        Assert.Equal(8, file.Assembly.Parts.Count);
        Assert.Equal("insert 1", file.Assembly.Parts[0].Name);
        Assert.Equal(40.6, file.Assembly.FreePipe!.Inside.Millimeters, 1e-9);
        Assert.Equal(2, file.Assembly.Wall.Millimeters, 1e-9);
        Assert.Null(file.Assembly.Price);
        var fitting = Read(
            Pipe
                + """, { "part": "fitting", "name": "cone", "adds": "45 mm", "inside": "63 mm", "price": 2 }"""
        );
        var drilled = Read(
            Pipe
                + """, { "part": "hole", "name": "first", "diameter": "9 mm", "at": "120 mm" }, { "part": "hole", "name": "vent", "diameter": "5 mm", "at": "4 in", "from": "lips", "drone": "open" }"""
        );
        Assert.Equal(
            [
                new HolePart("first", Bench.Mm(9), Bench.Mm(120), PipeEnd.Open),
                new HolePart("vent", Bench.Mm(5), Bench.Mm(101.6), PipeEnd.Lips) { IsOpenInDrone = true },
            ],
            drilled.Assembly.Parts.Skip(1)
        );
        Assert.Equal(45, ((AddedPart)fitting.Assembly.Parts[1]).Adds.Millimeters, 1e-9);
    }

    [Theory]
    [InlineData(
        """{ "part": "pipe", "inside": "40 mm", "outside": "44 mm" }""",
        "parts[0].length: it is missing"
    )]
    [InlineData(
        """{ "part": "pipe", "inside": 40, "outside": "44 mm", "length": "open" }""",
        "parts[0].inside: it must be a text in quotes"
    )]
    [InlineData(
        """{ "part": "pipe", "inside": "40", "outside": "44 mm", "length": "open" }""",
        "parts[0].inside: "
    )]
    [InlineData(
        """{ "part": "pipe", "inside": "40 mm", "outside": "44 mm", "length": "open", "colour": "red" }""",
        "parts[0]: unknown key \"colour\". Known here: inside, "
    )]
    [InlineData(
        """{ "part": "pipe", "inside": "40 mm", "outside": "44 mm", "length": "open", "prise": 4 }""",
        "parts[0]: unknown key \"prise\"; did you mean \"price\"?"
    )]
    [InlineData(
        """{ "part": "pipe", "inside": "40 mm", "outside": "39 mm", "length": "open" }""",
        "parts[0]: 'pipe 1' is 40 mm (1.575 in) inside and 39 mm (1.535 in) outside"
    )]
    [InlineData(
        """{ "part": "pipe", "stock": "pvc-40 9", "length": "open" }""",
        "parts[0]: There is no pipe 'pvc-40 9'"
    )]
    [InlineData("""{ "part": "tap" }""", "parts[0].part: 'tap' is not known")]
    [InlineData("""{ "name": "x" }""", "parts[0].part: it is missing")]
    [InlineData("""{ "part": "coupling", "inside": "40 mm", "between": "3 mm" }""", "has no socket")]
    [InlineData(
        """{ "part": "pipe", "name": "\ud800" }""",
        "parts[0].name: it holds only half of a surrogate pair"
    )]
    [InlineData(
        """{ "part": "pipe", "inside": "40 mm", "outside": "44 mm", "length": "open", "price": -5 }""",
        "parts[0].price is -5"
    )]
    [InlineData(
        """{ "part": "elbow", "before": "pvc-40 1", "after": "pvc-40 1", "inside": "27 mm", "radius": "30 mm", "angle": 0.01 }""",
        "parts[0]: The elbow 'elbow 1' would be 0.01 mm (0.000 in) long between its stops"
    )]
    [InlineData("7", "parts[0] must be an object")]
    [InlineData("""{ "part": "pipe", "part": "pipe" }""", "parts[0].part: it is given twice")]
    public void What_is_wrong_is_told_with_its_place(string part, string says)
    {
        var problem = Assert.Throws<FormatException>(() => Read(part));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("(Parameter", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "The parts file is empty")]
    [InlineData("[1", "not complete JSON")]
    [InlineData("[]", "must be an object")]
    [InlineData("{}", "tube is missing; write \"tube\": 1, the version of the format.")]
    [InlineData("""{ "tube": 2, "parts": [] }""", "tube: it must be 1")]
    [InlineData("""{ "tube": 1 }""", "parts: it is missing; write a list")]
    [InlineData("""{ "tube": 1, "parts": [] }""", "no pipe among the parts")]
    [InlineData(
        """{ "tube": 1, "parts": [], "air": 3 }""",
        "unknown key \"air\". Known here: name, parts, tube, wall."
    )]
    public void A_file_that_is_none_is_told(string json, string says)
    {
        var problem = Assert.Throws<FormatException>(() => PartsFile.Read(json, Catalogue.Standard));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
    }

    private static PartsFile Read(string parts) =>
        PartsFile.Read(
            $$"""{ "tube": 1, "name": "a tube", "wall": "2 mm", "parts": [ {{parts}} ] }""",
            Catalogue.Standard
        );
}
