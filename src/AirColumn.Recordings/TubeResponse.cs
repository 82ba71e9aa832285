using AirColumn.Recordings.Responses;
using AirColumn.Recordings.Tracking;
using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>The resonances of a tube that is not played but made to ring: tapped, or driven by noise or a sweep. Immutable.</summary>
/// <remarks>
/// <para>
/// However the tube is excited, the sound is turned into free decay, a sum of decaying sines. These are found by the shift invariance of
/// the space that they span (roy1989). The column to compare with must have the ends that the tube had. A palm that slaps one end and stays
/// there closes that end. If the palm only strikes in passing, both ends are open while the tube rings.
/// </para>
/// <para>Recordings are read up to their first two minutes.</para>
/// </remarks>
public sealed record TubeResponse
{
    private const double LongestRecording = 120;

    // Of a sweep's lowest frequency: from there on the tube was driven in full.
    private const double AboveEdge = 1.25;

    // After the slap itself: the sound of the hand, s.
    private const double Slap = 0.006;

    private TubeResponse(
        IReadOnlyList<RecordedResonance> resonances,
        string? reason,
        IReadOnlyList<string> warnings
    )
    {
        (Resonances, Reason, Warnings) = (resonances, reason, warnings);
    }

    /// <summary>The resonances heard, in order.</summary>
    public IReadOnlyList<RecordedResonance> Resonances { get; }

    /// <summary>Why no resonances were heard, in a sentence; null if some were.</summary>
    public string? Reason { get; }

    /// <summary>Warnings for the user, such as clipping.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>Finds the resonances from one tap or several, such as a palm that slaps an end and stays there.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="highest">The highest frequency at which resonances are looked for: 100 Hz to 2 kHz. Default: 1 kHz.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    /// <exception cref="RecordingException">The data is damaged.</exception>
    public static TubeResponse FromTap(
        Recording recording,
        Frequency? highest = null,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        var heard = new Heard(recording, highest, progress, cancellationToken);
        return heard.Told(
            heard.Ringing(heard.Sound, Heard.Lowest),
            "No ringing was heard after a tap: record in a quieter room, slap harder, or hold the microphone to the open end"
        );
    }

    /// <summary>
    /// Finds the resonances from broad noise blown or played at the tube. The autocorrelation of the sound decays as the tube does when it
    /// rings.
    /// </summary>
    /// <param name="recording">The recording: at least 2 s of noise and nothing else; 20 s is better.</param>
    /// <param name="highest">The highest frequency at which resonances are looked for: 100 Hz to 2 kHz. Default: 1 kHz.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    /// <exception cref="RecordingException">The data is damaged.</exception>
    public static TubeResponse FromNoise(
        Recording recording,
        Frequency? highest = null,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        var heard = new Heard(recording, highest, progress, cancellationToken);
        var lags = (int)(RingingModes.Longest * heard.Rate);
        // The first lags hold the noise's own colour.
        var from = (int)(Slap * heard.Rate);
        // What correlates by chance does so in one part and not in the next.
        var parts = Math.Clamp((int)(heard.Sound.Length / (2 * heard.Rate)), 2, 8);
        List<double[]> decays =
        [
            .. heard
                .Sound.Chunk(Math.Max(1, heard.Sound.Length / parts))
                .Select(part => Correlation.OfNoise(part, lags, cancellationToken))
                .Where(decay => decay.Length > from)
                .Select(decay => decay[from..]),
        ];
        var whole = Correlation.OfNoise(heard.Sound, lags, cancellationToken);
        return heard.Told(
            heard.UnlessHeld(
                whole.Length > from
                    ? RingingModes.Of(
                        whole[from..],
                        decays,
                        heard.Rate,
                        Heard.Lowest,
                        heard.Highest,
                        heard.Listening,
                        cancellationToken
                    )
                    : []
            ),
            "No resonances stand out of the noise: at least 2 s of noise are needed, and 20 s are better"
        );
    }

    /// <summary>Finds the resonances from a sweep that was played by a loudspeaker.</summary>
    /// <param name="recording">The recording: the whole sweep, once, and half a second more.</param>
    /// <param name="sweep">The sweep that was played.</param>
    /// <param name="highest">The highest frequency at which resonances are looked for: 100 Hz to 2 kHz. Default: 1 kHz.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The response.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    /// <exception cref="ArgumentException">The recording is shorter than the sweep.</exception>
    /// <exception cref="RecordingException">The data is damaged.</exception>
    public static TubeResponse FromSweep(
        Recording recording,
        SweptSine sweep,
        Frequency? highest = null,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(sweep);
        if (recording.Duration < sweep.Duration)
        {
            throw new ArgumentException(
                $"recording lasts {Require.Show(recording.Duration.Seconds, "s")} and the sweep {Require.Show(sweep.Duration.Seconds, "s")}; "
                    + "record the whole sweep.",
                nameof(recording)
            );
        }

        var heard = new Heard(recording, highest, progress, cancellationToken);
        return heard.Told(
            // Below the sweep nothing was played, and its edge rings by itself.
            heard.Ringing(
                Correlation.OfKnown(heard.Sound, heard.Played(sweep), cancellationToken),
                Math.Max(Heard.Lowest, AboveEdge * sweep.From.Hertz)
            ),
            "The sweep was not found in the recording, or nothing rings on after it: put the loudspeaker at one end of the tube and the microphone at the other or inside, and record while the sweep plays"
        );
    }

    /// <summary>Compares the measured resonances with the resonances of a column that has the same ends.</summary>
    /// <param name="column">The column.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>One comparison for each resonance of the column, up to the highest measured resonance.</returns>
    public IReadOnlyList<ResonanceComparison> CompareWith(
        Column column,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        if (Resonances.Count == 0)
        {
            return [];
        }

        // One more, so that the last has a neighbour on either side.
        var below = Math.Min(1.3 * Resonances[^1].Frequency.Hertz, 0.999 * column.HighestFrequency.Hertz);
        var computed = column.Resonances(Frequency.FromHertz(below), cancellationToken).ToList();
        return
        [
            .. computed
                .Select((resonance, i) => new ResonanceComparison(i + 1, resonance, Nearest(computed, i)))
                .Where(pair =>
                    pair.Measured is not null || pair.Computed.Pole.Real <= Resonances[^1].Frequency.Hertz
                ),
        ];
    }

    /// <summary>Takes the measured resonances as a measurement of the bore, for <see cref="BoreFit"/>.</summary>
    /// <param name="believed">The column as believed, with the ends that the tube had when it was recorded. It numbers the resonances.</param>
    /// <param name="otherStandardDeviationCents">
    /// The standard deviation of each resonance for other reasons, such as draughts, warming and the microphone, cents: 0.01 to 100. It is added
    /// to the uncertainty of the recording. Default: 1.
    /// </param>
    /// <param name="cancellationToken">Ends it early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The resonances that were heard near one of the column.</returns>
    /// <remarks>
    /// The air rings at the real part of a pole, and <see cref="BoreFit"/> compares maxima of |Z|. Each measured frequency is multiplied by the ratio
    /// of maximum to pole of the believed column; that ratio hardly depends on what is to be found.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is out of range.</exception>
    /// <exception cref="ArgumentException">No measured resonance lies within two semitones of one of the column.</exception>
    public MeasuredResonances MeasuredFor(
        Column believed,
        double otherStandardDeviationCents = 1,
        CancellationToken cancellationToken = default
    )
    {
        Require.InRange(otherStandardDeviationCents, 0.01, 100, "cents");
        var heard = new List<MeasuredResonance>();
        foreach (var (number, computed, measured) in CompareWith(believed, cancellationToken))
        {
            if (measured is { } one)
            {
                heard.Add(
                    new(
                        number,
                        one.Frequency * (computed.Frequency.Hertz / computed.Pole.Real),
                        double.Hypot(one.StandardUncertaintyCents, otherStandardDeviationCents)
                    )
                );
            }
        }

        return heard.Count > 0
            ? new MeasuredResonances(heard)
            : throw new ArgumentException(
                "No measured resonance lies within two semitones of one of this column. Give the column as it was recorded, each end open or closed as it was then.",
                nameof(believed)
            );
    }

    // The strongest of those that are nearer to this resonance than to any other, and within two semitones.
    private RecordedResonance? Nearest(List<Resonance> computed, int i)
    {
        double Distance(RecordedResonance measured, Resonance resonance) =>
            Math.Abs(Math.Log2(measured.Frequency.Hertz / resonance.Pole.Real));
        var near = Resonances
            .Where(m =>
                Distance(m, computed[i]) < 200 / 1200.0
                && computed.All(other => Distance(m, computed[i]) <= Distance(m, other))
            )
            .ToList();
        return near.Count == 0 ? null : near.MaxBy(measured => measured.Decibels);
    }

    /// <summary>One channel of the recording at the rate that modes are looked for at.</summary>
    private sealed class Heard
    {
        // No tube of ours is as long.
        public const double Lowest = 20;

        private const double Reading = 0.1; // of the time, about

        private readonly List<string> warnings;
        private readonly LevelScan scan;
        private readonly Recording recording;
        private readonly CancellationToken cancellationToken;
        private bool isHeld;

        public Heard(
            Recording recording,
            Frequency? highest,
            IProgress<double>? progress,
            CancellationToken cancellationToken
        )
        {
            ArgumentNullException.ThrowIfNull(recording);
            (this.recording, this.cancellationToken) = (recording, cancellationToken);
            Listening = Part.Of(progress, Reading, 1 - Reading);
            Highest = highest is { } limit
                ? Require.InRange(limit.Hertz, 100, 2000, "Hz", nameof(highest))
                : 1000;
            scan = LevelScan.Of(
                recording,
                (long)(LongestRecording * recording.RateHertz),
                Part.Of(progress, 0, Reading),
                cancellationToken
            );
            warnings = [.. recording.Warnings, .. scan.WarningsOf(scan.Loudest)];
            var low = Low(recording, scan.Loudest);
            Rate = low.Rate;
            var sound = low.Read(0, (int)Math.Min(low.Count, LongestRecording * low.Rate));
            var offset = sound.Average();
            Sound = [.. sound.Select(sample => sample - offset)];
            if (low.Count > Sound.Length)
            {
                warnings.Add("Only the first two minutes of the recording were used.");
            }
        }

        /// <summary>For the share of what comes after reading.</summary>
        public IProgress<double>? Listening { get; }

        public double[] Sound { get; }

        /// <summary>Up to where resonances are looked for, Hz.</summary>
        public double Highest { get; }

        public double Rate { get; }

        public double[] Played(SweptSine sweep)
        {
            using var samples = Recording.FromSamples(
                sweep.Samples(recording.SampleRate, cancellationToken),
                recording.SampleRate
            );
            var low = Low(samples, 0);
            return low.Read(0, (int)low.Count);
        }

        /// <summary>None of the modes if the strongest is a tone that is held.</summary>
        public IReadOnlyList<RecordedResonance> UnlessHeld(IReadOnlyList<RecordedResonance> found)
        {
            isHeld =
                found.Count > 0
                && found.MaxBy(mode => mode.Decibels) is var strongest
                && HeldTone.Is(Sound, Rate, strongest.Frequency.Hertz, strongest.QualityFactor);
            return isHeld ? [] : found;
        }

        /// <summary>The modes of what rings on after each impulse of a sound.</summary>
        public IReadOnlyList<RecordedResonance> Ringing(double[] sound, double lowest)
        {
            var pieces = new List<double[]>();
            var held = 0;
            foreach (var (from, to) in Impulses.In(sound, Rate, Slap))
            {
                var end = Math.Min(to, from + (int)(RingingModes.Longest * Rate));
                if (end - from < RingingModes.Shortest * Rate)
                {
                    continue;
                }

                if (RingingModes.DiesAway(sound.AsSpan(from, end - from)))
                {
                    pieces.Add(sound[from..end]);
                }
                else
                {
                    held++;
                }
            }

            isHeld = held > pieces.Count;
            return isHeld ? [] : RingingModes.Of(pieces, Rate, lowest, Highest, Listening, cancellationToken);
        }

        public TubeResponse Told(IReadOnlyList<RecordedResonance> found, string otherwise) =>
            new(
                found,
                scan.IsSilent ? "The recording is silent."
                    : isHeld
                        ? "The sound does not die away: it is a held tone, a hum or music, not a ringing tube. Record again in a place where nothing else sounds."
                    : found.Count == 0 ? $"{otherwise}."
                    : null,
                warnings
            );

        private LowRate Low(Recording sound, int channel) => new(sound, channel, 1.2 * Highest);
    }
}
