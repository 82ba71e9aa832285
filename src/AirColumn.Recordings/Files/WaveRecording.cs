using System.Buffers;
using NAudio.Wave;

namespace AirColumn.Recordings.Files;

/// <summary>A WAV file, read where its frames lie.</summary>
internal sealed class WaveRecording : Recording
{
    // Bytes read at once.
    private const int Block = 1 << 16;

    private static readonly Guid IntegerFormat = new("00000001-0000-0010-8000-00aa00389b71");
    private static readonly Guid FloatFormat = new("00000003-0000-0010-8000-00aa00389b71");

    private readonly WaveFileReader reader;
    private readonly Stream? owned;
    private readonly SampleFormat format;
    private readonly int frameBytes;

    public WaveRecording(Stream stream, bool leaveOpen)
        : this(new WaveHeader(stream), stream, leaveOpen) { }

    private WaveRecording(WaveHeader header, Stream stream, bool leaveOpen)
        : this(Header(header.Mended(stream), stream.Length), header, stream, leaveOpen) { }

    private WaveRecording(WaveFileReader reader, WaveHeader header, Stream stream, bool leaveOpen)
        : base(Rate(reader.WaveFormat), ChannelsOf(reader.WaveFormat), FramesOf(reader))
    {
        this.reader = reader;
        owned = leaveOpen ? null : stream;
        format = FormatOf(reader.WaveFormat);
        frameBytes = Channels * format.Bytes();
        if (header.Warning is { } warning)
        {
            Warnings = [warning];
        }
    }

    private protected override void ReadFrames(long start, int count, int channel, Span<double> samples)
    {
        var buffer = ArrayPool<byte>.Shared.Rent(Math.Max(Block, frameBytes));
        try
        {
            var most = buffer.Length / frameBytes;
            var (offset, stride, inFrame) =
                channel == AllChannels
                    ? (0, format.Bytes(), Channels)
                    : (channel * format.Bytes(), frameBytes, 1);
            for (var done = 0; done < count; )
            {
                var frames = Math.Min(most, count - done);
                var bytes = buffer.AsSpan(0, frames * frameBytes);
                reader.Position = (start + done) * frameBytes;
                reader.ReadExactly(bytes);
                var part = samples.Slice(done * inFrame, frames * inFrame);
                format.Decode(bytes[offset..], stride, part);
                RequireSound(part, start + done, inFrame);
                done += frames;
            }
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing && owned is not null)
        {
            reader.Dispose();
            owned.Dispose();
        }

        base.Dispose(disposing);
    }

    // Readers of headers that nobody wrote on purpose fail in many ways; all of them mean the same.
#pragma warning disable CA1031
    private static WaveFileReader Header(Stream stream, long length)
    {
        if (length == 0)
        {
            throw new RecordingException("The file is empty. Record again.");
        }

        try
        {
            return new WaveFileReader(stream);
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            throw new RecordingException(
                "This is not a WAV file that can be read, or it was cut off within its header. Save the sound as WAV, 16 or 24 bits, with "
                    + "any audio editor.",
                problem
            );
        }
    }
#pragma warning restore CA1031

    private static double Rate(WaveFormat format) =>
        format.SampleRate is >= (int)LowestRate and <= (int)HighestRate
            ? format.SampleRate
            : throw new RecordingException(
                $"The sample rate is {format.SampleRate} Hz; allowed is {LowestRate:0} Hz to {HighestRate:0} Hz. Record at 44100 or 48000 Hz."
            );

    private static int ChannelsOf(WaveFormat format) =>
        format.Channels >= 1 && format.BlockAlign == format.Channels * FormatOf(format).Bytes()
            ? format.Channels
            : throw new RecordingException(
                $"The header contradicts itself: {format.Channels} channels of {format.BitsPerSample} bits in {format.BlockAlign} bytes. "
                    + "Save the sound as WAV again."
            );

    private static long FramesOf(WaveFileReader reader)
    {
        var frames = reader.Length / reader.WaveFormat.BlockAlign;
        return frames > 0 ? frames : throw new RecordingException("The file holds no sound. Record again.");
    }

    private static SampleFormat FormatOf(WaveFormat format)
    {
        // The extended header: valid bits, loudspeakers, and the encoding as a GUID.
        var subFormat = format is WaveFormatExtraData { Encoding: WaveFormatEncoding.Extensible } more
            ? new Guid(more.ExtraData.AsSpan(6, 16))
            : Guid.Empty;
        var isInteger = format.Encoding == WaveFormatEncoding.Pcm || subFormat == IntegerFormat;
        var isFloat = format.Encoding == WaveFormatEncoding.IeeeFloat || subFormat == FloatFormat;
        return (isInteger, isFloat, format.BitsPerSample) switch
        {
            (true, _, 8) => SampleFormat.Unsigned8,
            (true, _, 16) => SampleFormat.Integer16,
            (true, _, 24) => SampleFormat.Integer24,
            (true, _, 32) => SampleFormat.Integer32,
            (_, true, 32) => SampleFormat.Float32,
            (_, true, 64) => SampleFormat.Float64,
            _ => throw new RecordingException(
                $"The sound is written as {format.Encoding} with {format.BitsPerSample} bits; allowed are integers of 8, 16, 24 or 32 bits "
                    + "and floating-point numbers of 32 or 64 bits. Save it as WAV, 16 or 24 bits."
            ),
        };
    }

    private static void RequireSound(ReadOnlySpan<double> samples, long start, int inFrame)
    {
        for (var i = 0; i < samples.Length; i++)
        {
            if (!(Math.Abs(samples[i]) <= Loudest))
            {
                throw new RecordingException(
                    $"Frame {start + i / inFrame} is {Require.Show(samples[i], "")} of full scale: the file is damaged. Save the sound again."
                );
            }
        }
    }
}
