using System.Text;
using System.Text.Json;
using AirColumn.Documents;

namespace AirColumn.Tests.Documents;

/// <summary>Reading as web services need it: bytes, streams that must not block, a serializer.</summary>
public class DocumentServiceTests
{
    [Fact]
    public void Reads_bytes()
    {
        Assert.Equal(
            ColumnDocument.Parse(Sample.New),
            ColumnDocument.Parse(Encoding.UTF8.GetBytes(Sample.New))
        );
        Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Parse("{}"u8));
        Assert.Throws<ColumnDocumentException>(() => ColumnDocument.Parse(new byte[17 * 1024 * 1024]));
    }

    [Fact]
    public async Task Reads_a_stream_without_blocking()
    {
        await using var body = new Body(Encoding.UTF8.GetBytes(Sample.New));
        Assert.Equal(ColumnDocument.Parse(Sample.New), await ColumnDocument.ReadAsync(body));
        await using var endless = new Body(null);
        await Assert.ThrowsAsync<ColumnDocumentException>(() => ColumnDocument.ReadAsync(endless));
        Assert.InRange(endless.Position, 16 * 1024 * 1024, 17 * 1024 * 1024);
        using var ended = new CancellationTokenSource();
        await ended.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            ColumnDocument.ReadAsync(endless, ended.Token)
        );
    }

    [Fact]
    public void A_serializer_reads_and_writes_it()
    {
        var document = ColumnDocument.Parse(Sample.New);
        var text = JsonSerializer.Serialize(new { Document = document });
        using var json = JsonDocument.Parse(text);
        var member = json.RootElement.GetProperty("Document");
        Assert.Equal(document, member.Deserialize<ColumnDocument>());
        Assert.Equal(document, ColumnDocument.Parse(member.GetRawText()));
        var problem = Assert.Throws<JsonException>(() =>
            JsonSerializer.Deserialize<ColumnDocument>(Sample.With("\"25 mm\"", "25"))
        );
        Assert.StartsWith(
            "sections[0].length is 25, a number without a unit",
            problem.Message,
            StringComparison.Ordinal
        );
        Assert.Equal("sections[0].length", problem.Path);
        Assert.IsType<ColumnDocumentException>(problem.InnerException);
    }

    // As the body of a request is: it refuses to be waited for, and comes in pieces. Without bytes it is endless.
    private sealed class Body(byte[]? bytes) : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get; set; }

        public override int Read(byte[] buffer, int offset, int count) =>
            throw new InvalidOperationException("Synchronous operations are disallowed.");

        public override async ValueTask<int> ReadAsync(
            Memory<byte> buffer,
            CancellationToken cancellationToken = default
        )
        {
            await Task.Yield();
            cancellationToken.ThrowIfCancellationRequested();
            var start = (int)Position;
            var count = bytes is null
                ? buffer.Length
                : Math.Min(Math.Min(7, buffer.Length), bytes.Length - start);
            if (bytes is null)
            {
                buffer.Span.Fill((byte)' ');
            }
            else
            {
                bytes.AsMemory(start, count).CopyTo(buffer);
            }

            Position += count;
            return count;
        }

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
