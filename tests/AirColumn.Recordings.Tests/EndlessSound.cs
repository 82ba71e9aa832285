using System.Buffers.Binary;

namespace AirColumn.Recordings.Tests;

/// <summary>A WAV file of 16 bits whose samples repeat those of one second, and lie nowhere.</summary>
internal sealed class EndlessSound : Stream
{
    private readonly byte[] header;
    private readonly short[] second;

    /// <summary>A tone of so many whole hertz.</summary>
    public EndlessSound(double seconds, int rate, int hertz)
    {
        second =
        [
            .. Enumerable
                .Range(0, rate)
                .Select(i => 2 * Math.PI * hertz * i / rate)
                .Select(angle => (short)(8000 * Math.Sin(angle) + 4000 * Math.Sin(2 * angle))),
        ];
        var bytes = 2 * (int)(seconds * rate);
        header = WaveFileTests.Wave(1, 1, rate, 16, [])[..44];
        BinaryPrimitives.WriteInt32LittleEndian(header.AsSpan(4), 36 + bytes);
        BinaryPrimitives.WriteInt32LittleEndian(header.AsSpan(40), bytes);
        Length = header.Length + bytes;
    }

    public int LargestRead { get; private set; }

    public override bool CanRead => true;
    public override bool CanSeek => true;
    public override bool CanWrite => false;
    public override long Length { get; }
    public override long Position { get; set; }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var count = (int)Math.Min(buffer.Length, Length - Position);
        LargestRead = Math.Max(LargestRead, count);
        for (var i = 0; i < count; i++)
        {
            var at = Position + i;
            buffer[i] = at < header.Length ? header[at] : Sample(at - header.Length);
        }

        Position += count;
        return count;
    }

    public override long Seek(long offset, SeekOrigin origin) =>
        Position = origin switch
        {
            SeekOrigin.Begin => offset,
            SeekOrigin.Current => Position + offset,
            _ => Length + offset,
        };

    public override void Flush() { }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    private byte Sample(long at)
    {
        var value = second[at / 2 % second.Length];
        return (byte)(at % 2 == 0 ? value : value >> 8);
    }
}
