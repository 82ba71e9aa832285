using AirColumn.Workshop.Instruments;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Instruments;

/// <summary>Pan pipes and flutes for the bench.</summary>
public class InstrumentTests
{
    private static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(20),
        RelativeHumidity.FromPercent(50)
    );

    // A stopped pipe is a quarter of the wave less its end correction: c/4f − 0.61 d, which leaves out the losses of the wall; they lower a narrow
    // pipe by a few tenths of a percent.
    [Fact]
    public void A_pan_pipe_is_a_quarter_wave_less_what_the_face_adds()
    {
        var pipe = PanPipe.For(
            Pitch.Parse("A4"),
            Tuning.Concert,
            Room,
            Length.FromMillimeters(13),
            Length.FromMillimeters(15)
        );
        var expected = 1000 * Room.SpeedOfSound.MetersPerSecond / (4 * 440) - 0.61 * 13;
        Assert.InRange(pipe.Air.Millimeters / expected, 0.98, 1);
        Assert.Equal(0.21 * 13, pipe.PlusMinus.Millimeters, 1e-9);
        Assert.Equal(Math.Ceiling(pipe.Air.Millimeters + 0.21 * 13 + 15), pipe.Cut.Millimeters, 1e-9);
    }

    // Tone, tone, semitone and so on, as every primer has them; the scales of five notes are these without two.
    [Fact]
    public void Scales_have_the_steps_of_their_names()
    {
        Assert.Equal([2, 2, 1, 2, 2, 2, 1], Between(Scale.Major));
        Assert.Equal([2, 1, 2, 2, 1, 2, 2], Between(Scale.Minor));
        Assert.Equal(Enumerable.Repeat(1, 12), Between(Scale.Chromatic));
        Assert.Equal(Without(Scale.Major, 4, 7), Scale.MajorPentatonic.Steps);
        Assert.Equal(Without(Scale.Minor, 2, 6), Scale.MinorPentatonic.Steps);

        static IEnumerable<int> Between(Scale scale) =>
            scale.Steps.Append(12).Skip(1).Zip(scale.Steps, (upper, lower) => upper - lower);
        static IEnumerable<int> Without(Scale scale, params int[] degrees) =>
            scale.Steps.Where((_, i) => !degrees.Contains(i + 1));
    }

    [Fact]
    public void A_scale_goes_on_above_its_octave()
    {
        Assert.Equal(
            ["G4", "A4", "B4", "C5", "D5", "E5", "F#5", "G5", "A5"],
            Scale.Major.From(Pitch.Parse("G4"), 9).Select(note => note.ToString())
        );
        Assert.Equal(
            ["A3", "C4", "D4", "E4", "G4", "A4"],
            Scale.MinorPentatonic.From(Pitch.Parse("A3"), 6).Select(note => note.ToString())
        );
    }

    [Fact]
    public void A_flute_plays_its_scale_and_says_what_is_far()
    {
        double[] diameters = [8, 9, 9, 7, 9, 9];
        var flute = FingeredFlute.Major(
            Pitch.Parse("D4"),
            Tuning.Concert,
            Room,
            Length.FromMillimeters(19),
            Length.FromMillimeters(23.4),
            Length.FromMillimeters(9),
            [.. diameters.Select(mm => Length.FromMillimeters(mm))]
        );
        Assert.True(flute.IsSolved);
        string[] scale = ["D4", "E4", "F#4", "G4", "A4", "B4", "C#5"];
        Assert.Equal(scale, flute.Notes(Tuning.Concert).Select(note => note.Pitch.ToString()));
        // The search ends within a hundredth of a cent.
        Assert.All(flute.Notes(Tuning.Concert), note => Assert.Equal(0, note.Cents, 0.02));
        Assert.Equal(
            flute.Sounding.Millimeters,
            flute.Holes[0].FromMouth.Millimeters + flute.Holes[0].FromEnd.Millimeters,
            1e-9
        );
        // Holes 1 to 2, 2 to 3 and 5 to 6 are over 38 mm apart on this flute, 3 to 4 is between the hands.
        var far = flute.Holes.Where(hole => hole.Number != 3 && hole.ToNext?.Millimeters > 38).ToList();
        Assert.NotEmpty(far);
        Assert.Equal(far.Count, flute.Remarks(LengthUnits.Millimetres).Count);
    }

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        var problem = Assert.Throws<ArgumentOutOfRangeException>(() =>
            PanPipe.For(
                Pitch.Parse("A4"),
                Tuning.Concert,
                Room,
                Length.FromMillimeters(2),
                Length.FromMillimeters(15)
            )
        );
        Assert.Contains("inside", problem.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Scale.Major.From(Pitch.Parse("A4"), 0));
    }
}
