using System.Buffers.Binary;

namespace AirColumn.Recordings.Files;

/// <summary>A file that is read with four of its bytes replaced by a number.</summary>
internal sealed class MendedStream : Stream
{
    private readonly Stream inner;
    private readonly long at;
    private readonly byte[] number = new byte[4];

    public MendedStream(Stream inner, long at, uint number)
    {
        (this.inner, this.at) = (inner, at);
        BinaryPrimitives.WriteUInt32LittleEndian(this.number, number);
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
        for (var i = 0; i < number.Length; i++)
        {
            if (at + i >= start && at + i < start + count)
            {
                buffer[(int)(at + i - start)] = number[i];
            }
        }

        return count;
    }

    public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);

    public override void Flush() { }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
