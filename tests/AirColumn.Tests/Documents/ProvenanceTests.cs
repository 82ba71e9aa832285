using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using AirColumn.Documents;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Tests.Documents;

[Properties(Arbitrary = [typeof(DocumentArbitraries)])]
public class ProvenanceTests
{
    private static readonly HashSet<string> Bibliography =
    [
        .. Regex
            .Matches(
                File.ReadAllText(
                    Path.Combine(
                        typeof(ProvenanceTests)
                            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
                            .Single(a => a.Key == "Top")
                            .Value!,
                        "docs",
                        "references.bib"
                    )
                ),
                @"^@\w+\{([^,]+),",
                RegexOptions.Multiline
            )
            .Select(match => match.Groups[1].Value),
    ];

    [Fact]
    public void Says_what_was_used()
    {
        var document = ColumnDocument.Parse(Sample.New);
        var column = document.ToColumn("G4");
        var provenance = Provenance.Of(column, document);
        Assert.Matches(@"^\d+\.\d+\.\d+", Provenance.LibraryVersion);
        Assert.True(Provenance.Commit is null || Regex.IsMatch(Provenance.Commit, "^[0-9a-f]{40}$"));
        Assert.Equal(document.Sha256(), provenance.DocumentSha256);
        Assert.Equal(column.CharacteristicImpedance, provenance.CharacteristicImpedance);
        Assert.Equal(Wavefronts.Curved, provenance.Wavefronts);
        Assert.Equal(1, provenance.Modes);
        Assert.Equal(WallLosses.Full, provenance.Losses);
        Assert.Equal([AirModel.Iec61094, AirModel.GasMixture], provenance.AirModels);
        Assert.Equal(RadiationModel.Dalmont2001.Name, provenance.Radiation);
        Assert.Equal("xx", provenance.Fingering.ToString());
        Assert.Contains("nederveen1998torus", provenance.Sources);
        Assert.Contains("mcbride2002", provenance.Sources);
        Assert.DoesNotContain("pagneux1996", provenance.Sources);
    }

    [Fact]
    public void Says_how_many_modes_there_were()
    {
        var bore = Bore.Build().Cone(Mm(30), Mm(60), Mm(10)).BaffledEnd();
        var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.Zero);
        var options = new ColumnOptions { Wavefronts = Wavefronts.Multimodal, Modes = 3 };
        var provenance = Provenance.Of(new Column(bore, air, options));
        Assert.Equal((Wavefronts.Multimodal, 3), (provenance.Wavefronts, provenance.Modes));
        Assert.Contains("pagneux1996", provenance.Sources);
        Assert.Equal(new ColumnDocument(bore, air, options).Sha256(), provenance.DocumentSha256);
    }

    [Fact]
    public void A_function_at_the_far_end_has_no_document()
    {
        var bore = Bore.Build().Cylinder(Mm(30), Mm(600)).OpenEnd();
        var options = new ColumnOptions { Radiation = RadiationModel.Given(_ => 1) };
        var provenance = Provenance.Of(new Column(bore, Air.At(AirState.ExhaledBreath), options));
        Assert.Null(provenance.DocumentSha256);
        Assert.DoesNotContain("levine1948", provenance.Sources);
    }

    // Every kind of column: its sources can be looked up.
    [Property(MaxTest = 60)]
    public void Sources_are_in_the_bibliography(ColumnDocument document)
    {
        var air = document.Air.Fillings(document.Bore.LengthMetres).Take(20);
        var sources = SourceKeys.Of(
            new Column(document.Bore, document.Air, document.Options with { Wavefronts = Wavefronts.Curved }),
            air
        );
        Assert.NotEmpty(sources);
        Assert.Empty(sources.Except(Bibliography));
        Assert.Equal(sources.Order(StringComparer.Ordinal).Distinct(), sources);
    }

    [Fact]
    public void The_hash_is_of_what_a_document_says_and_not_of_how()
    {
        var hash = ColumnDocument.Parse(Sample.Full).Sha256();
        Assert.Matches("^[0-9a-f]{64}$", hash);
        Assert.Equal(hash, ColumnDocument.Parse(Sample.Version2(Sample.Full)).Sha256());
        Assert.Equal(hash, ColumnDocument.Parse(Sample.With("25 mm", "2.5 cm")).Sha256());
        Assert.NotEqual(hash, ColumnDocument.Parse(Sample.With("25 mm", "25.0000001 mm")).Sha256());
    }

    // Of the smallest document, by sha256sum: the canonical text is ASCII but for the degree sign, and sorted by hand here.
    [Fact]
    public void The_hash_is_that_of_the_canonical_text()
    {
        const string Canonical =
            """{"air":{"co2":"400 ppm","humidity":"50 %","pressure":"101.325 kPa","temperature":"20 °C"},"blownEnd":"closed","column":2,"farEnd":{"kind":"closed"},"losses":"full","radiation":"exact","sections":[{"diameter":"30 mm","length":"25 mm","shape":"cylinder"}],"tolerance":1e-10,"wavefronts":"automatic"}""";
        using var json = JsonDocument.Parse(ColumnDocument.Parse(Sample.Least).ToJson());
        Assert.Equal(Canonical, Encoding.UTF8.GetString(CanonicalJson.Of(json.RootElement).Span));
        Assert.Equal(
            "505b2645c8ac408b4b8193db15ad63ccd12762dfb7afb32322d5c17b5eb57317",
            ColumnDocument.Parse(Sample.Least).Sha256()
        );
    }

    // Numbers of RFC 8785, appendix B (from memory), and the borders between its ways of writing.
    [Theory]
    [InlineData(0.0, "0")]
    [InlineData(5e-324, "5e-324")]
    [InlineData(1.7976931348623157e308, "1.7976931348623157e+308")]
    [InlineData(9007199254740992.0, "9007199254740992")]
    [InlineData(295147905179352830000.0, "295147905179352830000")]
    [InlineData(9.999999999999997e22, "9.999999999999997e+22")]
    [InlineData(1e23, "1e+23")]
    [InlineData(999999999999999700000.0, "999999999999999700000")]
    [InlineData(1e21, "1e+21")]
    [InlineData(9.999999999999997e-7, "9.999999999999997e-7")]
    [InlineData(0.000001, "0.000001")]
    [InlineData(333333333.3333332, "333333333.3333332")]
    [InlineData(-0.0000033333333333333333, "-0.0000033333333333333333")]
    [InlineData(1.4019, "1.4019")]
    [InlineData(100.0, "100")]
    [InlineData(12.0, "12")]
    [InlineData(0.5, "0.5")]
    public void Numbers_are_as_the_standard_writes_them(double value, string text) =>
        Assert.Equal(text, CanonicalJson.Number(value));

    [Fact]
    public void Members_are_in_order_and_texts_in_one_way()
    {
        using var json = JsonDocument.Parse(
            """{ "\u20ac": "\u000f\n\u0041'\u0042\u0022\\\"\/", "b": [true, null, 1E2], "a": {} }"""
        );
        Assert.Equal(
            "{\"a\":{},\"b\":[true,null,100],\"€\":\"\\u000f\\nA'B\\\"\\\\\\\"/\"}",
            Encoding.UTF8.GetString(CanonicalJson.Of(json.RootElement).Span)
        );
    }

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
