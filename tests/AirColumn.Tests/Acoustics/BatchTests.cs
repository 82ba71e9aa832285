using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class BatchTests
{
    private static readonly BatchOptions One = new() { DegreeOfParallelism = 1 };
    private static readonly BatchOptions Two = new() { DegreeOfParallelism = 2 };
    private static readonly BatchOptions Ordered = new() { DegreeOfParallelism = 4, InOrder = true };

    public static TheoryData<BatchOptions?> AllOptions => [null, One, Two, Ordered];

    [Theory]
    [MemberData(nameof(AllOptions))]
    public void Each_question_has_its_answer_once(BatchOptions? options)
    {
        var random = new Random(1);
        var pauses = Enumerable.Range(0, 200).Select(_ => random.Next(3)).ToArray();
        var answers = Batch
            .Map(
                Enumerable.Range(0, 200).Select(i => $"question {i}"),
                (question, _) =>
                {
                    var i = int.Parse(question.AsSpan(9), null);
                    Thread.Sleep(pauses[i]);
                    return i * i;
                },
                options
            )
            .ToList();
        Assert.Equal(Enumerable.Range(0, 200), answers.Select(answer => (int)answer.Index).Order());
        Assert.All(
            answers,
            answer =>
            {
                Assert.Null(answer.Error);
                Assert.Equal($"question {answer.Index}", answer.Question);
                Assert.Equal(answer.Index * answer.Index, answer.Answer);
            }
        );
    }

    [Fact]
    public void Answers_come_in_the_order_of_the_questions_where_that_is_asked_for()
    {
        var random = new Random(1);
        var pauses = Enumerable.Range(0, 200).Select(_ => random.Next(3)).ToArray();
        foreach (var options in new[] { One, Ordered })
        {
            var indices = Batch
                .Map(
                    pauses,
                    (pause, _) =>
                    {
                        Thread.Sleep(pause);
                        return pause;
                    },
                    options
                )
                .Select(answer => answer.Index);
            Assert.Equal(Enumerable.Range(0, 200).Select(i => (long)i), indices);
        }
    }

    // The first question waits for the reader to have the answer of the second: in order that would never end.
    [Fact]
    public void An_answer_is_handed_out_as_soon_as_it_is_there()
    {
        using var secondIsRead = new ManualResetEventSlim();
        var read = new List<long>();
        foreach (
            var answer in Batch.Map(
                [0, 1],
                (i, token) =>
                {
                    if (i == 0)
                    {
                        secondIsRead.Wait(token);
                    }

                    return i;
                },
                Two
            )
        )
        {
            read.Add(answer.Index);
            secondIsRead.Set();
        }

        Assert.Equal([1, 0], read);
    }

    [Fact]
    public void Columns_are_answered_as_alone()
    {
        double[] lengths = [.. Enumerable.Range(0, 40).Select(i => 300.0 + 10 * i)];
        var together = Batch
            .Map(lengths, Highest, new BatchOptions { InOrder = true })
            .Select(answer => answer.Answer);
        Assert.Equal(lengths.Select(length => Highest(length, default)), together);

        static double Highest(double length, CancellationToken token)
        {
            var column = Column(new CylinderSection(Mm(20), Mm(length)), new OpenEnd(Mm(2)));
            double[] hertz = [.. Enumerable.Range(1, 200).Select(i => 5.0 * i)];
            var (real, imaginary) = (new double[200], new double[200]);
            column.Impedance(hertz, real, imaginary, token);
            return real.Max();
        }
    }

    // An endless stream of questions must not be drawn into memory; neither must its answers, behind one that takes long.
    [Theory]
    [MemberData(nameof(AllOptions))]
    public void Questions_are_taken_only_some_way_ahead(BatchOptions? options)
    {
        var threads = (options ?? new BatchOptions()).Threads;
        var taken = 0;
        IEnumerable<int> Endless()
        {
            while (true)
            {
                yield return taken++;
            }
        }

        var read = 0;
        foreach (var answer in Batch.Map(Endless(), (i, _) => i, options))
        {
            Assert.Equal(answer.Index, answer.Answer);
            Assert.InRange(taken, read + 1, read + 1 + 16 * threads);
            if (++read == 1000)
            {
                break;
            }
        }

        Assert.InRange(taken, 1000, 1000 + 16 * threads);
    }

    [Theory]
    [MemberData(nameof(AllOptions))]
    public void Never_more_are_asked_at_once_than_allowed(BatchOptions? options)
    {
        var threads = (options ?? new BatchOptions()).Threads;
        var (now, most) = (0, 0);
        var gate = new Lock();
        var count = Batch
            .Map(
                Enumerable.Range(0, 100),
                (i, _) =>
                {
                    lock (gate)
                    {
                        most = Math.Max(most, ++now);
                    }

                    Thread.Sleep(1);
                    lock (gate)
                    {
                        now--;
                    }

                    return i;
                },
                options
            )
            .Count();
        Assert.Equal(100, count);
        Assert.InRange(most, 1, threads);
    }

    // As in a browser, which has no other.
    [Fact]
    public void One_at_a_time_is_the_readers_own_thread_and_only_when_asked()
    {
        var asked = 0;
        var here = Environment.CurrentManagedThreadId;
        foreach (
            var answer in Batch.Map(
                Enumerable.Range(0, 10),
                (_, _) =>
                {
                    asked++;
                    return Environment.CurrentManagedThreadId;
                },
                One
            )
        )
        {
            Assert.Equal(here, answer.Answer);
            Assert.Equal(answer.Index + 1, asked);
        }
    }

    [Theory]
    [MemberData(nameof(AllOptions))]
    public void An_error_is_told_with_its_question_and_the_others_go_on(BatchOptions? options)
    {
        var answers = Batch
            .Map(
                Enumerable.Range(0, 100),
                (i, _) =>
                    i % 7 == 3 ? throw new InvalidOperationException($"no {i}")
                    // A limit of its own, such as one of time, is an error like any other.
                    : i == 50 ? throw new OperationCanceledException("fifty")
                    : i,
                options
            )
            .ToList();
        Assert.Equal(100, answers.Count);
        foreach (var answer in answers)
        {
            if (answer.Index % 7 == 3)
            {
                Assert.Equal($"no {answer.Index}", answer.Error?.Message);
                Assert.Same(answer.Error, Assert.Throws<InvalidOperationException>(() => answer.Answer));
            }
            else if (answer.Index == 50)
            {
                Assert.IsType<OperationCanceledException>(answer.Error);
            }
            else
            {
                Assert.Null(answer.Error);
                Assert.Equal(answer.Question, answer.Answer);
            }
        }
    }

    [Theory]
    [MemberData(nameof(AllOptions))]
    public void What_the_questions_throw_ends_the_batch(BatchOptions? options)
    {
        static IEnumerable<int> Questions()
        {
            yield return 1;
            throw new InvalidOperationException("the list is torn");
        }

        var problem = Assert.Throws<InvalidOperationException>(() =>
            Batch.Map(Questions(), (i, _) => i, options).ToList()
        );
        Assert.Equal("the list is torn", problem.Message);
    }

    [Theory]
    [MemberData(nameof(AllOptions))]
    public void Progress_counts_the_answers_handed_out(BatchOptions? options)
    {
        var told = new List<BatchProgress>();
        _ = Batch.Map(new int[5], (i, _) => i, options, new Told(told)).ToList();
        Assert.Equal(Enumerable.Range(1, 5).Select(i => new BatchProgress(i, 5)), told);
        told.Clear();
        _ = Batch.Map(new int[5].Where(_ => true), (i, _) => i, options, new Told(told)).ToList();
        Assert.Equal(Enumerable.Range(1, 5).Select(i => new BatchProgress(i, null)), told);
    }

    [Theory]
    [MemberData(nameof(AllOptions))]
    public void Cancelling_ends_a_batch(BatchOptions? options)
    {
        using var source = new CancellationTokenSource();
        var read = 0;
        Assert.ThrowsAny<OperationCanceledException>(() =>
        {
            var answers = Batch.Map(
                Enumerable.Range(0, 1_000_000),
                (i, _) => i,
                options,
                cancellationToken: source.Token
            );
            foreach (var _ in answers)
            {
                if (++read == 10)
                {
                    source.Cancel();
                }
            }
        });
        Assert.Equal(10, read);
    }

    // Each question waits for the token alone: if that were not handed on, this would never end.
    [Theory]
    [MemberData(nameof(AllOptions))]
    public void Cancelling_reaches_the_questions_in_progress(BatchOptions? options)
    {
        using var source = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() =>
            Batch
                .Map(
                    Enumerable.Range(0, 1000),
                    (i, token) =>
                    {
                        if (i == 0)
                        {
                            source.Cancel();
                        }

                        token.WaitHandle.WaitOne();
                        token.ThrowIfCancellationRequested();
                        return i;
                    },
                    options,
                    cancellationToken: source.Token
                )
                .ToList()
        );
    }

    [Theory]
    [MemberData(nameof(AllOptions))]
    public void Whoever_leaves_early_leaves_nothing_running(BatchOptions? options)
    {
        var threads = (options ?? new BatchOptions()).Threads;
        var (begun, ended) = (0, 0);
        var answers = Batch.Map(
            Enumerable.Range(0, 1_000_000),
            (_, _) =>
            {
                Interlocked.Increment(ref begun);
                Thread.Sleep(2);
                return Interlocked.Increment(ref ended);
            },
            options
        );
        foreach (var _ in answers)
        {
            break;
        }

        Assert.InRange(begun, 1, 1 + 16 * threads);
        Assert.Equal(begun, ended);
    }

    [Fact]
    public void Batches_may_be_nested()
    {
        var sums = Batch
            .Map(
                Enumerable.Range(0, 20),
                (i, token) =>
                    Batch
                        .Map(Enumerable.Range(0, i), (n, _) => n, Two, cancellationToken: token)
                        .Sum(answer => answer.Answer),
                Ordered
            )
            .Select(answer => answer.Answer);
        Assert.Equal(Enumerable.Range(0, 20).Select(i => i * (i - 1) / 2), sums);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(1025)]
    public void The_degree_of_parallelism_is_a_number_of_threads(int degree)
    {
        var problem = Assert.Throws<ArgumentOutOfRangeException>(() =>
            new BatchOptions { DegreeOfParallelism = degree }
        );
        Assert.StartsWith(
            FormattableString.Invariant($"DegreeOfParallelism is {degree}; allowed is 1 to 1024."),
            problem.Message,
            StringComparison.Ordinal
        );
    }

    private sealed class Told(List<BatchProgress> told) : IProgress<BatchProgress>
    {
        public void Report(BatchProgress value) => told.Add(value);
    }
}
