using System.Numerics;
using AirColumn.Recordings.Previews;
using UnitsNet;

namespace AirColumn.Recordings.Tests.Previews;

public class ReflectionFunctionTests
{
    private const double SampleRate = 48_000;

    // Peaks of |Z| of the sampled system against those of the column, both searched in the same way. Wanted are 0.1 cent: a tenth of
    // what the rendered note may be off. The mouthpiece reflects at once and is the hard one.
    [Theory]
    [InlineData("straight")]
    [InlineData("cone")]
    [InlineData("bell")]
    [InlineData("mouthpiece")]
    public void The_sampled_column_has_the_resonances_of_the_column(string name)
    {
        var column = Tubes.Column(name);
        var reflection = Of(column);
        foreach (var resonance in column.FirstResonances(6))
        {
            var hertz = resonance.Frequency.Hertz;
            var exact = Peak(f => column.ImpedanceAt(Frequency.FromHertz(f)).Magnitude, hertz);
            var sampled = Peak(f => Impedance(reflection, column, f).Magnitude, hertz);
            Tubes.Within(0.1, Tubes.Cents(exact, sampled), $"{hertz} Hz");
        }
    }

    // The first register too is played on a reflection that is right at all resonances, not at the first alone.
    [Theory]
    [InlineData("straight")]
    [InlineData("bell")]
    [InlineData("mouthpiece")]
    public void A_player_hears_every_resonance_in_the_band(string name)
    {
        var column = Tubes.Column(name);
        var played = new Player(column, new PreviewOptions()).Reflection;
        var checkedByAll = ReflectionFunction.Of(
            column,
            played.SampleRate,
            [.. column.FirstResonances(6).Select(r => r.Frequency.Hertz)]
        );
        Assert.Equal(checkedByAll.Taps.Length, played.Taps.Length);
        Assert.Equal(checkedByAll.WorstCents, played.WorstCents, 1e-9);
    }

    // The stated error of the transform, of |Z| anywhere up to the sixth resonance: 1 %, less than a tenth of a decibel.
    [Theory]
    [InlineData("straight")]
    [InlineData("cone")]
    [InlineData("bell")]
    [InlineData("mouthpiece")]
    public void Its_transform_gives_the_impedance_back(string name)
    {
        var column = Tubes.Column(name);
        var reflection = Of(column);
        var top = column.FirstResonances(6)[5].Frequency.Hertz;
        for (var hertz = 25.0; hertz < top; hertz += 3.1)
        {
            var exact = column.ImpedanceAt(Frequency.FromHertz(hertz));
            Tubes.Within(
                0.01,
                ((Impedance(reflection, column, hertz) - exact) / exact).Magnitude,
                $"{hertz} Hz"
            );
        }
    }

    [Theory]
    [InlineData("straight")]
    [InlineData("cone")]
    [InlineData("bell")]
    [InlineData("mouthpiece")]
    public void No_more_returns_than_was_sent(string name)
    {
        var reflection = Of(Tubes.Column(name));
        for (var hertz = 0.0; hertz < SampleRate / 2; hertz += 5.3)
        {
            Assert.True(reflection.At(hertz).Magnitude <= 1, $"{hertz} Hz");
        }
    }

    // What the walls give back late falls slowly: until seven tenths as it is, from there on to nothing.
    [Theory]
    [InlineData("straight")]
    [InlineData("mouthpiece")]
    public void The_end_fades_out(string name)
    {
        var taps = Of(Tubes.Column(name)).Taps;
        double Around(double share) =>
            taps[(int)((share - 0.01) * taps.Length)..(int)((share + 0.01) * taps.Length)].Average(Math.Abs);
        var falls = Around(0.69) / Around(0.66);
        Assert.InRange(falls, 0.5, 1.1);
        Assert.InRange(Around(0.72) / Around(0.69) / falls, 0.9, 1.1);
        Assert.InRange(Around(0.99) / Around(0.69), 0, 0.02);
    }

    // All that is sent comes back: |R| = 1 at every frequency. Cut off in time, the taps alone would give more at some.
    [Theory]
    [InlineData(700)]
    [InlineData(1310)]
    public void Without_losses_no_more_returns_either(double millimetres)
    {
        var column = new Column(
            Bore.Build().Cylinder(Tubes.Mm(30), Tubes.Mm(millimetres)).IdealOpenEnd(),
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50)),
            new ColumnOptions { Losses = WallLosses.None }
        );
        var reflection = Of(column);
        var most = 0.0;
        for (var hertz = 0.0; hertz < SampleRate / 2; hertz += 19.3)
        {
            most = Math.Max(most, reflection.At(hertz).Magnitude);
        }

        // What is the most is sought at frequencies a little apart.
        Assert.InRange(most, 0.99, 1.0001);
    }

    // Twice the length and its end correction, 0.6127 a at low frequency (levine1948); an open end reflects with the sign turned. To
    // half a sample, walls without losses.
    [Fact]
    public void A_straight_tube_answers_once_after_twice_its_length()
    {
        var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
        var column = new Column(
            Bore.Build().Cylinder(Tubes.Mm(20), Tubes.Mm(1500)).OpenEnd(),
            air,
            new ColumnOptions { Losses = WallLosses.None }
        );
        var taps = Of(column).Taps;
        var delay = 2 * (1.5 + 0.6127 * 0.01) / air.SpeedOfSound.MetersPerSecond;

        var extreme = Enumerable.Range(0, taps.Length).MinBy(k => taps[k]);
        Tubes.Within(0.5 + 0.5, extreme - delay * SampleRate);
        Assert.All(taps[..(extreme - 60)], tap => Tubes.Within(1e-3, tap));
    }

    private static ReflectionFunction Of(Column column) =>
        ReflectionFunction.Of(
            column,
            SampleRate,
            [.. column.FirstResonances(6).Select(r => r.Frequency.Hertz)]
        );

    private static Complex Impedance(ReflectionFunction reflection, Column column, double hertz)
    {
        var r = reflection.At(hertz);
        return column.CharacteristicImpedance * (1 + r) / (1 - r);
    }

    // A parabola through ln|Z| at three points near the top, a thousandth apart.
    private static double Peak(Func<double, double> magnitude, double hertz)
    {
        const double Step = 0.001;
        var (a, b, c) = (
            Math.Log(magnitude(hertz * (1 - Step))),
            Math.Log(magnitude(hertz)),
            Math.Log(magnitude(hertz * (1 + Step)))
        );
        return hertz * (1 + Step * (a - c) / (2 * (a - 2 * b + c)));
    }
}
