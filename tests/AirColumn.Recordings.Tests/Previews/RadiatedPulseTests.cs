using System.Numerics;
using AirColumn.Recordings.Previews;
using UnitsNet;

namespace AirColumn.Recordings.Tests.Previews;

public class RadiatedPulseTests
{
    private const double Rate = 48_000;

    // A sine of wave pressure in, a sine of sound out; its power through a sphere of 1 m, 4πr²·p²/(ρc) (pierce1981, ch. 4), against the
    // power that leaves the far end in the column's own balance. A simple source is the low-frequency limit of an open end: with
    // |R| = exp(−(ka)²/2) and l = 0.61a (levine1948) the end radiates 3/8·(ka)² more, 0.5 % at ka = 0.11, the highest here.
    [Theory]
    [InlineData("straight", 100)]
    [InlineData("straight", 300)]
    [InlineData("cone", 100)]
    public void The_sound_carries_the_power_that_leaves_the_column(string name, double hertz)
    {
        var column = Tubes.Column(name);
        var frequency = Frequency.FromHertz(hertz);
        var z = column.ImpedanceAt(frequency);
        var wave = Enumerable
            .Range(0, (int)Rate)
            .Select(i => Math.Sin(2 * Math.PI * hertz * i / Rate))
            .ToArray();

        // The wave is p + ZcU = (Z + Zc)U.
        var flow = 1 / (z + column.CharacteristicImpedance).Magnitude;
        var radiated = 0.5 * z.Real * flow * flow * column.TransferAt(frequency).Efficiency;
        // Whole periods after the beginning has passed.
        var sound = RadiatedPulse
            .SoundOf(column, Reflection(column), wave)
            .AsSpan((int)(Rate / 2), (int)(Rate / 2));
        var square = 0.0;
        foreach (var p in sound)
        {
            square += p * p / sound.Length;
        }

        var air = column.Air;
        var power =
            4 * Math.PI * square / (air.Density.KilogramsPerCubicMeter * air.SpeedOfSound.MetersPerSecond);
        Tubes.Within(0.01, power / radiated - 1);
    }

    [Fact]
    public void Sound_takes_its_time_to_the_far_end()
    {
        var column = Tubes.Column("straight");
        var wave = new double[4096];
        wave[0] = 1;
        var sound = RadiatedPulse.SoundOf(column, Reflection(column), wave);

        var arrival = (int)(1.3 / column.Air.SpeedOfSound.MetersPerSecond * Rate);
        var loudest = sound.Max(Math.Abs);
        Assert.All(sound[..(arrival - 30)], p => Tubes.Within(0.01 * loudest, p));
        Assert.Contains(sound[arrival..(arrival + 20)], p => Math.Abs(p) > 0.5 * loudest);
    }

    // At a frequency on no grid, against the transfer to the far end at that very frequency: to a thousandth, a hundredth of a decibel.
    [Theory]
    [InlineData("straight", 67.002)]
    [InlineData("cone", 97.91)]
    [InlineData("mouthpiece", 78.81)]
    [InlineData("mouthpiece", 394.03)]
    [InlineData("bell", 1003.3)]
    public void The_sound_is_that_of_the_flow_at_the_far_end(string name, double hertz)
    {
        var column = Tubes.Column(name);
        var frequency = Frequency.FromHertz(hertz);
        var wave = Enumerable
            .Range(0, 2 * (int)Rate)
            .Select(i => Math.Sin(2 * Math.PI * hertz * i / Rate))
            .ToArray();
        var flow =
            column.TransferAt(frequency).FlowRatio
            / (column.ImpedanceAt(frequency) + column.CharacteristicImpedance);
        var expected =
            2 * Math.PI * hertz * column.Air.Density.KilogramsPerCubicMeter * flow.Magnitude / (4 * Math.PI);

        var sound = RadiatedPulse.SoundOf(column, Reflection(column), wave).AsSpan((int)Rate);
        var (turned, weight) = (Complex.Zero, 0.0);
        for (var i = 0; i < sound.Length; i++)
        {
            // A Hann window: no need of whole periods.
            var window = 0.5 - 0.5 * Math.Cos(2 * Math.PI * i / sound.Length);
            turned += window * sound[i] * Complex.FromPolarCoordinates(1, -2 * Math.PI * hertz * i / Rate);
            weight += window;
        }

        Tubes.Within(1e-3, 2 * turned.Magnitude / weight / expected - 1);
    }

    private static ReflectionFunction Reflection(Column column) =>
        new Player(column, new PreviewOptions()).Reflection;
}
