using System.Globalization;
using System.Text.Json;
using AirColumn.Documents;
using ColumnTool.Questions;
using ColumnTool.Verbs;

namespace ColumnTool.Lines;

/// <summary>Answers questions, a line of JSON each, as they come: many questions to one process.</summary>
/// <remarks>
/// One thread reads; it waits where more is asked than is answered, so that memory does not grow. Others answer, each answer being written when it is
/// there.
/// </remarks>
internal sealed class LineServer : IDisposable
{
    /// <summary>The verb that takes a question back.</summary>
    public const string Cancel = "cancel";

    /// <summary>The most bytes of a line: those of the longest document, and some for the question.</summary>
    public const int LongestLine = (16 << 20) + (1 << 16);

    private const int ColumnsKept = 16;

    private readonly Stream output;
    private readonly LineServerOptions options;
    private readonly ColumnSource source = new(ColumnsKept);
    private readonly Dictionary<string, Pending> pending = [];
    private readonly Worker[] workers;
    private readonly AnswerLine ownLine = new();
    private readonly Lock writing = new();

    /// <summary>Makes one.</summary>
    /// <param name="output">Where the answers go.</param>
    /// <param name="options">How many at once, and the like.</param>
    public LineServer(Stream output, LineServerOptions options)
    {
        (this.output, this.options) = (output, options);
        workers = [.. Enumerable.Range(0, options.Jobs).Select(_ => new Worker())];
    }

    public void Dispose()
    {
        ownLine.Dispose();
        foreach (var worker in workers)
        {
            worker.Dispose();
        }
    }

    /// <summary>Answers everything there is.</summary>
    /// <exception cref="IOException">The output cannot be written.</exception>
    public void Run(Stream input)
    {
        var lines = new LineReader(input, LongestLine);
        using var crew = new Crew<Pending>(options.Jobs, Answer);
        while (lines.Next(out var isTooLong) is { } line)
        {
            if (isTooLong)
            {
                Refuse(null, $"A line is longer than {LongestLine} bytes, which is the limit.");
            }
            else if (!line.AsSpan().Trim(" \t\r"u8).IsEmpty)
            {
                Take(crew, line);
            }
        }

        crew.Finish();
    }

    private void Take(Crew<Pending> crew, byte[] line)
    {
        var envelope = Envelope.Read(line);
        if (envelope.Wrong is { } wrong)
        {
            Refuse(envelope.Id, wrong);
            return;
        }

        if (envelope.Verb == Cancel)
        {
            TakeBack(envelope);
            return;
        }

        var question = new Pending(envelope, line);
        bool isNew;
        lock (pending)
        {
            isNew = pending.TryAdd(envelope.Id!, question);
        }

        if (isNew)
        {
            crew.Add(question, line.Length);
        }
        else
        {
            Refuse(envelope.Id, "A question with this id is still being answered; choose another id.");
        }
    }

    // Heard at once, before the questions that wait.
    private void TakeBack(Envelope envelope)
    {
        if (envelope.Question is not { } id)
        {
            Refuse(
                envelope.Id,
                "A cancel needs the id of the question to take back, such as \"question\": 1."
            );
            return;
        }

        Pending? question;
        lock (pending)
        {
            question = pending.GetValueOrDefault(id);
        }

        if (question?.TakeBack() == true)
        {
            Forget(question);
            Write(ownLine.Of(id, TakenBack()));
        }

        Write(ownLine.Of(envelope.Id!, Cancel, json => json.WriteBoolean("found", question is not null)));
    }

    private void Answer(Pending question, int number)
    {
        var worker = workers[number];
        if (!question.TryBegin(worker.Begin()))
        {
            return;
        }

        var line = Line(question, worker);
        question.End();
        Forget(question);
        Write(line);
    }

    // Whatever happens, there is one answer.
#pragma warning disable CA1031
    private ReadOnlyMemory<byte> Line(Pending question, Worker worker)
    {
        var id = question.Envelope.Id!;
        var limit = options.TimeLimit;
        string? document = null;
        try
        {
            var verb = Find(question.Envelope.Verb);
            using var json = JsonDocument.Parse(question.Line);
            var request = Request.Read(json.RootElement, verb);
            document = request.Document;
            limit = request.TimeLimit ?? limit;
            worker.Source.CancelAfter(TimeSpan.FromSeconds(limit));
            var arguments = request.Arguments(source, options.MayReadFiles, worker.Source.Token);
            return worker.Line.Of(id, verb.Name, verb.Ask(arguments).WriteMembers);
        }
        catch (OperationCanceledException)
        {
            return worker.Line.Of(id, question.IsTakenBack ? TakenBack() : IsOver(limit, document));
        }
        catch (Exception problem)
        {
            return worker.Line.Of(id, Problem.Of(problem, document));
        }
    }
#pragma warning restore CA1031

    private static Verb Find(string? name) =>
        name is null
            ? throw new Problem(
                ProblemKind.Request,
                "The request has no verb; add one, such as \"verb\": \"resonances\"."
            )
            : AllVerbs.Find(name)
                ?? throw new Problem(
                    ProblemKind.Request,
                    Nearest.IfNear(name, AllVerbs.Names) is { } meant
                        ? $"'{name}' is not a verb; did you mean '{meant}'?"
                        : $"'{name}' is not a verb; the verbs are {string.Join(", ", AllVerbs.Names)}."
                );

    private static Problem TakenBack() => new(ProblemKind.Cancelled, "The question was cancelled.");

    private static Problem IsOver(double seconds, string? document) =>
        new(
            ProblemKind.Time,
            string.Create(
                CultureInfo.InvariantCulture,
                $"No answer within {seconds:0.###} s. {Advice.Expensive} Or give it more time, such as \"timeLimit\": {Math.Max(10, 5 * seconds):0}."
            ),
            document
        );

    private void Refuse(string? id, string why) =>
        Write(ownLine.Of(id, new Problem(ProblemKind.Request, why)));

    private void Forget(Pending question)
    {
        lock (pending)
        {
            pending.Remove(question.Envelope.Id!);
        }
    }

    private void Write(ReadOnlyMemory<byte> line)
    {
        lock (writing)
        {
            output.Write(line.Span);
            output.Flush();
        }
    }

    /// <summary>What each thread has of its own.</summary>
    private sealed class Worker : IDisposable
    {
        public AnswerLine Line { get; } = new();

        public CancellationTokenSource Source { get; private set; } = new();

        public void Dispose()
        {
            Line.Dispose();
            Source.Dispose();
        }

        /// <summary>A source for the next question.</summary>
        public CancellationTokenSource Begin()
        {
            if (!Source.TryReset())
            {
                Source.Dispose();
                Source = new CancellationTokenSource();
            }

            return Source;
        }
    }
}

/// <summary>How questions are answered.</summary>
/// <param name="Jobs">How many at once.</param>
/// <param name="TimeLimit">How many seconds each may take that does not say so itself.</param>
/// <param name="MayReadFiles">Whether requests may name files.</param>
internal sealed record LineServerOptions(int Jobs, double TimeLimit, bool MayReadFiles);
