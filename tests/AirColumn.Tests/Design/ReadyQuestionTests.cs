using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

public class ReadyQuestionTests
{
    private static readonly Frequency D2 = Tuning.Concert.FrequencyOf(Pitch.Parse("D2"));

    [Theory]
    [InlineData(Cents.Octave)]
    [InlineData(Cents.MajorTenth)]
    [InlineData(Cents.Twelfth)]
    public void The_overblown_note_lies_where_it_is_wanted(double cents)
    {
        var tube = new Column(
            Bore.Build()
                .Cylinder(Mm(30), Mm(25))
                .Cone(Mm(34), Mm(70), Mm(900))
                .Cone(Mm(110), Mm(250))
                .OpenEnd(Mm(3)),
            TableAir
        );
        var shape = OverblownInterval.WithFlare(tube, 1, D2, cents);
        Assert.True(shape.IsSolved, shape.Explanation);
        var resonances = shape.Column.FirstResonances(2);
        Near.Absolute(0, Cents.Between(D2, resonances[0].Frequency), 0.01);
        Near.Absolute(cents, Cents.Between(resonances[0].Frequency, resonances[1].Frequency), 0.01);
    }

    // A stopped straight pipe overblows a twelfth, a cone to its apex an octave (any textbook, such as fletcher1998, ch. 8); with a taper
    // between the two, longer for the same note.
    [Fact]
    public void A_taper_is_longer_than_a_straight_tube_and_overblows_lower()
    {
        var tube = new Column(Bore.Build().Cylinder(Mm(30), Mm(1000)).OpenEnd(Mm(3)), TableAir);
        var answers = TaperStudy.Compare(tube, 0, D2, [Mm(30), Mm(60), Mm(120), Mm(240)]);
        Assert.All(answers, answer => Assert.True(answer.Solution.IsSolved, answer.Solution.Explanation));
        Assert.InRange(answers[0].IntervalCents, 1895, 1925);
        for (var i = 1; i < answers.Count; i++)
        {
            Assert.True(answers[i].Solution.Length > answers[i - 1].Solution.Length);
            Assert.InRange(answers[i].IntervalCents, 1200, answers[i - 1].IntervalCents - 50);
        }
    }

    [Fact]
    public void A_tube_cut_too_short_is_brought_down_again()
    {
        var cut = new Column(
            Bore.Build().Cylinder(Mm(30), Mm(25)).Cone(Mm(38), Mm(44), Mm(1090)).OpenEnd(Mm(2)),
            TableAir
        );
        Assert.True(cut.FirstResonances(1)[0].Frequency > D2);

        var sleeve = ShortTube.Sleeve(cut, Mm(46), D2);
        Assert.True(sleeve.IsSolved, sleeve.Explanation);
        Assert.Equal(3, sleeve.Column.Bore.Sections.Count);
        Near.Absolute(0, Cents.Between(D2, sleeve.Column.FirstResonances(1)[0].Frequency), 1e-5);

        var ring = ShortTube.NarrowEnd(cut, Mm(20), D2);
        Assert.True(ring.IsSolved, ring.Explanation);
        Near.Relative(cut.Bore.Length.Meters, ring.Column.Bore.Length.Meters, 1e-12);
        Assert.InRange(ring.Values[0].Value, 0.3 * 0.044, 0.044);
        Near.Absolute(0, Cents.Between(D2, ring.Column.FirstResonances(1)[0].Frequency), 0.01);

        // Down by an octave no ring brings it.
        var impossible = ShortTube.NarrowEnd(cut, Mm(20), D2 / 2);
        Assert.Equal(SolveStatus.OutOfReach, impossible.Status);
        Assert.Throws<ArgumentOutOfRangeException>(() => ShortTube.NarrowEnd(cut, Mm(1100), D2));
    }

    // Stopped pipes without losses or correction are a quarter wave long.
    [Fact]
    public void A_set_of_ideal_pipes_is_a_row_of_quarter_waves()
    {
        var pipe = new Column(
            Bore.Build().Cylinder(Mm(12), Mm(100)).ClosedEnd(),
            TableAir,
            Lossless with
            {
                BlownEnd = BlownEnd.Open(Mm(0)),
            }
        );
        List<Pitch> scale = [Pitch.Parse("A4"), Pitch.Parse("B4"), Pitch.Parse("C#5"), Pitch.Parse("A5")];
        var set = TubeSet.Over(pipe, 0, Tuning.Concert, scale);
        for (var i = 0; i < scale.Count; i++)
        {
            Assert.Equal(scale[i], set[i].Note);
            Near.Relative(
                343.37 / (4 * Tuning.Concert.FrequencyOf(scale[i]).Hertz),
                set[i].Solution.Length.Meters,
                1e-9
            );
        }
    }

    [Fact]
    public void Six_holes_play_a_major_scale()
    {
        var tube = new Column(
            Bore.Build().Cylinder(Mm(19), Mm(500)).OpenEnd(Mm(2.2)),
            TableAir,
            new ColumnOptions { BlownEnd = BlownEnd.Open(Mm(9)) }
        );
        var flute = FingerHoles.MajorScaleOn(
            tube,
            Tuning.Concert,
            Pitch.Parse("D4"),
            [Mm(8), Mm(9), Mm(9), Mm(7), Mm(9), Mm(9)]
        );
        Assert.True(flute.IsSolved, flute.Explanation);
        string[] fingerings = ["xxxxxx", "xxxxxo", "xxxxoo", "xxxooo", "xxoooo", "xooooo", "oooooo"];
        string[] notes = ["D4", "E4", "F#4", "G4", "A4", "B4", "C#5"];
        for (var i = 0; i < notes.Length; i++)
        {
            var found = flute.Column.WithFingering(Fingering.Parse(fingerings[i])).FirstResonances(1)[0];
            Near.Absolute(
                0,
                Cents.Between(Tuning.Concert.FrequencyOf(Pitch.Parse(notes[i])), found.Frequency),
                0.01,
                notes[i]
            );
        }

        // Common practice: the tube is somewhat shorter than half a wave, the lowest hole at some five sixths of it.
        var half = 343.37 / 2 / Tuning.Concert.FrequencyOf(Pitch.Parse("D4")).Hertz;
        Assert.InRange(flute.Column.Bore.Length.Meters, 0.93 * half, half);
        Assert.InRange(flute.Column.Bore.Holes[5].Position / flute.Column.Bore.Length, 0.78, 0.92);
    }

    [Theory]
    [InlineData(11, "C4")]
    [InlineData(15, "G4")]
    [InlineData(25, "A3")]
    public void Holes_find_their_places_on_other_tubes(double bore, string tonic)
    {
        var tube = new Column(
            Bore.Build().Cylinder(Mm(bore), Mm(500)).OpenEnd(Mm(1.5)),
            TableAir,
            new ColumnOptions { BlownEnd = BlownEnd.Open(Mm(bore / 2)) }
        );
        var diameters = Enumerable.Repeat(Mm(0.45 * bore), 6).ToList();
        var flute = FingerHoles.MajorScaleOn(tube, Tuning.Concert, Pitch.Parse(tonic), diameters);
        Assert.True(flute.IsSolved, flute.Explanation);
        var pentatonic = FingerHoles.Place(
            tube,
            Tuning.Concert,
            Pitch.Parse(tonic),
            [3, 5, 7, 10],
            diameters[..4]
        );
        Assert.True(pentatonic.IsSolved, pentatonic.Explanation);
    }

    [Fact]
    public void Parts_that_cannot_be_are_named()
    {
        var horn = new Column(
            Bore.Build()
                .Cylinder(Mm(30), Mm(900))
                .Horn(HornLaw.Exponential, Mm(30), Mm(60), Mm(200))
                .OpenEnd(Mm(2)),
            TableAir
        );
        var ring = Assert.Throws<ArgumentException>(() => ShortTube.NarrowEnd(horn, Mm(20), D2));
        Assert.Contains("cylinder or a cone", ring.Message, StringComparison.Ordinal);
        var plain = new Column(Bore.Build().Cylinder(Mm(30), Mm(900)).OpenEnd(Mm(2)), TableAir);
        var flare = Assert.Throws<ArgumentException>(() => OverblownInterval.WithFlare(plain, 0, D2, 1200));
        Assert.Contains("at least 2", flare.Message, StringComparison.Ordinal);
        var holed = new Column(
            Bore.Build().Cylinder(Mm(30), Mm(900)).Hole(Mm(800), Mm(6), Mm(3)).OpenEnd(Mm(2)),
            TableAir
        );
        var slide = Assert.Throws<ArgumentException>(() =>
            SlidingTube.Of(holed, 0, Mm(700), Mm(900), Tuning.Concert)
        );
        Assert.Contains("after the last of them", slide.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Holes_are_refused_where_they_cannot_be_placed()
    {
        var stopped = new Column(Bore.Build().Cylinder(Mm(19), Mm(500)).OpenEnd(Mm(2)), TableAir);
        var problem = Assert.Throws<ArgumentException>(() =>
            FingerHoles.MajorScaleOn(stopped, Tuning.Concert, Pitch.Parse("D4"), [Mm(8)])
        );
        Assert.Contains("open at both ends", problem.Message, StringComparison.Ordinal);
        var open = new Column(
            Bore.Build().Cylinder(Mm(19), Mm(500)).OpenEnd(Mm(2)),
            TableAir,
            new ColumnOptions { BlownEnd = BlownEnd.Open(Mm(9)) }
        );
        Assert.Throws<ArgumentException>(() =>
            FingerHoles.MajorScaleOn(open, Tuning.Concert, Pitch.Parse("D4"), [Mm(8)])
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            FingerHoles.Place(open, Tuning.Concert, Pitch.Parse("D4"), [2, 2], [Mm(8), Mm(8)])
        );
    }

    [Fact]
    public void A_slide_holds_the_notes_between_its_ends()
    {
        var tubes = new Column(
            Bore.Build().Cylinder(Mm(34), Mm(800)).Cylinder(Mm(42), Mm(300)).OpenEnd(Mm(2)),
            TableAir
        );
        var slide = SlidingTube.Of(tubes, 1, Mm(60), Mm(720), Tuning.Concert);
        Assert.Equal(
            "C2 C#2 D2 D#2 E2 F2 F#2 G2",
            string.Join(' ', slide.Positions.Select(position => position.Note))
        );
        Assert.All(
            slide.Positions,
            position =>
            {
                Assert.InRange(position.DrawnOut.Millimeters, 0, 660);
                var there = tubes.WithBore(
                    tubes.Bore.WithSectionLength(1, Mm(60 + position.DrawnOut.Millimeters))
                );
                Near.Absolute(
                    0,
                    Cents.Between(
                        Tuning.Concert.FrequencyOf(position.Note),
                        there.FirstResonances(1)[0].Frequency
                    ),
                    1e-5
                );
            }
        );
        Assert.Throws<ArgumentException>(() => SlidingTube.Of(tubes, 1, Mm(60), Mm(60), Tuning.Concert));
    }
}
