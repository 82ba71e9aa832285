using System.Runtime.ExceptionServices;

namespace AirColumn;

/// <summary>The answer to one question of a <see cref="Batch"/>, or its error. Immutable.</summary>
/// <typeparam name="TQuestion">The type of a question.</typeparam>
/// <typeparam name="TAnswer">The type of an answer.</typeparam>
public sealed class BatchAnswer<TQuestion, TAnswer>
{
    private readonly TAnswer answer;
    private readonly ExceptionDispatchInfo? problem;

    private BatchAnswer(long index, TQuestion question, TAnswer answer, ExceptionDispatchInfo? problem)
    {
        (Index, Question) = (index, question);
        (this.answer, this.problem) = (answer, problem);
    }

    /// <summary>The number of the question: 0 is the first.</summary>
    public long Index { get; }

    /// <summary>The question.</summary>
    public TQuestion Question { get; }

    /// <summary>The answer. If there is an <see cref="Error"/>, reading the answer throws that exception.</summary>
    public TAnswer Answer
    {
        get
        {
            problem?.Throw();
            return answer;
        }
    }

    /// <summary>The exception that the question threw; null if it was answered.</summary>
    public Exception? Error => problem?.SourceException;

    /// <summary>The number of the question, and its answer or its error.</summary>
    /// <returns>The question with its answer or its error, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Index}: {(problem is null ? answer : Error!.Message)}");

    /// <summary>Asks; null where the batch was cancelled meanwhile.</summary>
    internal static BatchAnswer<TQuestion, TAnswer>? To(
        long index,
        TQuestion question,
        Func<TQuestion, CancellationToken, TAnswer> ask,
        CancellationToken cancellationToken
    )
    {
        // Whatever a question throws is its own, and is told with it.
#pragma warning disable CA1031
        try
        {
            return new(index, question, ask(question, cancellationToken), null);
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            return null;
        }
        catch (Exception problem)
        {
            return new(index, question, default!, ExceptionDispatchInfo.Capture(problem));
        }
#pragma warning restore CA1031
    }
}
