using AirColumn.Recordings.Files;
using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>Recorded sound: frames of one or more channels at equal steps of time.</summary>
/// <remarks>
/// Frames are read a block at a time, so hours of sound need no more memory than seconds. Only one thread at a time may read a recording.
/// </remarks>
public abstract class Recording : IDisposable
{
    /// <summary>The lowest sample rate that is taken, Hz: speech on old telephones.</summary>
    internal const double LowestRate = 4000;

    /// <summary>The highest sample rate that is taken, Hz.</summary>
    internal const double HighestRate = 1_000_000;

    /// <summary>Of floating-point numbers, in full scales: beyond it is not sound.</summary>
    internal const double Loudest = 1e6;

    private protected Recording(double rateHertz, int channels, long frames)
    {
        (RateHertz, Channels, Frames) = (rateHertz, channels, frames);
    }

    /// <summary>Frames in a second.</summary>
    public Frequency SampleRate => Frequency.FromHertz(RateHertz);

    /// <summary>The number of channels; at least 1.</summary>
    public int Channels { get; }

    /// <summary>The number of frames; at least 1.</summary>
    public long Frames { get; }

    /// <summary>Its duration.</summary>
    public Duration Duration => Duration.FromSeconds(Frames / RateHertz);

    /// <summary>Warnings for the user, such as that the file ends early.</summary>
    public IReadOnlyList<string> Warnings { get; private protected init; } = [];

    internal double RateHertz { get; }

    /// <summary>
    /// Opens a WAV file: integers of 8, 16, 24 or 32 bits or floating-point numbers of 32 or 64 bits, with any number of channels and any
    /// rate.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <returns>The recording.</returns>
    /// <exception cref="RecordingException">The file is not a WAV file of these kinds, or holds no sound; the message says what to do.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The program may not read the file, or the path is a folder.</exception>
    public static Recording Open(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var file = File.OpenRead(path);
        try
        {
            if (!file.CanSeek)
            {
                throw new RecordingException(
                    "This is not a file on a disk (perhaps it is a pipe), so reading cannot start at an arbitrary place in it. Save the sound to a file first."
                );
            }

            return new WaveRecording(file, leaveOpen: false);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>Opens WAV data, as <see cref="Open(string)"/>.</summary>
    /// <param name="stream">The data. The stream is read from its beginning and must be seekable. The caller disposes of it.</param>
    /// <returns>The recording.</returns>
    /// <exception cref="ArgumentException">The stream cannot be read, or has no random access.</exception>
    /// <exception cref="RecordingException">The data is not WAV data, or holds no sound.</exception>
    public static Recording Open(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (stream is not { CanRead: true, CanSeek: true })
        {
            throw new ArgumentException(
                "The stream must be readable and seekable; copy it to a file or a MemoryStream first.",
                nameof(stream)
            );
        }

        stream.Position = 0;
        return new WaveRecording(stream, leaveOpen: true);
    }

    /// <summary>Sound in memory, of one channel.</summary>
    /// <param name="samples">
    /// The samples; full scale is −1 to 1. At least one sample, and no sample beyond ±1 000 000. The samples are copied.
    /// </param>
    /// <param name="sampleRate">Samples per second: 4 kHz to 1 MHz.</param>
    /// <returns>The recording.</returns>
    /// <exception cref="ArgumentException">There is no sample.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate or a sample is out of range.</exception>
    public static Recording FromSamples(ReadOnlySpan<double> samples, Frequency sampleRate)
    {
        Require.InRange(sampleRate.Hertz, LowestRate, HighestRate, "Hz", nameof(sampleRate));
        if (samples.IsEmpty)
        {
            throw new ArgumentException("There are no samples; at least one is needed.", nameof(samples));
        }

        foreach (var sample in samples)
        {
            Require.InRange(sample, -Loudest, Loudest, "", nameof(samples));
        }

        return new SampleRecording(samples.ToArray(), sampleRate.Hertz);
    }

    /// <summary>Reads samples of one channel; full scale is −1 to 1.</summary>
    /// <param name="channel">The index of the channel: 0 is the first.</param>
    /// <param name="start">The first frame: 0 to <see cref="Frames"/> minus the length of <paramref name="samples"/>.</param>
    /// <param name="samples">Receives the samples.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such channel, or there are not enough frames.</exception>
    /// <exception cref="RecordingException">The data holds a number that is not a sample of sound.</exception>
    /// <exception cref="IOException">The data cannot be read.</exception>
    public void Read(int channel, long start, Span<double> samples)
    {
        Require.InRange(channel, 0, Channels - 1, "");
        Require.InRange(start, 0, Frames - samples.Length, "frames");
        ReadFrames(start, samples.Length, channel, samples);
    }

    /// <summary>Reads all channels of frames that are there, frame after frame.</summary>
    internal void ReadAll(long start, Span<double> samples) =>
        ReadFrames(start, samples.Length / Channels, AllChannels, samples);

    /// <summary>Closes the file.</summary>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Instead of a channel's number.</summary>
    private protected const int AllChannels = -1;

    /// <summary>Reads frames that are there: one channel, or all, frame after frame.</summary>
    private protected abstract void ReadFrames(long start, int count, int channel, Span<double> samples);

    /// <summary>Releases the file.</summary>
    /// <param name="disposing">True if <see cref="Dispose()"/> calls it.</param>
    protected virtual void Dispose(bool disposing) { }

    /// <summary>Duration, channels and sample rate, in the invariant culture.</summary>
    /// <returns>Duration, channels and rate, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"{Duration.Seconds:0.##} s, {Channels} channels, {SampleRate.Hertz:0} Hz"
        );
}
