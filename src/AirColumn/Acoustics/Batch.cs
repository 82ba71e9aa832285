using System.Threading.Channels;

namespace AirColumn;

/// <summary>Answers many questions on all cores, such as a study of thousands of bores or a folder of documents.</summary>
public static class Batch
{
    // Ahead of the reader, for each thread: enough that a slow question does not hold up the others.
    private const int AheadForEachThread = 16;

    /// <summary>
    /// Answers questions in parallel and returns each answer as soon as it is ready. Nothing runs until the answers are enumerated.
    /// </summary>
    /// <remarks>
    /// <para>
    /// If a question throws, its answer holds the <see cref="BatchAnswer{TQuestion,TAnswer}.Error"/> and the other questions go on. Questions
    /// are read only a little ahead of the answers taken, so memory does not grow with their number. Leaving the loop over the answers early,
    /// by a break, cancels the questions that have begun and waits for them to end.
    /// </para>
    /// <para>
    /// In a browser, and with a <see cref="BatchOptions.DegreeOfParallelism"/> of 1, the thread that reads the answers computes them one after the
    /// other.
    /// </para>
    /// </remarks>
    /// <typeparam name="TQuestion">The type of a question, such as a bore or the name of a file.</typeparam>
    /// <typeparam name="TAnswer">The type of an answer, such as a list of resonances.</typeparam>
    /// <param name="questions">
    /// The questions, read one after the other on the thread that reads the answers. An exception from them ends the batch.
    /// </param>
    /// <param name="answer">
    /// Called on several threads at once; a <see cref="Column"/> may be shared between them. Pass the token that it receives to every call
    /// that it makes: a question in progress then ends with the batch.
    /// </param>
    /// <param name="options">The number of threads and the order. Default: one thread for each processor, in any order.</param>
    /// <param name="progress">Is told after each answer how many answers have been read. It is called on the thread that reads them.</param>
    /// <param name="cancellationToken">Ends the batch with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The answers, each with the number of its question.</returns>
    /// <exception cref="ArgumentNullException">The questions or the answer are null.</exception>
    public static IEnumerable<BatchAnswer<TQuestion, TAnswer>> Map<TQuestion, TAnswer>(
        IEnumerable<TQuestion> questions,
        Func<TQuestion, CancellationToken, TAnswer> answer,
        BatchOptions? options = null,
        IProgress<BatchProgress>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(questions);
        ArgumentNullException.ThrowIfNull(answer);
        options ??= new BatchOptions();
        var answers =
            options.Threads == 1
                ? OneByOne(questions, answer, cancellationToken)
                : SideBySide(questions, answer, options, cancellationToken);
        return progress is null ? answers : Counted(answers, questions, progress);
    }

    private static IEnumerable<BatchAnswer<TQuestion, TAnswer>> OneByOne<TQuestion, TAnswer>(
        IEnumerable<TQuestion> questions,
        Func<TQuestion, CancellationToken, TAnswer> answer,
        CancellationToken cancellationToken
    )
    {
        var index = 0L;
        foreach (var question in questions)
        {
            cancellationToken.ThrowIfCancellationRequested();
            yield return BatchAnswer<TQuestion, TAnswer>.To(index++, question, answer, cancellationToken)
                ?? throw new OperationCanceledException(cancellationToken);
        }
    }

    private static IEnumerable<BatchAnswer<TQuestion, TAnswer>> SideBySide<TQuestion, TAnswer>(
        IEnumerable<TQuestion> questions,
        Func<TQuestion, CancellationToken, TAnswer> answer,
        BatchOptions options,
        CancellationToken cancellationToken
    )
    {
        using var left = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var ready = Channel.CreateUnbounded<BatchAnswer<TQuestion, TAnswer>>();
        var threads = new ConcurrentExclusiveSchedulerPair(TaskScheduler.Default, options.Threads);
        var order = options.InOrder ? new SortedList<long, BatchAnswer<TQuestion, TAnswer>>() : null;
        var (begun, read) = (0L, 0L);
        try
        {
            foreach (var question in questions)
            {
                Begin(begun++, question);
                while (Next(begun - read >= AheadForEachThread * options.Threads) is { } next)
                {
                    yield return next;
                }
            }

            while (read < begun)
            {
                yield return Next(true)!;
            }
        }
        finally
        {
            // What has not begun does not begin; what has is waited for, so that nothing of ours runs on.
            left.Cancel();
            threads.Complete();
            threads.Completion.Wait(CancellationToken.None);
        }

        void Begin(long index, TQuestion question) =>
            _ = Task.Factory.StartNew(
                () =>
                {
                    if (
                        BatchAnswer<TQuestion, TAnswer>.To(index, question, answer, left.Token) is
                        { } answered
                    )
                    {
                        ready.Writer.TryWrite(answered);
                    }
                },
                left.Token,
                TaskCreationOptions.DenyChildAttach | TaskCreationOptions.HideScheduler,
                threads.ConcurrentScheduler
            );

        // The next to hand out; null where there is none yet and none is waited for.
        BatchAnswer<TQuestion, TAnswer>? Next(bool waits)
        {
            while (true)
            {
                cancellationToken.ThrowIfCancellationRequested();
                if (order is { Count: > 0 } && order.GetKeyAtIndex(0) == read)
                {
                    var first = order.GetValueAtIndex(0);
                    order.RemoveAt(0);
                    read++;
                    return first;
                }

                if (!ready.Reader.TryRead(out var answered))
                {
                    if (!waits)
                    {
                        return null;
                    }

                    // Waiting for a task, not for a lock, lets the pool bring in another thread if this is one of its own.
                    answered = ready.Reader.ReadAsync(cancellationToken).AsTask().GetAwaiter().GetResult();
                }

                if (order is null)
                {
                    read++;
                    return answered;
                }

                order.Add(answered.Index, answered);
            }
        }
    }

    private static IEnumerable<BatchAnswer<TQuestion, TAnswer>> Counted<TQuestion, TAnswer>(
        IEnumerable<BatchAnswer<TQuestion, TAnswer>> answers,
        IEnumerable<TQuestion> questions,
        IProgress<BatchProgress> progress
    )
    {
        long? total = questions.TryGetNonEnumeratedCount(out var count) ? count : null;
        var done = 0L;
        foreach (var answer in answers)
        {
            progress.Report(new BatchProgress(++done, total));
            yield return answer;
        }
    }
}
