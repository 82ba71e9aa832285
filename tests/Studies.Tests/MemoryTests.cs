using AirColumn.Studies;
using Shared.Studies;

namespace Studies.Tests;

[Collection(nameof(Alone))]
public class MemoryTests
{
    // Ten parts and a thousand of the same size: what is held while they are computed and merged does not grow with their number, but for a
    // stamp of each, some 300 bytes, and the rows of a group of Parquet, 10 000 at most.
    [Theory]
    [InlineData("csv")]
    [InlineData("parquet")]
    public void It_does_not_grow_with_the_number_of_parts(string format)
    {
        _ = Highest(10, format); // what is made once and kept
        var few = Highest(10, format);
        var many = Highest(1000, format);
        Assert.InRange(many, 0, few + 2_000_000);
    }

    private static long Highest(int parts, string name)
    {
        const int PartSize = 5;
        using var place = new Workplace();
        var format = RowFormat.All.Single(one => one.Extension == $".{name}");
        var study = Study.Parse(Workplace.Text(parts * PartSize, answers: "\"impedance\": [\"100 Hz\"]"));
        var run = new StudyRun(PartFolder.Begin(place["parts"], study), Shard.Whole, PartSize);
        var (highest, next) = (0L, 0);
        run.Compute(
            run.Left(false).ToDo,
            2,
            row =>
            {
                if (row.Item == next)
                {
                    highest = Math.Max(highest, GC.GetTotalMemory(true));
                    next += parts * PartSize / 10;
                }
            },
            CancellationToken.None
        );
        var merge = new StudyMerge([place["parts"]]);
        using var file = new Watched(() => highest = Math.Max(highest, GC.GetTotalMemory(true)));
        merge.Write(file, format);
        return highest;
    }

    // A stream that keeps nothing, and has memory measured now and then.
    private sealed class Watched(Action measure) : Stream
    {
        private long length;
        private long measured;

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => length;

        public override long Position
        {
            get => length;
            set => throw new NotSupportedException();
        }

        public override void Write(byte[] buffer, int offset, int count)
        {
            length += count;
            if (length > measured + 100_000)
            {
                measured = length;
                measure();
            }
        }

        public override void Flush() { }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();
    }
}

/// <summary>Tests beside which no other runs, since they measure what the process holds.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;
