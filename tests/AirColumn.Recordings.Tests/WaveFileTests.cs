using System.Buffers.Binary;
using System.Text;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Recordings.Tests;

public class WaveFileTests
{
    private static readonly double[] Some = [0, 0.5, -0.25, -1, 0.75];

    // Each kind of number by hand: RIFF (IBM and Microsoft 1991), integers little-endian, those of 8 bits from 128.
    [Theory]
    [InlineData(1, 8, new byte[] { 128, 192, 96, 0, 224 })]
    [InlineData(1, 16, new byte[] { 0, 0, 0, 64, 0, 0xE0, 0, 0x80, 0, 0x60 })]
    [InlineData(1, 24, new byte[] { 0, 0, 0, 0, 0, 64, 0, 0, 0xE0, 0, 0, 0x80, 0, 0, 0x60 })]
    [InlineData(1, 32, new byte[] { 0, 0, 0, 0, 0, 0, 0, 64, 0, 0, 0, 0xE0, 0, 0, 0, 0x80, 0, 0, 0, 0x60 })]
    public void Integers_are_read_exactly(int encoding, int bits, byte[] data)
    {
        using var recording = Recording.Open(new MemoryStream(Wave(encoding, 1, 44_100, bits, data)));
        Assert.Equal(5, recording.Frames);
        Assert.Equal(44_100, recording.SampleRate.Hertz);
        Assert.Equal(Some, All(recording));
    }

    [Theory]
    [InlineData(32)]
    [InlineData(64)]
    public void Floating_point_numbers_are_read_exactly(int bits)
    {
        var data = new byte[Some.Length * bits / 8];
        for (var i = 0; i < Some.Length; i++)
        {
            if (bits == 32)
            {
                BinaryPrimitives.WriteSingleLittleEndian(data.AsSpan(4 * i), (float)Some[i]);
            }
            else
            {
                BinaryPrimitives.WriteDoubleLittleEndian(data.AsSpan(8 * i), Some[i]);
            }
        }

        using var recording = Recording.Open(new MemoryStream(Wave(3, 1, 96_000, bits, data)));
        Assert.Equal(Some, All(recording));
    }

    [Fact]
    public void Channels_are_told_apart()
    {
        using var recording = Recording.Open(
            new MemoryStream(Wave(1, 3, 8000, 8, [128, 192, 96, 128, 64, 160]))
        );
        Assert.Equal(3, recording.Channels);
        Assert.Equal([0.0, 0.0], All(recording, 0));
        Assert.Equal([0.5, -0.5], All(recording, 1));
        Assert.Equal([-0.25, 0.25], All(recording, 2));
    }

    // WAVE_FORMAT_EXTENSIBLE: the encoding is the first number of a GUID.
    [Fact]
    public void The_extended_header_is_read()
    {
        byte[] guid = [1, 0, 0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];
        byte[] extension = [24, 0, 4, 0, 0, 0, .. guid];
        using var recording = Recording.Open(
            new MemoryStream(Wave(0xFFFE, 1, 48_000, 24, [0, 0, 64, 0, 0, 0xE0], extension))
        );
        Assert.Equal([0.5, -0.25], All(recording));
    }

    [Fact]
    public void What_is_written_is_read_again()
    {
        using var stream = new MemoryStream();
        WaveFile.WriteFloat(stream, Some, Frequency.FromHertz(48_000));
        Assert.True(stream.CanWrite);
        using (var recording = Recording.Open(stream))
        {
            Assert.Equal(Some, All(recording));
        }

        stream.SetLength(0);
        WaveFile.Write16(stream, Some, Frequency.FromHertz(48_000));
        using var rounded = Recording.Open(stream);
        Assert.Equal(Some, All(rounded));
    }

    [Fact]
    public void Nothing_is_written_of_what_is_out_of_range()
    {
        using var stream = new MemoryStream();
        var loud = Assert.Throws<ArgumentOutOfRangeException>(() =>
            WaveFile.Write16(stream, [0, 1.5], Frequency.FromHertz(48_000))
        );
        Assert.Contains("1.5", loud.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            WaveFile.WriteFloat(stream, [double.NaN], Frequency.FromHertz(48_000))
        );
        Assert.Throws<ArgumentException>(() =>
            WaveFile.WriteFloat(stream, Some, Frequency.FromHertz(44_100.5))
        );
        Assert.Equal(0, stream.Length);
    }

    [Fact]
    public void A_file_that_was_cut_off_is_read_with_a_warning()
    {
        var whole = Wave(1, 1, 8000, 16, new byte[1000]);
        using var recording = Recording.Open(new MemoryStream(whole[..600]));
        Assert.Equal((600 - 44) / 2, recording.Frames);
        Assert.Contains("cut off", Assert.Single(recording.Warnings), StringComparison.Ordinal);
        Assert.Equal(recording.Frames, All(recording).Length);
    }

    // Both lengths are those of RIFF (IBM and Microsoft 1991): of all that follows the first eight bytes, and of the sound.
    [Fact]
    public void A_file_that_was_broken_off_gets_the_lengths_that_it_has()
    {
        var whole = Wave(1, 1, 8000, 16, new byte[1000]);
        var broken = whole.ToArray();
        broken.AsSpan(4, 4).Clear();
        broken.AsSpan(40, 4).Clear();
        using var stream = new MemoryStream(broken);
        using var mended = new Files.WaveHeader(stream).Mended(stream);
        var read = new byte[whole.Length];
        mended.Position = 0;
        mended.ReadExactly(read);
        Assert.Equal(whole, read);
    }

    // A recorder that loses power leaves the lengths as they were at the beginning: 0, or all ones.
    [Theory]
    [InlineData(0u)]
    [InlineData(uint.MaxValue)]
    [InlineData(5000u)]
    public void A_header_that_was_never_completed_is_mended(uint said)
    {
        var file = Wave(1, 1, 8000, 16, [0, 0, 0, 64, 0, 0xE0]);
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(40), said);
        using var recording = Recording.Open(new MemoryStream(file));
        Assert.Equal([0, 0.5, -0.25], All(recording));
        Assert.Single(recording.Warnings);
    }

    public static TheoryData<string, byte[]> NoSound =>
        new()
        {
            { "empty", [] },
            {
                "not a WAV file",
                Encoding.ASCII.GetBytes("this is a text, and no sound at all, whatever its name says")
            },
            { "not a WAV file", Wave(1, 1, 8000, 16, [0, 0])[..30] },
            { "no sound", Wave(1, 1, 8000, 16, []) },
            { "not a WAV file", Wave(1, 0, 8000, 16, [0, 0]) },
            { "sample rate is 0 Hz", Wave(1, 1, 0, 16, [0, 0]) },
            { "sample rate is 1000 Hz", Wave(1, 1, 1000, 16, [0, 0]) },
            { "12 bits", Wave(1, 2, 8000, 12, [0, 0, 0]) },
            { "MuLaw", Wave(7, 1, 8000, 8, [0, 0]) },
            { "16 bits", Wave(3, 1, 8000, 16, [0, 0]) },
        };

    [Theory]
    [MemberData(nameof(NoSound))]
    public void What_is_no_sound_is_refused_by_name(string says, byte[] file)
    {
        var problem = Assert.Throws<RecordingException>(() => Recording.Open(new MemoryStream(file)));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_that_are_no_sound_are_refused_where_they_lie()
    {
        var data = new byte[12];
        BinaryPrimitives.WriteSingleLittleEndian(data.AsSpan(8), float.NaN);
        using var recording = Recording.Open(new MemoryStream(Wave(3, 1, 8000, 32, data)));
        var problem = Assert.Throws<RecordingException>(() => All(recording));
        Assert.Contains("Frame 2 is NaN", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stream_that_cannot_be_seeked_is_refused()
    {
        using var pipe = new System.IO.Pipelines.Pipe().Reader.AsStream();
        Assert.Throws<ArgumentException>(() => Recording.Open(pipe));
    }

    // Whatever stands in a file, it is read or refused by name, in memory bounded by its length.
    [Property(MaxTest = 2000)]
    public void Any_header_is_read_or_refused(byte[] noise, (byte At, byte Value)[] changes, byte kind)
    {
        var file = Wave(kind % 4 == 3 ? 3 : 1, 1 + kind % 3, 8000, 8 * (1 + kind % 8), noise ?? []);
        foreach (var (at, value) in changes ?? [])
        {
            file[at % Math.Min(file.Length, 48)] = value;
        }

        try
        {
            using var recording = Recording.Open(new MemoryStream(file));
            Assert.True(recording.Frames <= file.Length);
            _ = Take.Of(recording);
        }
        catch (RecordingException problem)
        {
            Assert.NotEmpty(problem.Message);
        }
    }

    internal static byte[] Wave(
        int encoding,
        int channels,
        int rate,
        int bits,
        byte[] data,
        byte[]? extension = null
    )
    {
        using var file = new MemoryStream();
        using var writer = new BinaryWriter(file);
        var more = extension is null ? 0 : 2 + extension.Length;
        writer.Write("RIFF"u8);
        writer.Write(36 + more + data.Length);
        writer.Write("WAVEfmt "u8);
        writer.Write(16 + more);
        writer.Write((ushort)encoding);
        writer.Write((ushort)channels);
        writer.Write(rate);
        writer.Write(rate * channels * bits / 8);
        writer.Write((ushort)(channels * bits / 8));
        writer.Write((ushort)bits);
        if (extension is not null)
        {
            writer.Write((ushort)extension.Length);
            writer.Write(extension);
        }

        writer.Write("data"u8);
        writer.Write(data.Length);
        writer.Write(data);
        return file.ToArray();
    }

    private static double[] All(Recording recording, int channel = 0)
    {
        var samples = new double[recording.Frames];
        recording.Read(channel, 0, samples);
        return samples;
    }
}
