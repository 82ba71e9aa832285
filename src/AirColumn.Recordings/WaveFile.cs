using System.Buffers.Binary;
using NAudio.Wave;
using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>Writes sound as a WAV file, one channel of 16-bit integers or 32-bit floating-point numbers.</summary>
public static class WaveFile
{
    /// <summary>Writes sound as integers of 16 bits, which every player reads.</summary>
    /// <param name="stream">The stream to write to. It must be seekable, since the header holds the length; it stays open.</param>
    /// <param name="samples">The sound, −1 to 1.</param>
    /// <param name="sampleRate">Samples per second, a whole number: 4 kHz to 1 MHz.</param>
    /// <param name="cancellationToken">Cancels the call with an <see cref="OperationCanceledException"/>, before anything is written.</param>
    /// <exception cref="ArgumentException">The stream is not writable and seekable, or the rate is not whole.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A sample or the rate is out of range; nothing is written.</exception>
    public static void Write16(
        Stream stream,
        ReadOnlySpan<double> samples,
        Frequency sampleRate,
        CancellationToken cancellationToken = default
    )
    {
        var rate = Checked(stream, samples, sampleRate, 1);
        var bytes = new byte[2 * samples.Length];
        for (var i = 0; i < samples.Length; i++)
        {
            Look(i, cancellationToken);
            var number = (short)Math.Clamp(Math.Round(32768 * samples[i]), short.MinValue, short.MaxValue);
            BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(2 * i), number);
        }

        using var writer = new WaveFileWriter(stream, new WaveFormat(rate, 16, 1));
        writer.Write(bytes);
    }

    /// <summary>Writes sound as floating-point numbers of 32 bits, for further computing.</summary>
    /// <param name="stream">The stream to write to. It must be seekable, since the header holds the length; it stays open.</param>
    /// <param name="samples">The sound; finite; full scale is −1 to 1.</param>
    /// <param name="sampleRate">Samples per second, a whole number: 4 kHz to 1 MHz.</param>
    /// <param name="cancellationToken">Cancels the call with an <see cref="OperationCanceledException"/>, before anything is written.</param>
    /// <exception cref="ArgumentException">The stream is not writable and seekable, or the rate is not whole.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A sample or the rate is out of range; nothing is written.</exception>
    public static void WriteFloat(
        Stream stream,
        ReadOnlySpan<double> samples,
        Frequency sampleRate,
        CancellationToken cancellationToken = default
    )
    {
        var rate = Checked(stream, samples, sampleRate, float.MaxValue);
        var bytes = new byte[4 * samples.Length];
        for (var i = 0; i < samples.Length; i++)
        {
            Look(i, cancellationToken);
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(4 * i), (float)samples[i]);
        }

        using var writer = new WaveFileWriter(stream, WaveFormat.CreateIeeeFloatWaveFormat(rate, 1));
        writer.Write(bytes);
    }

    // Every so many samples.
    private static void Look(int sample, CancellationToken cancellationToken)
    {
        if (sample % (1 << 16) == 0)
        {
            cancellationToken.ThrowIfCancellationRequested();
        }
    }

    private static int Checked(
        Stream stream,
        ReadOnlySpan<double> samples,
        Frequency sampleRate,
        double largest
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (stream is not { CanWrite: true, CanSeek: true })
        {
            throw new ArgumentException("The stream must be writable and seekable.", nameof(stream));
        }

        Require.InRange(
            sampleRate.Hertz,
            Recording.LowestRate,
            Recording.HighestRate,
            "Hz",
            nameof(sampleRate)
        );
        foreach (var sample in samples)
        {
            Require.InRange(sample, -largest, largest, "", nameof(samples));
        }

        var rate = (int)Math.Round(sampleRate.Hertz);
        return Math.Abs(rate - sampleRate.Hertz) < 1e-6
            ? rate
            : throw new ArgumentException(
                $"sampleRate is {Require.Show(sampleRate.Hertz, "Hz")}; a WAV file holds a whole number of samples in a second.",
                nameof(sampleRate)
            );
    }
}
