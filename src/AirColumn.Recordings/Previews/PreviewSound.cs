using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>A rendered note, with its frequency and how it was blown. Immutable.</summary>
public sealed class PreviewSound
{
    private readonly double[] samples;

    internal PreviewSound(PreviewOptions options, Performance performance, RenderedSound? sound)
    {
        samples = sound?.Samples ?? [];
        Options = options;
        FullScale = Pressure.FromPascals(FullScalePascal(options));
        Status = performance.Status;
        Remark = performance.Remark;
        PlayingFrequency = performance.Hertz > 0 ? Frequency.FromHertz(performance.Hertz) : null;
        Register = performance.Register;
        Resonance = performance.Resonance;
        BlowingPressure = Pressure.FromPascals(performance.Pascal);
        LipFrequency = performance.LipHertz > 0 ? Frequency.FromHertz(performance.LipHertz) : null;
        ThresholdPressure =
            performance.ThresholdPascal > 0 ? Pressure.FromPascals(performance.ThresholdPascal) : null;
        SteadyFrom = Duration.FromSeconds((double)performance.Steady.Start.Value / options.SampleRate);
        SteadyTo = Duration.FromSeconds((double)performance.Steady.End.Value / options.SampleRate);
        SoundPressure = Pressure.FromPascals(sound?.RootMeanSquare ?? 0);
        Warnings = [.. sound?.Warnings ?? []];
    }

    /// <summary>The options that were asked for.</summary>
    public PreviewOptions Options { get; }

    /// <summary>The outcome: a note, or the reason why there is none.</summary>
    public PreviewStatus Status { get; }

    /// <summary>The status in a sentence: the note, or why there is none and what to change.</summary>
    public string Remark { get; }

    /// <summary>
    /// The sound pressure 1 m from the far end over <see cref="FullScale"/>, one channel; empty unless
    /// <see cref="Status"/> is <see cref="PreviewStatus.Speaks"/>. Usually within −1 to 1; if not, there is a warning.
    /// </summary>
    public ReadOnlyMemory<double> Samples => samples;

    /// <summary>The sound pressure, 1 m from the far end, that a sample of 1 represents.</summary>
    public Pressure FullScale { get; }

    /// <summary>Samples per second.</summary>
    public int SampleRate => Options.SampleRate;

    /// <summary>
    /// Frequency of the steady part, from the motion of the lips in the computation itself; null if nothing periodic was found.
    /// </summary>
    public Frequency? PlayingFrequency { get; }

    /// <summary>Number of <see cref="Resonance"/>: 1 is the lowest.</summary>
    public int Register { get; }

    /// <summary>The resonance, a maximum of |Z|, nearest to the playing frequency; if nothing sounds, the resonance asked for.</summary>
    public Resonance Resonance { get; }

    /// <summary>Playing frequency relative to <see cref="Resonance"/>, cents, positive above it; null if nothing sounds.</summary>
    /// <remarks>
    /// Lips of this kind play above the resonance, often further above it than players do: players were measured about 20 cents above the peak
    /// (boutin2015, a trombone). This is not a prediction of <see cref="PlayingCorrection"/>.
    /// </remarks>
    public double? CentsAboveResonance =>
        PlayingFrequency is { } frequency ? 1200 * Math.Log2(frequency / Resonance.Frequency) : null;

    /// <summary>Pressure in the mouth.</summary>
    public Pressure BlowingPressure { get; }

    /// <summary>The lips' own frequency; null if no lip frequency was found.</summary>
    public Frequency? LipFrequency { get; }

    /// <summary>
    /// The least pressure at which the register begins to sound, with the best lips for it; null if no lips make it sound.
    /// </summary>
    public Pressure? ThresholdPressure { get; }

    /// <summary>The beginning of the steady part from which <see cref="PlayingFrequency"/> and <see cref="SoundPressure"/> were taken.</summary>
    public Duration SteadyFrom { get; }

    /// <summary>The end of the steady part.</summary>
    public Duration SteadyTo { get; }

    /// <summary>Root mean square of the sound pressure 1 m from the far end over the steady part; 0 if there is no note.</summary>
    public Pressure SoundPressure { get; }

    /// <summary>Sentences about effects that are not in the sound, or values outside a model's range.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary><see cref="Remark"/>.</summary>
    /// <returns>The remark.</returns>
    public override string ToString() => Remark;

    // What is left out: 2 Pa for a drone, 10 Pa for the louder overblown notes.
    internal static double FullScalePascal(PreviewOptions options) =>
        options.FullScale?.Pascals ?? (options.Register == 1 ? 2 : 10);
}
