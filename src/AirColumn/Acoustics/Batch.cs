namespace AirColumn.Acoustics;

/// <summary>Many questions on all cores: a study of thousands of bores, a folder of documents.</summary>
public static class Batch
{
    // Ahead of the reader, for each core: enough that a slow one does not hold up the others.
    private const int AheadForEachCore = 16;

    /// <summary>Answers questions in parallel and hands the answers out in the order of the questions.</summary>
    /// <remarks>
    /// Streaming: questions are taken and answers kept only some way ahead of what has been read, so that memory does not grow with
    /// their number. Nothing starts before the first answer is asked for. Leaving early, such as by a break, abandons the rest.
    /// </remarks>
    /// <typeparam name="TQuestion">What is asked about, such as a bore or the name of a file.</typeparam>
    /// <typeparam name="TAnswer">What is answered, such as a list of resonances.</typeparam>
    /// <param name="questions">Taken one after the other on the thread that reads.</param>
    /// <param name="answer">Called on several threads at once; a <see cref="Column"/> may be shared between them.</param>
    /// <param name="progress">Told how many answers have been handed out, after each.</param>
    /// <param name="cancellation">Ends the batch with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The answers; reading one throws what its question threw.</returns>
    /// <exception cref="ArgumentNullException">The questions or the answer are null.</exception>
    public static IEnumerable<TAnswer> Answers<TQuestion, TAnswer>(
        IEnumerable<TQuestion> questions,
        Func<TQuestion, TAnswer> answer,
        IProgress<long>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(questions);
        ArgumentNullException.ThrowIfNull(answer);
        return Stream(questions, answer, progress, cancellation);
    }

    private static IEnumerable<TAnswer> Stream<TQuestion, TAnswer>(
        IEnumerable<TQuestion> questions,
        Func<TQuestion, TAnswer> answer,
        IProgress<long>? progress,
        CancellationToken cancellation
    )
    {
        using var left = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var pending = new Queue<Task<TAnswer>>();
        var done = 0L;
        try
        {
            foreach (var question in questions)
            {
                cancellation.ThrowIfCancellationRequested();
                pending.Enqueue(Task.Run(() => answer(question), left.Token));
                if (pending.Count >= AheadForEachCore * Environment.ProcessorCount)
                {
                    yield return Next();
                }
            }

            while (pending.Count > 0)
            {
                yield return Next();
            }
        }
        finally
        {
            // What has not begun does not begin; what has is waited for, so that nothing of ours runs on.
            left.Cancel();
            foreach (var task in pending)
            {
                Task.WhenAny(task).Wait(CancellationToken.None);
            }
        }

        TAnswer Next()
        {
            Task.WhenAny(pending.Peek()).Wait(cancellation);
            // Throws what the question threw, as it was thrown.
            var next = pending.Dequeue().GetAwaiter().GetResult();
            progress?.Report(++done);
            return next;
        }
    }
}
