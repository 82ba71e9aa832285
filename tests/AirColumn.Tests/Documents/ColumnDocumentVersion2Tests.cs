using AirColumn.Documents;
using UnitsNet;

namespace AirColumn.Tests.Documents;

/// <summary>What version 2 of the document adds.</summary>
public class ColumnDocumentVersion2Tests
{
    private static ColumnDocument New => ColumnDocument.Parse(Sample.New);

    private static AirState Room => new(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));

    [Fact]
    public void Reads_holes_branches_and_bends()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(18), Mm(300))
            .Bend(Mm(18), Mm(60), Angle.FromDegrees(90))
            .Add(new BendSection(Mm(18), Mm(60), Angle.FromDegrees(90)).WithLength(Mm(40)))
            .Hole(
                new ToneHole(Mm(200), Mm(7), Mm(5))
                {
                    ChimneyWall = Mm(1),
                    Pad = new HolePad(Mm(2.5), Mm(11)),
                }
            )
            .Hole(new ToneHole(Mm(230), Mm(8), Mm(3)) { Name = "R1" })
            .Branch(
                Mm(60),
                Bore.Build()
                    .Cone(Mm(6), Mm(5), Mm(30))
                    .Branch(Mm(15), Bore.Build().Cylinder(Mm(2), Mm(4)).IdealOpenEnd())
                    .ClosedEnd(),
                "stub"
            )
            .OpenEnd(Mm(2));
        // The arc of the second bend is given by its length, exactly.
        Assert.Equal(0.04, New.Bore.Sections[2].LengthMetres);
        Assert.Equal(bore, New.Bore.WithSection(2, bore.Sections[2]));
        Assert.Equal(bore.Sections[2].LengthMetres, New.Bore.Sections[2].LengthMetres, 1e-16);
    }

    [Fact]
    public void Reads_options_and_fingerings()
    {
        var document = New;
        Assert.Equal(
            new ColumnOptions
            {
                Wavefronts = Wavefronts.Automatic,
                Radiation = RadiationModel.Dalmont2001,
                RelativeTolerance = 1e-9,
                BlownEnd = BlownEnd.FreeOpen(Mm(2)),
                Fingering = Fingering.Parse("ox"),
            },
            document.Options
        );
        Assert.Equal(
            [new NamedFingering("G4", Fingering.Of(false, false)), new("B4", Fingering.AllOpen)],
            document.Fingerings
        );
    }

    [Theory]
    [InlineData("\"decay\": \"200 mm\"", "\"over\": \"200 mm\"", "linear to a place")]
    [InlineData(", \"decay\": \"200 mm\"", "", "linear to the end")]
    public void Reads_a_steady_change_of_the_air(string old, string replacement, string what)
    {
        var over = what == "linear to the end" ? (Length?)null : Mm(200);
        Assert.Equal(
            AirProfile.Linear(AirState.ExhaledBreath, Room, over),
            ColumnDocument.Parse(Sample.With(old, replacement, Sample.New)).Air
        );
    }

    [Fact]
    public void Reads_air_that_fades_a_table_and_a_model()
    {
        Assert.Equal(AirProfile.Exponential(AirState.ExhaledBreath, Room, Mm(200)), New.Air);
        Assert.Equal(
            AirProfile.Tabulated(new(Mm(10), AirState.ExhaledBreath), new(Mm(90), Room)),
            Read(
                "{ \"points\": [[\"10 mm\", { \"state\": \"breath\" }], [\"90 mm\", { \"temperature\": \"20 °C\" }]] }"
            )
        );
        Assert.Equal(
            AirProfile.Uniform(Air.At(Room, AirModel.GasMixture)),
            Read("{ \"temperature\": \"20 °C\", \"model\": \"gas-mixture\" }")
        );
        Assert.Equal(AirProfile.Uniform(Air.At(AirState.ExhaledBreath)), Read("{ \"state\": \"breath\" }"));

        static AirProfile Read(string text) =>
            ColumnDocument
                .Parse(
                    Sample.With(
                        "\"sections\"",
                        $"\"air\": {text}, \"sections\"",
                        Sample.Version2(Sample.Least)
                    )
                )
                .Air;
    }

    [Fact]
    public void Gives_a_column_for_each_fingering()
    {
        var document = New;
        var columns = document.ToColumns();
        Assert.Equal(["G4", "B4"], columns.Select(column => column.Fingering));
        var frequency = Frequency.FromHertz(440);
        foreach (var (name, column) in columns)
        {
            Assert.Equal(document.ToColumn(name).ImpedanceAt(frequency), column.ImpedanceAt(frequency));
        }

        Assert.Equal("ox", document.ToColumn().Options.Fingering.ToString());
        Assert.NotEqual(columns[0].Column.ImpedanceAt(frequency), columns[1].Column.ImpedanceAt(frequency));
        Assert.Empty(ColumnDocument.Parse(Sample.Least).ToColumns());
        Assert.StartsWith(
            "The document has no fingering 'H4'; it has G4, B4.",
            Assert.Throws<ArgumentException>(() => document.ToColumn("H4")).Message,
            StringComparison.Ordinal
        );
    }

    // The whole of the migration: write 2 for 1.
    [Theory]
    [InlineData(Sample.Full)]
    [InlineData(Sample.Least)]
    public void A_document_of_version_1_is_one_of_version_2(string text) =>
        Assert.Equal(ColumnDocument.Parse(text), ColumnDocument.Parse(Sample.Version2(text)));

    [Theory]
    [InlineData("\"holes\": []", "'holes' is a key of version 2 of the format; write \"column\": 2.")]
    [InlineData(
        "\"tolerance\": 1e-9",
        "'tolerance' is a key of version 2 of the format; write \"column\": 2."
    )]
    [InlineData("\"blownEnd\": \"free\"", "blownEnd is 'free'; allowed: closed, open.")]
    [InlineData(
        "\"air\": { \"state\": \"breath\" }",
        "'state' in air is a key of version 2 of the format; write \"column\": 2."
    )]
    public void Version_1_knows_nothing_of_it(string member, string message) =>
        Assert.Equal(
            message,
            Refused(Sample.With("\"sections\"", $"{member}, \"sections\"", Sample.Least)).Message
        );

    [Theory]
    [InlineData("\"x-shelf\"", "\"y-shelf\"", "y-shelf")]
    [InlineData("\"$schema\"", "\"$schemas\"", "$schemas")]
    [InlineData("\"curvatureRadius\"", "\"radius\"", "sections[1].radius")]
    [InlineData("\"60 mm\", \"angle\"", "\"8 mm\", \"angle\"", "sections[1].curvatureRadius")]
    [InlineData("\"90 °\"", "\"0 °\"", "sections[1].angle")]
    [InlineData("\"90 °\"", "\"90 °\", \"length\": \"40 mm\"", "sections[1].length")]
    [InlineData("\"length\": \"40 mm\"", "\"length\": \"0 mm\"", "sections[2].length")]
    [InlineData("\"length\": \"40 mm\"", "\"length\": \"900 m\"", "sections[2]")]
    [InlineData("\"dalmont2001\"", "\"norris1989\"", "radiation")]
    [InlineData("\"dalmont2001\"", "\"Dalmont\"", "radiation")]
    [InlineData("1e-9", "1e-2", "tolerance")]
    [InlineData("1e-9", "\"1e-9\"", "tolerance")]
    [InlineData("1e-9", "1e-9, \"lossFactor\": 0", "lossFactor")]
    [InlineData("1e-9", "1e-9, \"lossFactor\": 11", "lossFactor")]
    [InlineData("1e-9", "1e-9, \"mutualRadiation\": \"no\"", "mutualRadiation")]
    [InlineData("\"blownEnd\": \"free\"", "\"blownEnd\": \"closed\"", "blownWall")]
    [InlineData("\"blownWall\": \"2 mm\"", "\"blownWall\": \"-2 mm\"", "blownWall")]
    [InlineData("\"blownWall\"", "\"correction\"", "correction")]
    [InlineData("\"230 mm\"", "\"203 mm\"", "holes")]
    [InlineData("\"position\": \"230 mm\"", "\"position\": \"0 mm\"", "holes[0].position")]
    [InlineData("\"position\": \"230 mm\", ", "", "holes[0].position")]
    [InlineData("\"8 mm\", \"height\"", "\"28 mm\", \"height\"", "holes")]
    [InlineData("\"chimneyWall\": \"1 mm\"", "\"chimneyWall\": \"-1 mm\"", "holes[1].chimneyWall")]
    [InlineData("\"2.5 mm\"", "\"0 mm\"", "holes[1].pad.height")]
    [InlineData("\"11 mm\"", "11", "holes[1].pad.diameter")]
    [InlineData("\"farEnd\": { \"kind\": \"closed\" }", "\"holes\": []", "branches[0].holes")]
    [InlineData("\"6 mm\", \"to\"", "\"60 mm\", \"to\"", "branches")]
    [InlineData("\"ideal\"", "\"perfect\"", "branches[0].branches[0].farEnd.kind")]
    [InlineData("\"ox\"", "\"oxo\"", "fingering")]
    [InlineData("\"ox\"", "\"o-x\"", "fingering")]
    [InlineData("\"x | x\"", "\"x\"", "fingerings[0].holes")]
    [InlineData("\"B4\"", "\"G4\"", "fingerings")]
    [InlineData("\"B4\"", "\"\"", "fingerings[1].name")]
    [InlineData("\"state\": \"breath\"", "\"state\": \"warm\"", "air.from.state")]
    [InlineData("\"state\": \"breath\"", "\"state\": \"breath\", \"co2\": \"4 %\"", "air.from.co2")]
    [InlineData("\"to\": {", "\"towards\": {", "air.towards")]
    [InlineData("\"decay\": \"200 mm\"", "\"decay\": \"200 mm\", \"over\": \"1 m\"", "air.decay")]
    [InlineData("\"decay\": \"200 mm\"", "\"decay\": \"0 mm\"", "air.decay")]
    [InlineData("\"decay\": \"200 mm\"", "\"points\": []", "air.points")]
    [InlineData("\"decay\": \"200 mm\"", "\"model\": \"gas-mixture\"", "air.model")]
    public void Says_where_it_is_wrong(string old, string replacement, string path)
    {
        var error = Refused(Sample.With(old, replacement, Sample.New));
        Assert.Equal(path, error.Path);
        Assert.InRange(error.Message.Length, 10, 500);
        Assert.DoesNotContain(error.Message, char.IsControl);
    }

    // As deep as branches go, in the document and in code.
    [Fact]
    public void Branches_may_be_16_deep()
    {
        var bore = Deep(16);
        var document = new ColumnDocument(bore, Air.At(Room));
        Assert.Equal(document, ColumnDocument.Parse(document.ToJson()));
        Assert.Throws<ArgumentException>(() => Deep(17));

        static Bore Deep(int depth) =>
            depth == 0
                ? Bore.Build().Cylinder(Mm(1), Mm(20)).ClosedEnd()
                : Bore.Build().Cylinder(Mm(1), Mm(20)).Branch(Mm(5), Deep(depth - 1)).ClosedEnd();
    }

    private static ColumnDocumentException Refused(string text) =>
        Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Parse(text));

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
