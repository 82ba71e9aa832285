using AirColumn.Recordings.Previews;

namespace AirColumn.Recordings.Tests.Previews;

public class LipSimulationTests
{
    private const int Rate = 48_000;
    private static readonly LipConstants Lips = new LipModel().Constants;

    [Fact]
    public void Without_breath_nothing_moves()
    {
        var motion = Simulation("straight", Rate, out _).Blow(new double[Rate / 4], 60, Lips.Opening);

        Assert.All(motion.Pressure, p => Assert.Equal(0, p));
        Assert.All(motion.Opening, h => Assert.Equal(Lips.Opening, h));
    }

    // Nothing feeds it any more: the mean square falls from one tenth of a second to the next, for as long as the lips stay set.
    [Theory]
    [InlineData("straight")]
    [InlineData("cone")]
    [InlineData("mouthpiece")]
    public void When_the_breath_stops_the_sound_dies(string name)
    {
        var mouth = new double[2 * Rate];
        mouth.AsSpan(0, Rate).Fill(2000);
        var resonance = Tubes.Hertz(Tubes.Column(name), 1);
        var motion = Simulation(name, Rate, out _).Blow(mouth, 0.85 * resonance, 0);

        // From the last tenth of a second of breath on: hundreds of pascals, then less and less.
        var energy = motion
            .Pressure[(Rate * 9 / 10)..]
            .Chunk(Rate / 10)
            .Select(chunk => chunk.Average(p => p * p))
            .ToArray();
        Assert.True(energy[0] > 100 * 100, $"{energy[0]}");
        Assert.All(energy.Zip(energy.Skip(1)), pair => Assert.True(pair.Second < pair.First, $"{pair}"));
        Assert.True(energy[^1] < 1e-6 * energy[0], $"{energy[^1]}");
    }

    // Each sample put into the equations again, the convolution as a plain sum: both hold to rounding.
    [Fact]
    public void Every_sample_obeys_the_flow_equation_and_the_reflection()
    {
        const double Pascal = 1500;
        var simulation = Simulation("cone", Rate, out var reflection);
        var motion = simulation.Blow(Enumerable.Repeat(Pascal, Rate / 2).ToArray(), 85, 0);
        var column = Tubes.Column("cone");
        var (zc, rho) = (column.CharacteristicImpedance, column.Air.Density.KilogramsPerCubicMeter);
        var (closed, open) = (0, 0);
        for (var i = 0; i < motion.Pressure.Length; i++)
        {
            var p = motion.Pressure[i];
            var flow = (motion.Outgoing[i] - p) / zc;
            var gap = Math.Max(motion.Opening[i], 0);
            var expected =
                Lips.Width * gap * Math.Sqrt(2 * Math.Abs(Pascal - p) / rho) * Math.Sign(Pascal - p);
            (closed, open) = gap > 0 ? (closed, open + 1) : (closed + 1, open);
            Tubes.Within(1e-9, (flow - expected) * zc / Pascal);
        }

        Assert.True(closed > 100 && open > 100, "The lips are to beat, so that both cases are seen.");
        for (var i = 20_000; i < 20_050; i++)
        {
            var returned = 0.0;
            for (var k = 0; k < Math.Min(reflection.Taps.Length, i + 1); k++)
            {
                returned += reflection.Taps[k] * motion.Outgoing[i - k];
            }

            var flow = (motion.Outgoing[i] - motion.Pressure[i]) / zc;
            Tubes.Within(1e-9, (zc * flow + returned - motion.Pressure[i]) / Pascal);
        }
    }

    // The lips alone, on the pressure that the simulation found, by another method: classical Runge–Kutta in steps of two samples with
    // the sample between as its midpoint. Both are of second order or better in a step of 1/500 of a period; to 1e-4 of the motion.
    [Fact]
    public void The_lips_obey_their_equation_of_motion()
    {
        const double Pascal = 1000;
        const double LipHertz = 85;
        var motion = Simulation("cone", Rate, out _)
            .Blow(Enumerable.Repeat(Pascal, Rate / 2).ToArray(), LipHertz, 0);
        var omega = 2 * Math.PI * LipHertz;

        double Acceleration(double h, double v, double p) =>
            (Pascal - p) / Lips.MassPerArea - omega / Lips.Quality * v - omega * omega * (h - Lips.Opening);

        var start = Rate / 4;
        var (h, v) = (
            motion.Opening[start],
            (motion.Opening[start + 1] - motion.Opening[start - 1]) / 2 * Rate
        );
        var (dt, range) = (2.0 / Rate, motion.Opening.Max() - motion.Opening.Min());
        for (var i = start; i + 2 < motion.Opening.Length; i += 2)
        {
            var (p0, p1, p2) = (motion.Pressure[i], motion.Pressure[i + 1], motion.Pressure[i + 2]);
            var (h1, v1) = (v, Acceleration(h, v, p0));
            var (h2, v2) = (v + dt / 2 * v1, Acceleration(h + dt / 2 * h1, v + dt / 2 * v1, p1));
            var (h3, v3) = (v + dt / 2 * v2, Acceleration(h + dt / 2 * h2, v + dt / 2 * v2, p1));
            var (h4, v4) = (v + dt * v3, Acceleration(h + dt * h3, v + dt * v3, p2));
            h += dt / 6 * (h1 + 2 * h2 + 2 * h3 + h4);
            v += dt / 6 * (v1 + 2 * v2 + 2 * v3 + v4);
            Tubes.Within(1e-4, (motion.Opening[i + 2] - h) / range);
        }
    }

    // Against the plain sum, to rounding; lengths on either side of the blocks it works in.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(511)]
    [InlineData(512)]
    [InlineData(513)]
    [InlineData(1024)]
    [InlineData(1500)]
    public void What_returns_is_the_convolution(int length)
    {
        var random = new Random(length);
        var taps = Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.5).ToArray();
        var sent = Enumerable.Range(0, 2600).Select(_ => random.NextDouble() - 0.5).ToArray();
        var returning = new ReturningWave(taps);
        for (var i = 0; i < sent.Length; i++)
        {
            var expected = 0.0;
            for (var k = 1; k < length && k <= i; k++)
            {
                expected += taps[k] * sent[i - k];
            }

            Tubes.Within(1e-12, returning.At(sent, i) - expected, i);
        }
    }

    [Fact]
    public void The_dot_product_is_the_sum_of_products()
    {
        var random = new Random(1);
        for (var length = 0; length < 75; length++)
        {
            var a = Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.5).ToArray();
            var b = Enumerable.Range(0, length + 3).Select(_ => random.NextDouble() - 0.5).ToArray();
            // Rounding of at most 75 terms below 1/4.
            Tubes.Within(1e-14, a.Zip(b, (x, y) => x * y).Sum() - DotProduct.Of(a, b), length);
        }
    }

    private static LipSimulation Simulation(string name, int rate, out ReflectionFunction reflection)
    {
        var column = Tubes.Column(name);
        reflection = new Player(column, new PreviewOptions { SampleRate = rate }).Reflection;
        return new(
            reflection,
            column.CharacteristicImpedance,
            column.Air.Density.KilogramsPerCubicMeter,
            Lips
        );
    }
}
