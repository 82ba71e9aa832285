using AirColumn.Acoustics;
using AirColumn.Bores;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class BatchTests
{
    [Fact]
    public void Answers_come_in_the_order_of_the_questions()
    {
        var random = new Random(1);
        var pauses = Enumerable.Range(0, 200).Select(_ => random.Next(3)).ToArray();
        var answers = Batch.Answers(
            Enumerable.Range(0, 200),
            i =>
            {
                Thread.Sleep(pauses[i]);
                return i * i;
            }
        );
        Assert.Equal(Enumerable.Range(0, 200).Select(i => i * i), answers);
    }

    [Fact]
    public void Columns_are_answered_as_alone()
    {
        double[] lengths = [.. Enumerable.Range(0, 40).Select(i => 300.0 + 10 * i)];
        var together = Batch.Answers(lengths, Highest).ToArray();
        Assert.Equal(lengths.Select(Highest), together);

        static double Highest(double length)
        {
            var column = Column(new CylinderSection(Mm(20), Mm(length)), new OpenEnd(Mm(2)));
            double[] hertz = [.. Enumerable.Range(1, 200).Select(i => 5.0 * i)];
            var (real, imaginary) = (new double[200], new double[200]);
            column.Impedance(hertz, real, imaginary);
            return real.Max();
        }
    }

    // An endless stream of questions must not be drawn into memory.
    [Fact]
    public void Questions_are_taken_only_some_way_ahead()
    {
        var taken = 0;
        IEnumerable<int> Endless()
        {
            while (true)
            {
                yield return taken++;
            }
        }

        var read = 0;
        foreach (var answer in Batch.Answers(Endless(), i => i))
        {
            Assert.Equal(read, answer);
            if (++read == 1000)
            {
                break;
            }
        }

        Assert.InRange(taken, 1000, 1000 + 100 * Environment.ProcessorCount);
    }

    [Fact]
    public void Progress_counts_the_answers_handed_out()
    {
        var told = new List<long>();
        _ = Batch.Answers(Enumerable.Range(0, 5), i => i, new Told(told)).ToList();
        Assert.Equal([1, 2, 3, 4, 5], told);
    }

    [Fact]
    public void Cancelling_ends_a_batch()
    {
        using var source = new CancellationTokenSource();
        var read = 0;
        Assert.ThrowsAny<OperationCanceledException>(() =>
        {
            foreach (var _ in Batch.Answers(Enumerable.Range(0, 1_000_000), i => i, null, source.Token))
            {
                if (++read == 10)
                {
                    source.Cancel();
                }
            }
        });
        Assert.Equal(10, read);
    }

    [Fact]
    public void Whoever_leaves_early_leaves_nothing_running()
    {
        var (begun, ended) = (0, 0);
        foreach (
            var _ in Batch.Answers(
                Enumerable.Range(0, 1_000_000),
                i =>
                {
                    Interlocked.Increment(ref begun);
                    Thread.Sleep(2);
                    return Interlocked.Increment(ref ended);
                }
            )
        )
        {
            break;
        }

        Assert.InRange(begun, 1, 100 * Environment.ProcessorCount);
        Assert.Equal(begun, ended);
    }

    [Fact]
    public void A_question_that_throws_throws_when_it_is_its_turn()
    {
        var read = new List<int>();
        var problem = Assert.Throws<InvalidOperationException>(() =>
        {
            foreach (
                var answer in Batch.Answers(
                    Enumerable.Range(0, 100),
                    i => i == 7 ? throw new InvalidOperationException("seven") : i
                )
            )
            {
                read.Add(answer);
            }
        });
        Assert.Equal("seven", problem.Message);
        Assert.Equal(Enumerable.Range(0, 7), read);
    }

    private sealed class Told(List<long> told) : IProgress<long>
    {
        public void Report(long value) => told.Add(value);
    }
}
