using System.Buffers.Binary;

namespace AirColumn.Recordings.Files;

/// <summary>How a number is written in a WAV file: little-endian, as its container (RIFF, IBM and Microsoft 1991) says.</summary>
internal enum SampleFormat
{
    Unsigned8,
    Integer16,
    Integer24,
    Integer32,
    Float32,
    Float64,
}

/// <summary>Reads samples; full scale is −1 to 1.</summary>
internal static class SampleFormats
{
    public static int Bytes(this SampleFormat format) =>
        format switch
        {
            SampleFormat.Unsigned8 => 1,
            SampleFormat.Integer16 => 2,
            SampleFormat.Integer24 => 3,
            SampleFormat.Float64 => 8,
            _ => 4,
        };

    /// <summary>The numbers that lie at every <paramref name="stride"/> bytes.</summary>
    public static void Decode(
        this SampleFormat format,
        ReadOnlySpan<byte> bytes,
        int stride,
        Span<double> samples
    )
    {
        for (var i = 0; i < samples.Length; i++)
        {
            var at = bytes[(i * stride)..];
            samples[i] = format switch
            {
                SampleFormat.Unsigned8 => (at[0] - 128) / 128.0,
                SampleFormat.Integer16 => BinaryPrimitives.ReadInt16LittleEndian(at) / 32768.0,
                // In the upper three bytes of four, so that the sign is right.
                SampleFormat.Integer24 => ((at[0] << 8) | (at[1] << 16) | (at[2] << 24)) / 2147483648.0,
                SampleFormat.Integer32 => BinaryPrimitives.ReadInt32LittleEndian(at) / 2147483648.0,
                SampleFormat.Float32 => BinaryPrimitives.ReadSingleLittleEndian(at),
                _ => BinaryPrimitives.ReadDoubleLittleEndian(at),
            };
        }
    }
}
