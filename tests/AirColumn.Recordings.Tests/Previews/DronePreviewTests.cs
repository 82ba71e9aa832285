using System.Numerics;
using AirColumn.Recordings.Previews;
using UnitsNet;

namespace AirColumn.Recordings.Tests.Previews;

public class DronePreviewTests
{
    // Above the resonance, as lips of this kind play (fletcher1993). Upper limits: measured players are some 20 cents above (boutin2015), a
    // model of this kind more; a semitone is where it would no longer be this drone.
    [Theory]
    [InlineData("straight", 1)]
    [InlineData("straight", 2)]
    [InlineData("cone", 1)]
    [InlineData("cone", 2)]
    [InlineData("bell", 1)]
    [InlineData("bell", 2)]
    [InlineData("mouthpiece", 1)]
    [InlineData("mouthpiece", 2)]
    public void A_note_speaks_a_little_above_its_resonance(string name, int register)
    {
        var note = Tubes.Note(name, register);

        Assert.Equal(PreviewStatus.Speaks, note.Status);
        Assert.Equal(register, note.Register);
        Assert.Equal(Tubes.Hertz(Tubes.Column(name), register), note.Resonance.Frequency.Hertz, 6);
        Assert.InRange(note.CentsAboveResonance!.Value, 0, 100);
        Assert.Contains($"Register {register} plays", note.Remark, StringComparison.Ordinal);
    }

    // The samples alone, by the phase of the strongest of the first three partials between two halves of the steady part.
    [Theory]
    [InlineData("straight", 1)]
    [InlineData("straight", 2)]
    [InlineData("cone", 1)]
    [InlineData("bell", 1)]
    [InlineData("mouthpiece", 2)]
    public void The_samples_sound_at_the_playing_frequency(string name, int register)
    {
        var note = Tubes.Note(name, register);
        var (from, to) = (Index(note, note.SteadyFrom), Index(note, note.SteadyTo));
        var steady = note.Samples.Span[from..to];
        var playing = note.PlayingFrequency!.Value.Hertz;
        var half = steady.Length / 2;
        var partial = Enumerable
            .Range(1, 3)
            .MaxBy(k => Partial(note.Samples.Span[from..to], k * playing, note.SampleRate).Magnitude);
        var turn =
            Partial(steady[half..(2 * half)], partial * playing, note.SampleRate)
            / Partial(steady[..half], partial * playing, note.SampleRate);
        // Each half is referred to its own beginning: what the expected frequency turns in between is taken out.
        var expected = Complex.FromPolarCoordinates(
            1,
            2 * Math.PI * partial * playing * half / note.SampleRate
        );
        var heard = playing + (turn / expected).Phase / (2 * Math.PI * half / note.SampleRate) / partial;

        Tubes.Within(0.1, Tubes.Cents(playing, heard));
    }

    [Theory]
    [InlineData("straight")]
    [InlineData("cone")]
    public void Halving_the_time_step_changes_nothing_to_hear(string name)
    {
        var note = Tubes.Note(name, 1);
        var finer = DronePreview.Of(
            Tubes.Column(name),
            new PreviewOptions
            {
                SampleRate = 96_000,
                LipFrequency = note.LipFrequency,
                BlowingPressure = note.BlowingPressure,
            }
        );

        // 0.001 cent when written; half a cent is what would be too much.
        Tubes.Within(
            0.02,
            Tubes.Cents(note.PlayingFrequency!.Value.Hertz, finer.PlayingFrequency!.Value.Hertz)
        );
        Tubes.Within(0.01, note.SoundPressure.Pascals / finer.SoundPressure.Pascals - 1);
    }

    [Fact]
    public void The_note_rises_with_the_tension_of_the_lips()
    {
        var played = new[] { 52.0, 56, 60, 64 }
            .Select(hertz =>
                DronePreview
                    .Of(
                        Tubes.Column("straight"),
                        new PreviewOptions
                        {
                            LipFrequency = Frequency.FromHertz(hertz),
                            BlowingPressure = Pressure.FromKilopascals(1),
                            Duration = Duration.FromSeconds(2),
                        }
                    )
                    .PlayingFrequency!.Value.Hertz
            )
            .ToArray();

        // By more than 5 cents from one to the next, far more than the note is uncertain.
        Assert.All(played.Zip(played.Skip(1)), pair => Assert.True(Tubes.Cents(pair.First, pair.Second) > 5));
    }

    // A twelfth from the drone in a straight tube, little over an octave in a strong cone: what the resonances say, to within the
    // quarter tone by which two registers may be apart in how far above them they play.
    [Theory]
    [InlineData("straight")]
    [InlineData("cone")]
    public void The_overblown_interval_is_that_of_the_resonances(string name)
    {
        var (drone, overblown) = (Tubes.Note(name, 1), Tubes.Note(name, 2));
        var played = Tubes.Cents(
            drone.PlayingFrequency!.Value.Hertz,
            overblown.PlayingFrequency!.Value.Hertz
        );
        var column = Tubes.Column(name);

        Tubes.Within(50, played - Tubes.Cents(Tubes.Hertz(column, 1), Tubes.Hertz(column, 2)));
    }

    // Odd harmonics lie at resonances of a straight tube, even ones between them.
    [Fact]
    public void A_straight_tube_favours_odd_harmonics()
    {
        var note = Tubes.Note("straight", 1);
        var (from, to) = (Index(note, note.SteadyFrom), Index(note, note.SteadyTo));
        var playing = note.PlayingFrequency!.Value.Hertz;
        var partials = Enumerable
            .Range(1, 6)
            .Select(k => Partial(note.Samples.Span[from..to], k * playing, note.SampleRate).Magnitude)
            .ToArray();

        Assert.True(partials[0] > partials[1]);
        Assert.True(partials[2] > partials[1] && partials[2] > partials[3]);
        Assert.True(partials[4] > partials[3] && partials[4] > partials[5]);
    }

    [Fact]
    public void The_same_note_has_the_same_samples()
    {
        var again = DronePreview.Of(Tubes.Column("cone"));

        Assert.True(again.Samples.Span.SequenceEqual(Tubes.Note("cone", 1).Samples.Span));
    }

    [Fact]
    public void The_sound_begins_and_ends_in_silence_and_lasts_as_long_as_asked()
    {
        var note = Tubes.Note("cone", 1);

        Assert.Equal(3 * note.SampleRate, note.Samples.Length);
        Assert.Equal(0, note.Samples.Span[0], 6);
        Assert.Equal(0, note.Samples.Span[^1], 6);
        Assert.InRange(note.SteadyTo.Seconds - note.SteadyFrom.Seconds, 0.9, 1.1);
    }

    [Fact]
    public void Samples_are_pressure_over_full_scale()
    {
        var note = Tubes.Note("cone", 1);
        var steady = note.Samples.ToArray()[Index(note, note.SteadyFrom)..Index(note, note.SteadyTo)];
        var rms = Math.Sqrt(steady.Average(s => s * s));

        Assert.Equal(2, note.FullScale.Pascals);
        Tubes.Within(1e-9, rms * note.FullScale.Pascals / note.SoundPressure.Pascals - 1);

        var loud = DronePreview.Of(
            Tubes.Column("cone"),
            new PreviewOptions { FullScale = Pressure.FromPascals(0.1) }
        );
        Tubes.Within(1e-12, loud.SoundPressure.Pascals / note.SoundPressure.Pascals - 1);
        Assert.Contains(loud.Warnings, w => w.Contains("full scale", StringComparison.Ordinal));
        Assert.DoesNotContain(note.Warnings, w => w.Contains("full scale", StringComparison.Ordinal));
    }

    [Fact]
    public void Too_little_breath_is_said_and_nothing_rendered()
    {
        var note = DronePreview.Of(
            Tubes.Column("straight"),
            new PreviewOptions { Register = 2, BlowingPressure = Pressure.FromPascals(500) }
        );

        Assert.Equal(PreviewStatus.Silent, note.Status);
        Assert.True(note.Samples.IsEmpty);
        Assert.Null(note.PlayingFrequency);
        Assert.True(note.ThresholdPressure!.Value.Pascals > 500);
        Assert.Contains("does not speak", note.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void A_register_beyond_human_breath_is_said()
    {
        var note = DronePreview.Of(Tubes.Column("straight"), new PreviewOptions { Register = 4 });

        Assert.Equal(PreviewStatus.Silent, note.Status);
        Assert.Null(note.LipFrequency);
        Assert.Contains("more than players blow (25000 Pa)", note.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_register_than_asked_for_is_not_passed_off_as_it()
    {
        var second = Tubes.Note("straight", 2);
        var note = DronePreview.Of(
            Tubes.Column("straight"),
            new PreviewOptions
            {
                LipFrequency = second.LipFrequency,
                BlowingPressure = second.BlowingPressure,
            }
        );

        Assert.Equal(PreviewStatus.OtherRegister, note.Status);
        Assert.Equal(2, note.Register);
        Assert.True(note.Samples.IsEmpty);
        Assert.Contains("register 2 sounds", note.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void Columns_that_lips_do_not_drive_are_refused()
    {
        var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
        var tube = Bore.Build().Cylinder(Tubes.Mm(20), Tubes.Mm(500));
        var flute = new Column(
            tube.OpenEnd(),
            air,
            new ColumnOptions { BlownEnd = BlownEnd.Open(Tubes.Mm(5)) }
        );
        var stopped = new Column(Bore.Build().Cylinder(Tubes.Mm(20), Tubes.Mm(500)).ClosedEnd(), air);

        Assert.Contains(
            "open blown end",
            Assert.Throws<ArgumentException>(() => DronePreview.Of(flute)).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "closed far end",
            Assert.Throws<ArgumentException>(() => DronePreview.Of(stopped)).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentNullException>(() => DronePreview.Of(null!));
    }

    // A hose of 8 mm hardly answers to lips that let so much through.
    [Fact]
    public void A_note_that_the_lips_rule_is_warned_of()
    {
        var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
        var hose = new Column(Bore.Build().Cylinder(Tubes.Mm(8), Tubes.Mm(1500)).OpenEnd(), air);

        var note = DronePreview.Of(hose);
        Assert.True(note.CentsAboveResonance > 100);
        Assert.Contains(note.Warnings, w => w.Contains("semitone", StringComparison.Ordinal));
        Assert.Empty(Tubes.Note("straight", 1).Warnings);
    }

    [Fact]
    public void A_register_that_the_column_does_not_have_is_refused()
    {
        var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
        var wide = new Column(Bore.Build().Cylinder(Tubes.Mm(200), Tubes.Mm(500)).OpenEnd(), air);

        var refused = Assert.Throws<ArgumentOutOfRangeException>(() =>
            DronePreview.Of(wide, new PreviewOptions { Register = 10 })
        );
        Assert.Contains("register 10", refused.Message, StringComparison.Ordinal);
    }

    private static int Index(PreviewSound note, Duration time) =>
        (int)Math.Round(time.Seconds * note.SampleRate);

    // Under a Hann window.
    private static Complex Partial(ReadOnlySpan<double> samples, double hertz, double rate)
    {
        var sum = Complex.Zero;
        for (var i = 0; i < samples.Length; i++)
        {
            var window = 0.5 - 0.5 * Math.Cos(2 * Math.PI * i / samples.Length);
            sum += window * samples[i] * Complex.FromPolarCoordinates(1, -2 * Math.PI * hertz * i / rate);
        }

        return sum;
    }
}
