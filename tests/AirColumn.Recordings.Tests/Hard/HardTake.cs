using System.Numerics;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace AirColumn.Recordings.Tests.Hard;

/// <summary>A drone of known pitch with one thing, or all, that makes recordings hard to read. The same number makes the same sound.</summary>
internal sealed class HardTake
{
    public const double Rate = 16_000;

    private readonly int number;
    private readonly Random random;
    private readonly double[] sound;
    private readonly double[] cents; // of the drone about its pitch, vibrato not counted
    private readonly double[] gain; // of the drone

    private HardTake(HardKind kind, int number, double seconds)
    {
        this.number = number;
        random = new Random(1000 * (int)kind + number);
        Hertz = 55 * Math.Pow(2, Uniform(0, 0.75));
        sound = new double[(int)(seconds * Rate)];
        cents = new double[sound.Length];
        gain = new double[sound.Length];
        Array.Fill(gain, 1);
    }

    /// <summary>The drone's pitch in its middle.</summary>
    public double Hertz { get; }

    public Recording Recorded() => Recording.FromSamples(sound, Frequency.FromHertz(Rate));

    /// <summary>The mean of the true pitch between two times, Hz: plain, of all that sounds.</summary>
    public double MeanHertz(double from, double to)
    {
        var (sum, weight) = (0.0, 0.0);
        for (var i = Math.Max(0, (int)(from * Rate)); i < Math.Min(cents.Length, (int)(to * Rate)); i++)
        {
            var sounds = gain[i] > 0 ? 1 : 0;
            sum += sounds * cents[i];
            weight += sounds;
        }

        return Hertz * Math.Pow(2, sum / weight / 1200);
    }

    public static HardTake Make(HardKind kind, int number)
    {
        var take = new HardTake(kind, number, 3);
        var breath = 22.0; // dB of tone over breath noise
        var (vibratoHertz, vibratoCents) = (take.Uniform(4.5, 6.5), 0.0);
        var envelope = take.Envelope();
        double[] Drone(double[] partials)
        {
            var phase = take.Uniform(0, 1);
            return take.Tone(
                take.Hertz,
                partials,
                (i, t) => take.cents[i] + vibratoCents * Math.Sin(2 * Math.PI * (vibratoHertz * t + phase))
            );
        }

        switch (kind)
        {
            case HardKind.Plain:
                break;
            case HardKind.Doubled:
                var half = take.Tone(
                    take.Hertz / 2,
                    [.. envelope.SelectMany(a => (double[])[a, 0])],
                    (i, _) => take.cents[i]
                );
                take.Add(half, -24 + 15 * take.Step(number));
                break;
            case HardKind.Looped:
                // Three periods that differ, the lines between the partials 28 dB down in all, as of a tone that is played in a loop.
                take.Add(
                    take.Tone(
                        take.Hertz / 3,
                        [.. Enumerable.Range(1, 60).Select(h => h % 3 == 0 ? 0 : Math.Pow(h, -0.5))],
                        (i, _) => take.cents[i]
                    ),
                    -28
                );
                break;
            case HardKind.Fifth:
                var detuned = number % 2 == 0 ? 0 : take.Uniform(-15, 15);
                take.Add(
                    take.Tone(1.5 * take.Hertz, Falling(12, 1.2), (i, _) => take.cents[i] + detuned),
                    -24 + 15 * take.Step(number)
                );
                break;
            case HardKind.Hum:
                take.Add(take.Hum(number % 2 == 0 ? 50 : 60), -12 + 12 * take.Step(number));
                break;
            case HardKind.Background:
                take.Add(take.Music(), -18 + 8 * take.Step(number));
                break;
            case HardKind.Rumble:
                take.Add(take.Noise(take.Uniform(20, 60), 2), -9 + 15 * take.Step(number));
                break;
            case HardKind.Growl:
                take.Add(take.Growl(envelope), -12 + 12 * take.Step(number));
                break;
            case HardKind.TwoNotes:
                double[] ratios = [4 / 3.0, 1.5, 2, 1.25, 3, 1.78, 1.12, 5 / 3.0, 2.5, 1.41];
                take.Add(
                    take.Tone(
                        ratios[number % ratios.Length]
                            * take.Hertz
                            * Math.Pow(2, take.Uniform(-12, 12) / 1200),
                        Falling(15, 1.1),
                        (_, _) => 0
                    ),
                    -6 + 6 * take.Step(number)
                );
                break;
            case HardKind.Wandering:
                take.Wander(take.Uniform(4, 12), take.Uniform(0.3, 1.5));
                vibratoCents = number % 3 == 0 ? 12 : 0;
                break;
            case HardKind.Breaths:
                take.Breaths();
                break;
            case HardKind.Everything:
                take.Wander(take.Uniform(3, 8), take.Uniform(0.3, 1));
                take.Breaths();
                (vibratoCents, breath) = (12, 18);
                take.Add(take.Hum(50), -24);
                take.Add(take.Music(), -26);
                take.Add(take.Noise(40, 2), -12);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(kind));
        }

        var drone = Drone(envelope);
        for (var i = 0; i < drone.Length; i++)
        {
            drone[i] *= take.gain[i];
        }

        take.Add(drone, 0);
        take.Add(take.Noise(1000, 1), -breath);
        take.Level();
        return take;
    }

    /// <summary>A glide of so many cents a second from its beginning to its end.</summary>
    public static HardTake Glide(int number, double centsPerSecond, double vibratoCents, double seconds)
    {
        var take = new HardTake(HardKind.Plain, number, seconds);
        for (var i = 0; i < take.cents.Length; i++)
        {
            take.cents[i] = centsPerSecond * (i / Rate - seconds / 2);
        }

        take.Add(
            take.Tone(
                take.Hertz,
                take.Envelope(),
                (i, t) => take.cents[i] + vibratoCents * Math.Sin(2 * Math.PI * 5.3 * t)
            ),
            0
        );
        take.Add(take.Noise(1000, 1), -30);
        take.Level();
        return take;
    }

    /// <summary>The true pitch at a time, Hz, vibrato not counted.</summary>
    public double HertzAt(double seconds) =>
        Hertz * Math.Pow(2, cents[Math.Clamp((int)(seconds * Rate), 0, cents.Length - 1)] / 1200);

    private static double[] Falling(int count, double power) =>
        [.. Enumerable.Range(1, count).Select(h => Math.Pow(h, -power))];

    private double Uniform(double from, double to) => from + (to - from) * random.NextDouble();

    // 0 to 1 in even steps over the twenty takes of a kind.
    private double Step(int number) => number % 20 / 19.0;

    // Falling partials with two broad humps of a mouth, and some scatter.
    private double[] Envelope()
    {
        var (one, two) = (Uniform(300, 700), Uniform(1000, 2000));
        var slope = Uniform(0.8, 1.5);
        return
        [
            .. Enumerable
                .Range(1, 40)
                .Select(h =>
                {
                    var f = h * Hertz;
                    var humps =
                        1
                        + 2 * Math.Exp(-Math.Pow((f - one) / 120, 2))
                        + 3 * Math.Exp(-Math.Pow((f - two) / 200, 2));
                    return Math.Pow(h, -slope) * humps * Math.Pow(10, Uniform(-3, 3) / 20);
                }),
        ];
    }

    private double[] Tone(double hertz, double[] partials, Func<int, double, double> centsAt)
    {
        var heard = partials.Where((_, h) => (h + 1) * hertz < 0.45 * Rate);
        var amplitudes = heard
            .Select(a => Complex.FromPolarCoordinates(a, Uniform(0, 2 * Math.PI)))
            .ToArray();
        var tone = new double[sound.Length];
        var turns = 0.0;
        for (var i = 0; i < tone.Length; i++)
        {
            turns += hertz * Math.Pow(2, centsAt(i, i / Rate) / 1200) / Rate;
            var z = Complex.FromPolarCoordinates(1, 2 * Math.PI * turns);
            var sum = Complex.Zero;
            for (var h = amplitudes.Length - 1; h >= 0; h--)
            {
                sum = (sum + amplitudes[h]) * z;
            }

            tone[i] = sum.Imaginary;
        }

        return tone;
    }

    private double[] Hum(double hertz) => Tone(hertz + Uniform(-0.03, 0.03), Falling(10, 1), (_, _) => 0);

    // Chords of three notes, another every 0.5 to 1 s.
    private double[] Music()
    {
        var music = new double[sound.Length];
        for (var voice = 0; voice < 3; voice++)
        {
            var steps = new double[8];
            for (var k = 0; k < steps.Length; k++)
            {
                steps[k] = 100 * random.Next(0, 20);
            }

            var every = Uniform(0.5, 1);
            var part = Tone(98, Falling(10, 1.3), (_, t) => steps[(int)(t / every) % steps.Length]);
            for (var i = 0; i < music.Length; i++)
            {
                music[i] += part[i];
            }
        }

        return music;
    }

    // Noise below a frequency, so many poles.
    private double[] Noise(double hertz, int poles)
    {
        double[] noise = [.. Normal.Samples(random, 0, 1).Take(sound.Length)];
        var keep = Math.Exp(-2 * Math.PI * hertz / Rate);
        for (var pole = 0; pole < poles; pole++)
        {
            var last = 0.0;
            for (var i = 0; i < noise.Length; i++)
            {
                last = keep * last + (1 - keep) * noise[i];
                noise[i] = last;
            }
        }

        return noise;
    }

    // A voice sung into the tube, and the tones of sums and differences that the lips make of it and the drone.
    private double[] Growl(double[] envelope)
    {
        double[] ratios = [1.5, 2.5, 3.03, 1.26, 2.02];
        var ratio = ratios[number % ratios.Length] * (1 + Uniform(-0.004, 0.004));
        var voice = Tone(ratio * Hertz, Falling(10, 1), (_, _) => 0);
        var drone = Tone(Hertz, envelope, (_, _) => 0);
        var size = voice.Max();
        return [.. voice.Zip(drone, (v, d) => v + 0.3 * v / size * d)];
    }

    // A random walk that is pulled back (Ornstein and Uhlenbeck): standard deviation in cents, memory in seconds.
    private void Wander(double deviation, double memory)
    {
        var keep = Math.Exp(-1 / (memory * Rate));
        var at = Normal.Sample(random, 0, deviation);
        var smooth = at;
        for (var i = 0; i < cents.Length; i++)
        {
            at = keep * at + Math.Sqrt(1 - keep * keep) * Normal.Sample(random, 0, deviation);
            // Lips have mass: nothing faster than a few hertz.
            smooth += (at - smooth) * (1 - Math.Exp(-2 * Math.PI * 4 / Rate));
            cents[i] += smooth;
        }
    }

    // Circular breathing: the sound sinks, or stops, and the pitch sags.
    private void Breaths()
    {
        var stops = number % 2 == 0;
        for (var at = Uniform(0.4, 0.9); at < sound.Length / Rate; at += Uniform(0.6, 1.2))
        {
            var (length, sag) = (Uniform(0.15, 0.3), Uniform(5, 25));
            for (var i = (int)(at * Rate); i < Math.Min(sound.Length, (at + length) * Rate); i++)
            {
                var hump = Math.Sin(Math.PI * (i / Rate - at) / length);
                cents[i] -= sag * hump * hump;
                gain[i] *= stops && hump > 0.7 ? 0 : 1 - 0.8 * hump * hump;
            }
        }
    }

    private void Add(double[] other, double decibels)
    {
        var size = Math.Pow(10, decibels / 20) / Math.Sqrt(other.Average(x => x * x));
        for (var i = 0; i < sound.Length; i++)
        {
            sound[i] += size * other[i];
        }
    }

    private void Level()
    {
        var size = 0.5 / sound.Max(Math.Abs);
        for (var i = 0; i < sound.Length; i++)
        {
            sound[i] *= size;
        }
    }
}
