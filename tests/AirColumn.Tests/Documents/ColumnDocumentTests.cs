using System.Text;
using AirColumn.Documents;
using AirColumn.Tests.Pitches;
using UnitsNet;

namespace AirColumn.Tests.Documents;

public class ColumnDocumentTests
{
    private static AirProfile RoomAir =>
        Air.At(
            Temperature.FromDegreesCelsius(20),
            RelativeHumidity.FromPercent(50),
            Pressure.FromKilopascals(101.325),
            Ratio.FromPartsPerMillion(400)
        );

    [Fact]
    public void Reads_everything()
    {
        var document = ColumnDocument.Parse(Sample.Full);
        Assert.Equal("stepped tube", document.Name);
        Assert.Equal(RoomAir, document.Air);
        Assert.Equal(WallLosses.LargeTube, document.Options.Losses);
        Assert.Equal(BlownEnd.Open(Length.FromMillimeters(8)), document.Options.BlownEnd);
        Assert.Equal(
            Bore.Build()
                .Cylinder(Length.FromMillimeters(30), Length.FromMillimeters(25))
                .Cone(Length.FromMillimeters(38), Length.FromMillimeters(70), Length.FromMillimeters(90))
                .Profile(
                    new ProfilePoint(Length.Zero, Length.FromMillimeters(70)),
                    new ProfilePoint(Length.FromMillimeters(40), Length.FromMillimeters(74)),
                    new ProfilePoint(Length.FromMillimeters(90), Length.FromMillimeters(80))
                )
                .OpenEnd(Length.FromMillimeters(3)),
            document.Bore
        );
    }

    [Fact]
    public void What_is_left_out_is_room_air_full_losses_and_a_closed_blown_end()
    {
        var document = ColumnDocument.Parse(Sample.Least);
        Assert.Null(document.Name);
        Assert.Equal(RoomAir, document.Air);
        Assert.Equal(new ColumnOptions { Wavefronts = Wavefronts.Automatic }, document.Options);
        Assert.Equal(WallLosses.Full, document.Options.Losses);
        Assert.Same(BlownEnd.Closed, document.Options.BlownEnd);
    }

    [Fact]
    public void Air_needs_only_a_temperature()
    {
        var text = Sample.With(
            ", \"humidity\": \"50 %\", \"pressure\": \"101.325 kPa\", \"co2\": \"400 ppm\"",
            ""
        );
        Assert.Equal(RoomAir, ColumnDocument.Parse(text).Air);
    }

    [Fact]
    public void Reads_constants_of_a_gas()
    {
        var text = Sample.With("\"losses\"", $"\"air\": {Sample.Constants}, \"losses\"", WithoutAir);
        Assert.Equal(
            Air.FromConstants(
                Speed.FromMetersPerSecond(343.37),
                Density.FromKilogramsPerCubicMeter(1.2045),
                DynamicViscosity.FromPascalSeconds(1.814e-5),
                ThermalConductivity.FromWattsPerMeterKelvin(0.0258),
                SpecificEntropy.FromJoulesPerKilogramKelvin(1006),
                1.4019
            ),
            ColumnDocument.Parse(text).Air
        );
    }

    [Theory]
    [InlineData("{ \"kind\": \"open\" }", typeof(OpenEnd))]
    [InlineData("{ \"kind\": \"baffle\" }", typeof(BaffledEnd))]
    [InlineData("{ \"kind\": \"closed\" }", typeof(ClosedEnd))]
    [InlineData("{ \"kind\": \"ideal\" }", typeof(IdealOpenEnd))]
    public void Reads_each_end(string end, Type type)
    {
        var bore = ColumnDocument.Parse(Sample.With("{\"kind\":\"closed\"}", end, Sample.Least)).Bore;
        Assert.IsType(type, bore.FarEnd);
        if (bore.FarEnd is OpenEnd open)
        {
            Assert.Equal(0, open.Wall.Meters);
        }
    }

    [Theory]
    [InlineData("none", WallLosses.None)]
    [InlineData("full", WallLosses.Full)]
    [InlineData("large-tube", WallLosses.LargeTube)]
    public void Reads_each_model_of_losses(string word, WallLosses losses)
    {
        var document = ColumnDocument.Parse(Sample.With("\"large-tube\"", $"\"{word}\""));
        Assert.Equal(losses, document.Options.Losses);
    }

    [Fact]
    public void Gives_the_column_it_describes()
    {
        var document = ColumnDocument.Parse(Sample.Full);
        var column = document.ToColumn();
        Assert.Equal(document.Bore, column.Bore);
        Assert.Equal(document.Air, column.AirProfile);
        Assert.Equal(document.Options, column.Options);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\uFEFF")] // a byte order mark, as some editors write
    public void Reads_a_stream(string beginning)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(beginning + Sample.Full));
        Assert.Equal(ColumnDocument.Parse(Sample.Full), ColumnDocument.Read(stream));
        Assert.True(stream.CanRead);
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void Reads_and_writes_the_same_in_every_culture(string culture)
    {
        var document = ColumnDocument.Parse(Sample.Full);
        var text = document.ToJson();
        Culture.Run(
            culture,
            () =>
            {
                Assert.Equal(document, ColumnDocument.Parse(Sample.Full));
                Assert.Equal(text, document.ToJson());
            }
        );
    }

    [Fact]
    public void Writes_what_a_person_would_write()
    {
        Assert.Equal(
            """
            {
              "column": 2,
              "air": {
                "temperature": "20 °C",
                "humidity": "50 %",
                "pressure": "101.325 kPa",
                "co2": "400 ppm"
              },
              "losses": "full",
              "wavefronts": "automatic",
              "radiation": "exact",
              "tolerance": 1E-10,
              "blownEnd": "closed",
              "sections": [
                {
                  "shape": "cylinder",
                  "diameter": "30 mm",
                  "length": "25 mm"
                }
              ],
              "farEnd": {
                "kind": "closed"
              }
            }
            """.ReplaceLineEndings("\n"),
            ColumnDocument.Parse(Sample.Least).ToJson()
        );
    }

    [Fact]
    public void Refuses_what_it_could_not_write()
    {
        var document = ColumnDocument.Parse(Sample.Least);
        Assert.StartsWith(
            "The radiation of the far end is a function in the program",
            Refused(radiation: RadiationModel.Given(_ => 1)),
            StringComparison.Ordinal
        );
        Assert.Contains("half of a surrogate pair", Refused("\uD800"), StringComparison.Ordinal);
        Assert.Contains(
            "1001 characters; at most 1000 are allowed",
            Refused(new string('x', 1001)),
            StringComparison.Ordinal
        );
        Assert.Contains("for 1 holes; this bore has 0", Refused(fingerings: ["o"]), StringComparison.Ordinal);
        Assert.Contains(
            "'note 0' is given twice",
            Refused(fingerings: ["", "", ""]),
            StringComparison.Ordinal
        );
        Assert.Equal("𝄞", new ColumnDocument(document.Bore, document.Air, name: "𝄞").Name);

        string Refused(string? name = null, RadiationModel? radiation = null, string[]? fingerings = null) =>
            Assert
                .Throws<ArgumentException>(() =>
                    new ColumnDocument(
                        document.Bore,
                        document.Air,
                        new ColumnOptions { Radiation = radiation ?? RadiationModel.Exact },
                        name,
                        fingerings?.Select(
                            (holes, i) => new NamedFingering($"note {i / 2}", Fingering.Parse(holes))
                        )
                    )
                )
                .Message;
    }

    [Fact]
    public void Null_is_an_argument_error()
    {
        var document = ColumnDocument.Parse(Sample.Least);
        Assert.Throws<ArgumentNullException>(() => ColumnDocument.Parse((string)null!));
        Assert.Throws<ArgumentNullException>(() => ColumnDocument.Read(null!));
        Assert.Throws<ArgumentNullException>(() => new ColumnDocument(null!, document.Air));
        Assert.Throws<ArgumentNullException>(() => new ColumnDocument(document.Bore, null!));
    }

    private static string WithoutAir =>
        Sample.With(
            "\"air\": { \"temperature\": \"20 °C\", \"humidity\": \"50 %\", \"pressure\": \"101.325 kPa\", \"co2\": \"400 ppm\" },",
            ""
        );
}
