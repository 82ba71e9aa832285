using AirColumn.Recordings.Tones;
using AirColumn.Recordings.Tracking;
using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>The notes in a recording of a played tube, with the drone among them. Immutable.</summary>
/// <remarks>
/// Notes are found by the period of the sound (normalised square difference, mcleod2005), in frames as long as four of the longest periods.
/// They are measured by the phases of all their harmonics; the fundamental need not be audible. A note within half a hertz of a hum of the
/// mains cannot be told from the hum.
/// </remarks>
public sealed record Take
{
    // Notes of one pitch, cents.
    private const double SamePitch = 80;

    // Pitches that are the mains' as well, Hz, and how near is too near.
    private static readonly double[] Mains = [50, 60, 100, 120];
    private const double NearMains = 0.25;

    private Take(IReadOnlyList<SoundedNote> notes, string? reason, IReadOnlyList<string> warnings)
    {
        (Notes, Reason, Warnings) = (notes, reason, warnings);
        Drone = notes
            .OrderByDescending(note => notes.Where(other => IsSame(note, other)).Sum(o => o.Duration.Seconds))
            .ThenByDescending(note => note.Duration.Seconds)
            .FirstOrDefault();
    }

    /// <summary>The notes in the order in which they are played; a pitch that is left and taken up again is listed twice.</summary>
    public IReadOnlyList<SoundedNote> Notes { get; }

    /// <summary>
    /// The drone: the longest note at the pitch that is held longest in total. Null if there is no steady pitch; <see cref="Reason"/> then
    /// gives the reason.
    /// </summary>
    public SoundedNote? Drone { get; }

    /// <summary>A sentence on why there is no steady pitch; null if there is one.</summary>
    public string? Reason { get; }

    /// <summary>Warnings for the user, such as clipping or doubts about the drone.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>Listens to a recording.</summary>
    /// <param name="recording">The recording; any length.</param>
    /// <param name="options">The options. Default: those of a new <see cref="TakeOptions"/>.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The take.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The recording does not have the channel asked for.</exception>
    /// <exception cref="ArgumentException">The lowest pitch looked for is not below the highest.</exception>
    /// <exception cref="RecordingException">The data is damaged.</exception>
    public static Take Of(
        Recording recording,
        TakeOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(recording);
        options ??= new TakeOptions();
        if (options.Lowest >= options.Highest)
        {
            throw new ArgumentException(
                $"Lowest is {Require.Show(options.Lowest.Hertz, "Hz")} and Highest {Require.Show(options.Highest.Hertz, "Hz")}; the lowest must be below the highest.",
                nameof(options)
            );
        }

        if (options.Channel is { } asked)
        {
            Require.InRange(asked, 0, recording.Channels - 1, "", "channel");
        }

        // Reading every sample once, then the search for periods, take most of the time.
        var scan = LevelScan.Of(recording, recording.Frames, Part.Of(progress, 0, 0.2), cancellationToken);
        var channel = options.Channel ?? scan.Loudest;
        var warnings = new List<string>([.. recording.Warnings, .. scan.WarningsOf(channel)]);
        var sound = new LowRate(recording, channel, LowRate.Partials);
        var finder = new PeriodFinder(sound.Rate, options.Lowest.Hertz, options.Highest.Hertz);
        var frames = FrameTrack.Of(sound, finder, Part.Of(progress, 0.2, 0.7), cancellationToken);
        var stretches = new SteadyStretches(
            frames,
            options.Shortest.Seconds,
            finder.FrameLength / sound.Rate
        );
        var found = stretches.Find();
        var reader = new NoteReader(
            recording,
            channel,
            sound,
            frames,
            [.. options.Resonances.Select(resonance => resonance.Hertz)],
            cancellationToken
        );
        var notes = new List<SoundedNote>();
        for (var i = 0; i < found.Count; i++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (reader.Read(found[i]) is { } note)
            {
                notes.Add(note);
            }

            Part.Of(progress, 0.9, 0.1)?.Report((i + 1.0) / found.Count);
        }

        var reason = notes.Count > 0 ? null : NoPitch(recording, options, stretches);
        var take = new Take(notes, reason, warnings);
        if (take.Drone is not { } drone)
        {
            return take;
        }

        warnings.AddRange(drone.Warnings);
        if (Mains.FirstOrDefault(hum => IsNear(drone, hum)) is > 0 and var near)
        {
            warnings.Add(
                FormattableString.Invariant(
                    $"The drone is within {NearMains} Hz of {near:0} Hz, which electric mains hum at: make sure that it is the tube."
                )
            );
        }

        return take;
    }

    /// <summary>The longest note near a frequency; null if there is none.</summary>
    /// <param name="frequency">The frequency, above 0.</param>
    /// <param name="withinCents">The largest distance, cents: above 0, up to 1200.</param>
    /// <returns>The note, or null.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public SoundedNote? Near(Frequency frequency, double withinCents)
    {
        Require.Positive(frequency.Hertz, "Hz", nameof(frequency));
        Require.InRange(withinCents, 1e-3, 1200, "cents");
        return Notes
            .Where(note => Math.Abs(AirColumn.Cents.Between(frequency, note.Fundamental)) <= withinCents)
            .MaxBy(note => note.Duration.Seconds);
    }

    private static string NoPitch(Recording recording, TakeOptions options, SteadyStretches stretches) =>
        recording.Duration < options.Shortest
            ? FormattableString.Invariant(
                $"No steady pitch: the recording lasts {recording.Duration.Seconds:0.###} s, and a note must be held for {options.Shortest.Seconds:0.##} s."
            )
            : $"No steady pitch: {stretches.Reason()}.";

    private static bool IsSame(SoundedNote a, SoundedNote b) =>
        Math.Abs(AirColumn.Cents.Between(a.Fundamental, b.Fundamental)) <= SamePitch;

    private static bool IsNear(SoundedNote note, double hertz) =>
        Math.Abs(note.Fundamental.Hertz - hertz) < NearMains;
}
