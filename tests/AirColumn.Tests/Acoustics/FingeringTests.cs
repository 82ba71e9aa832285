using AirColumn.Acoustics.Line;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class FingeringTests
{
    private static Bore Whistle =>
        Bore.Build()
            .Cylinder(Mm(15), Mm(300))
            .Hole(Mm(180), Mm(7), Mm(3))
            .Hole(Mm(210), Mm(7), Mm(3))
            .Hole(Mm(240), Mm(8), Mm(3))
            .OpenEnd();

    [Fact]
    public void Charts_are_read_and_written()
    {
        Assert.Equal(Fingering.Of(false, true, true), Fingering.Parse("x oo"));
        Assert.Equal(Fingering.Of(false, true, true), Fingering.Parse("●|○O"));
        Assert.Equal("xoo", Fingering.Parse("X oo").ToString());
        Assert.Equal(3, Fingering.Parse("xoo").Count);
        Assert.Same(Fingering.AllOpen, Fingering.Parse(Fingering.AllOpen.ToString()));
        Assert.Same(Fingering.AllClosed, Fingering.Parse(Fingering.AllClosed.ToString()));
        Assert.Null(Fingering.AllOpen.Count);
        Assert.NotEqual(Fingering.AllOpen, Fingering.AllClosed);
        Assert.Contains(
            "'u'",
            Assert.Throws<FormatException>(() => Fingering.Parse("xux")).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_fingering_for_another_number_of_holes_is_refused()
    {
        var column = new Column(Whistle, TableAir);
        var problem = Assert.Throws<ArgumentException>(() => column.WithFingering(Fingering.Parse("xxoo")));
        Assert.Equal("fingering", problem.ParamName);
        Assert.Contains("for 4 holes; this bore has 3", problem.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() =>
            new Column(Whistle, TableAir, new ColumnOptions { Fingering = Fingering.Parse("x") })
        );
    }

    [Fact]
    public void Changing_the_fingering_exchanges_the_holes_alone()
    {
        var open = new Column(Whistle, TableAir);
        var fingered = open.WithFingering(Fingering.Parse("xxo"));
        Assert.Equal(Fingering.Parse("xxo"), fingered.Options.Fingering);
        Assert.Same(open.Model.End, fingered.Model.End);
        var changed = open
            .Model.Way.Zip(fingered.Model.Way)
            .Where(pair => !ReferenceEquals(pair.First, pair.Second))
            .ToList();
        Assert.Equal(2, changed.Count);
        Assert.All(changed, pair => Assert.IsType<SideColumn>(pair.Second));

        // The same as compiled anew.
        var anew = new Column(Whistle, TableAir, new ColumnOptions { Fingering = Fingering.Parse("xxo") });
        var f = Frequency.FromHertz(617);
        Assert.Equal(anew.ImpedanceAt(f), fingered.ImpedanceAt(f));
        Assert.Equal(open.ImpedanceAt(f), fingered.WithFingering(Fingering.AllOpen).ImpedanceAt(f));
    }
}
