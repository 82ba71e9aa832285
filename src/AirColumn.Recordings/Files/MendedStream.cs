using System.Buffers.Binary;

namespace AirColumn.Recordings.Files;

/// <summary>A file that is read with numbers of four bytes in place of what stands there.</summary>
internal sealed class MendedStream : Stream
{
    private readonly Stream inner;
    private readonly (long At, byte[] Bytes)[] numbers;

    public MendedStream(Stream inner, params ReadOnlySpan<(long At, uint Number)> numbers)
    {
        this.inner = inner;
        this.numbers = new (long, byte[])[numbers.Length];
        for (var i = 0; i < numbers.Length; i++)
        {
            var bytes = new byte[4];
            BinaryPrimitives.WriteUInt32LittleEndian(bytes, numbers[i].Number);
            this.numbers[i] = (numbers[i].At, bytes);
        }
    }

    public override bool CanRead => true;
    public override bool CanSeek => true;
    public override bool CanWrite => false;
    public override long Length => inner.Length;
    public override long Position
    {
        get => inner.Position;
        set => inner.Position = value;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var start = inner.Position;
        var count = inner.Read(buffer);
        foreach (var (at, bytes) in numbers)
        {
            for (var i = 0; i < bytes.Length; i++)
            {
                if (at + i >= start && at + i < start + count)
                {
                    buffer[(int)(at + i - start)] = bytes[i];
                }
            }
        }

        return count;
    }

    public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);

    public override void Flush() { }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
