using AirColumn.Tests.Pitches;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

/// <summary>What results print in a loop, on a machine with a decimal comma.</summary>
public class ResultTextTests
{
    [Fact]
    public void A_note_that_no_tube_can_answer_is_named_before_anything_is_computed()
    {
        var pipe = new Column(Bore.Build().Cylinder(diameter: Mm(12), length: Mm(200)).OpenEnd(), TableAir);
        var thrown = Assert.Throws<ArgumentOutOfRangeException>(() =>
            TubeSet.Over(pipe, 0, Tuning.Concert, [Pitch.Parse("A4"), Pitch.Parse("A14")])
        );
        Assert.StartsWith(
            "notes[1] is 450560 Hz; allowed is 0 Hz to ",
            thrown.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Results_print_as_short_texts_in_every_culture() =>
        Culture.Run(
            "de-DE",
            () =>
            {
                var pipe = new Column(
                    Bore.Build().Cylinder(diameter: Mm(12), length: Mm(200)).OpenEnd(),
                    TableAir
                );
                var tube = TubeSet.Over(pipe, 0, Tuning.Concert, [Pitch.Parse("A4")])[0];
                Assert.Equal($"A4: {tube.Solution.Explanation}", tube.ToString());
                var taper = new TaperAnswer(Mm(75.25), tube.Solution, pipe.FirstResonances(2), 1901.5);
                Assert.Equal(
                    $"outlet 75.3 mm: {tube.Solution.Explanation} Overblown +1901.5 cents.",
                    taper.ToString()
                );
                var alone = taper with { IntervalCents = double.NaN };
                Assert.Equal($"outlet 75.3 mm: {tube.Solution.Explanation}", alone.ToString());
                Assert.Equal(
                    "A4 drawn out 12.5 mm, -3.2 cents per mm",
                    new SlidePosition(Pitch.Parse("A4"), Mm(12.5), -3.21).ToString()
                );
                Assert.Equal(
                    "cut 5.0 mm: 82.50 Hz, -3.2 ± 8.1 cents",
                    new TrimRow(
                        Mm(5),
                        Mm(900),
                        Frequency.FromHertz(82),
                        Frequency.FromHertz(82.5),
                        -3.21,
                        8.1
                    ).ToString()
                );
                Assert.Equal(
                    "targets met, largest error 0.004, 1 shape computed",
                    new ShapeStart(true, 0.0042, 1).ToString()
                );
                Assert.Equal(
                    "targets missed, largest error 12.5, 60 shapes computed",
                    new ShapeStart(false, 12.5, 60).ToString()
                );
                Assert.Equal(
                    "a resonance is missing, 3 shapes computed",
                    new ShapeStart(false, double.NaN, 3).ToString()
                );
                Assert.Equal("3 of 2000", new BatchProgress(3, 2000).ToString());
                Assert.Equal("3", new BatchProgress(3, null).ToString());
            }
        );
}
