using System.Numerics;
using System.Reflection;
using AirColumn.Documents;
using UnitsNet;

namespace AirColumn.Tests.Documents;

/// <summary>The instruments that are written by hand, and the same in C#: their answers are the same to the last digit.</summary>
public class InstrumentTests
{
    private static readonly ColumnOptions Closed = new() { Wavefronts = Wavefronts.Automatic };

    private static AirState Breath => AirState.ExhaledBreath;

    [Fact]
    public void A_clarinet()
    {
        var holes = new (double Position, double Diameter)[]
        {
            (205, 6.5),
            (236, 7),
            (268, 7.5),
            (306, 8),
            (341, 8),
        };
        var bore = holes
            .Aggregate(
                Bore.Build().Cylinder(Mm(15), Mm(430)).Horn(HornLaw.Exponential, Mm(15), Mm(45), Mm(120)),
                (builder, hole) => builder.Hole(Mm(hole.Position), Mm(hole.Diameter), Mm(5))
            )
            .Hole(
                new ToneHole(Mm(378), Mm(9), Mm(8)) { ChimneyWall = Mm(1), Pad = new HolePad(Mm(3), Mm(13)) }
            )
            .OpenEnd(Mm(3));
        var air = AirProfile.Exponential(Breath, State(21), Mm(250));
        AssertSame("clarinet", new Column(bore, air, Closed with { Fingering = Fingering.AllClosed }), "six");
        AssertSame(
            "clarinet",
            new Column(bore, air, Closed with { Fingering = Fingering.Parse("xxxooo") }),
            "three"
        );
        Assert.Equal(7, Document("clarinet").ToColumns().Count);
    }

    [Fact]
    public void A_flute()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(19), Mm(150))
            .Cone(Mm(13), Mm(390))
            .Branch(Mm(12), Bore.Build().Cylinder(Mm(17), Mm(14)).ClosedEnd())
            .Hole(Mm(245), Mm(7), Mm(4))
            .Hole(Mm(280), Mm(7.5), Mm(4))
            .Hole(Mm(316), Mm(6), Mm(4.2))
            .Hole(Mm(358), Mm(7), Mm(4.2))
            .Hole(Mm(391), Mm(7), Mm(4.4))
            .Hole(Mm(427), Mm(5), Mm(4.4))
            .OpenEnd(Mm(4));
        var column = new Column(
            bore,
            AirProfile.Linear(Breath, State(20), Mm(300)),
            Closed with
            {
                BlownEnd = BlownEnd.Open(Mm(42)),
                Fingering = Fingering.AllClosed,
            }
        );
        AssertSame("flute", column);
        AssertSame("flute", column.WithFingering(Fingering.Parse("xox xxo")), "forked");
    }

    [Fact]
    public void A_set_of_pan_pipes()
    {
        var lengths = new[] { 156, 138, 122, 102, 90 };
        for (var i = 0; i < lengths.Length; i++)
        {
            AssertSame(
                $"pan-pipes/{i + 1}",
                new Column(
                    Bore.Build().Cylinder(Mm(11), Mm(lengths[i])).ClosedEnd(),
                    Air.At(Temperature.FromDegreesCelsius(22), RelativeHumidity.FromPercent(60)),
                    Closed with
                    {
                        BlownEnd = BlownEnd.Open(Mm(4)),
                    }
                )
            );
        }
    }

    [Fact]
    public void A_bent_drone_tube()
    {
        var radius = Mm(70);
        var bore = Bore.Build()
            .Cylinder(Mm(31), Length.FromCentimeters(62))
            .Bend(Mm(31), radius, Angle.FromDegrees(180))
            .Cylinder(Mm(31), Length.FromCentimeters(55))
            .Bend(Mm(31), radius, Angle.FromRadians(Mm(219) / radius))
            .Profile(
                [new(Length.Zero, Mm(31)), new(Mm(200), Mm(36)), new(Mm(380), Mm(52))],
                ProfileJoin.Smooth
            )
            .OpenEnd(Mm(2.5));
        var air = AirProfile.Tabulated(
            new(Length.Zero, Breath),
            new(Mm(400), State(27, 90)),
            new(Length.FromMeters(1.5), State(20))
        );
        AssertSame(
            "drone",
            new Column(
                bore,
                air,
                Closed with
                {
                    Wavefronts = Wavefronts.Curved,
                    Radiation = RadiationModel.Dalmont2001,
                }
            )
        );
    }

    private static void AssertSame(string name, Column expected, string? fingering = null)
    {
        var document = Document(name);
        var column = fingering is null ? document.ToColumn() : document.ToColumn(fingering);
        Assert.Equal(expected.AirProfile, column.AirProfile);
        Assert.Equal(Unnamed(expected.Bore), Unnamed(column.Bore));
        var frequency = Frequency.FromHertz(331);
        Assert.Equal(expected.ImpedanceAt(frequency), column.ImpedanceAt(frequency));
        var (one, other) = (expected.FirstResonances(2), column.FirstResonances(2));
        Assert.Equal(one.Select(Numbers), other.Select(Numbers));
        Assert.Equal(one.Warnings, other.Warnings);
    }

    // Names of holes and branches change no answer.
    private static Bore Unnamed(Bore bore) =>
        new(
            bore.Sections,
            bore.FarEnd,
            bore.Holes.Select(hole => hole with { Name = null }),
            bore.Branches.Select(branch => new SideBranch(branch.Position, branch.Bore))
        );

    private static (double, double, Complex) Numbers(Resonance resonance) =>
        (resonance.Frequency.Hertz, resonance.Magnitude, resonance.Pole);

    private static ColumnDocument Document(string name)
    {
        var top = typeof(InstrumentTests)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == "Top")
            .Value!;
        using var file = File.OpenRead(Path.Combine(top, "samples", "Instruments", $"{name}.json"));
        return ColumnDocument.Read(file);
    }

    private static AirState State(double celsius, double percent = 50) =>
        new(Temperature.FromDegreesCelsius(celsius), RelativeHumidity.FromPercent(percent));

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
