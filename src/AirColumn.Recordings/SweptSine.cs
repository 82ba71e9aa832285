using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>
/// A sine whose frequency rises by equal ratios in equal times. Play the sine through a loudspeaker at one end of a tube, and record it at
/// that end or inside the tube (farina2000). Immutable.
/// </summary>
public sealed record SweptSine
{
    // Of its length: no click at either end.
    private const double Fade = 0.01;

    private const int Block = 1 << 16; // samples from one look at the token to the next

    /// <summary>Describes a sweep.</summary>
    /// <param name="from">The first frequency: 10 Hz to 10 kHz.</param>
    /// <param name="to">The last frequency: 20 Hz to 20 kHz, at least twice <paramref name="from"/>.</param>
    /// <param name="duration">The duration: 1 to 120 s.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public SweptSine(Frequency from, Frequency to, Duration duration)
    {
        Require.InRange(from.Hertz, 10, 10_000, "Hz", nameof(from));
        Require.InRange(to.Hertz, Math.Max(20, 2 * from.Hertz), 20_000, "Hz", nameof(to));
        Require.InRange(duration.Seconds, 1, 120, "s", nameof(duration));
        (From, To, Duration) = (from, to, duration);
    }

    /// <summary>The first frequency.</summary>
    public Frequency From { get; }

    /// <summary>The last frequency.</summary>
    public Frequency To { get; }

    /// <summary>The duration.</summary>
    public Duration Duration { get; }

    /// <summary>Its samples, of amplitude 1, faded in and out over a hundredth of its length.</summary>
    /// <param name="sampleRate">Samples per second: 4 kHz to 1 MHz, and more than twice <see cref="To"/>.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The samples.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is out of range.</exception>
    public double[] Samples(Frequency sampleRate, CancellationToken cancellationToken = default)
    {
        var rate = Require.InRange(
            sampleRate.Hertz,
            Math.Max(Recording.LowestRate, 2 * To.Hertz),
            Recording.HighestRate,
            "Hz",
            nameof(sampleRate)
        );
        var seconds = Duration.Seconds;
        var samples = new double[(int)(seconds * rate)];
        var growth = Math.Log(To.Hertz / From.Hertz);
        for (var i = 0; i < samples.Length; i++)
        {
            if (i % Block == 0)
            {
                cancellationToken.ThrowIfCancellationRequested();
            }

            var share = i / (seconds * rate);
            var turns = From.Hertz * seconds / growth * (Math.Exp(growth * share) - 1);
            var edge = Math.Min(1, Math.Min(share, 1 - share) / Fade);
            samples[i] = Math.Sin(2 * Math.PI * turns) * (0.5 - 0.5 * Math.Cos(Math.PI * edge));
        }

        return samples;
    }
}
