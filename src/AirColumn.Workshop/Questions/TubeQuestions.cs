using AirColumn.Documents;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Questions;

/// <summary>Questions, one after the other, whose answers make a parts file. Immutable.</summary>
/// <remarks>
/// Each answer is checked at once, by itself and with all parts so far, so that <see cref="Tubes.PartsFile.Read(string, Catalogue)"/> can
/// read the finished file. Going back means asking again with fewer answers.
/// </remarks>
public sealed class TubeQuestions
{
    private const string Measured = "measured";

    private readonly Catalogue catalogue;
    private readonly string[] answers;

    private TubeQuestions(Catalogue catalogue, string[] answers)
    {
        (this.catalogue, this.answers) = (catalogue, answers);
        var draft = new TubeDraft(catalogue);
        var given = 0;
        foreach (var question in Script(draft))
        {
            if (given == answers.Length)
            {
                Next = question;
                break;
            }

            Answer(question, answers[given++]);
        }

        Name = draft.Name;
        PartsFile = Next is null ? draft.Text() : null;
    }

    /// <summary>The question to answer; null when there are no more.</summary>
    public Question? Next { get; }

    /// <summary>The answers so far, as they were given.</summary>
    public IReadOnlyList<string> Answers => answers;

    /// <summary>The name of the tube; empty before it has one.</summary>
    public string Name { get; }

    /// <summary>The text of the parts file; null while there are questions.</summary>
    public string? PartsFile { get; }

    /// <summary>Begins before the first answer.</summary>
    /// <param name="catalogue">The catalogue of pipes and sockets that answers may name.</param>
    /// <returns>The questions, none answered.</returns>
    public static TubeQuestions Start(Catalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        return new TubeQuestions(catalogue, []);
    }

    /// <summary>Adds one more answer.</summary>
    /// <param name="answer">The answer to <see cref="Next"/>; empty for the usual answer.</param>
    /// <returns>The questions after this answer.</returns>
    /// <exception cref="FormatException">The answer does not fit the question; the message says what is wrong and what to answer.</exception>
    /// <exception cref="InvalidOperationException">There are no more questions.</exception>
    public TubeQuestions With(string answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return Next is null
            ? throw new InvalidOperationException("All questions are answered.")
            : new TubeQuestions(catalogue, [.. answers, answer]);
    }

    /// <summary>Takes back the last answer; changes nothing if there is none.</summary>
    /// <returns>The questions before the last answer.</returns>
    public TubeQuestions Back() => answers.Length == 0 ? this : new TubeQuestions(catalogue, answers[..^1]);

    private static void Answer(Question question, string given)
    {
        var answer = given.Trim();
        if (answer.Length == 0)
        {
            answer = question.Usual ?? throw new FormatException(QuestionWords.NeedsAnswer);
        }

        if (question.Choices.Count > 0)
        {
            answer =
                question.Choices.FirstOrDefault(choice =>
                    string.Equals(choice, answer, StringComparison.OrdinalIgnoreCase)
                )
                ?? throw new FormatException(
                    QuestionWords.NotAChoice(
                        answer,
                        question.Choices,
                        Nearest.IfNear(answer, question.Choices)
                    )
                );
        }

        question.Take(answer);
    }

    private IEnumerable<Question> Script(TubeDraft draft)
    {
        yield return new Question("name", QuestionWords.Name, QuestionWords.UsualName, [], draft.Call);
        var main = draft.AddPipe("open");
        main["name"] = QuestionWords.MainPipe;
        foreach (var question in Pipe(draft, main, "pvc-40 1-1/2"))
        {
            yield return question;
        }

        var mouth = "";
        yield return new Question(
            "mouth",
            QuestionWords.Mouth,
            "insert",
            ["insert", "fitting", "none"],
            answer => mouth = answer
        );
        if (mouth != "none")
        {
            var part = draft.AddMouth(mouth);
            foreach (
                var key in mouth == "insert"
                    ? ["inside", "outside", "inserted", "protrudes"]
                    : new[] { "adds", "inside" }
            )
            {
                yield return Size(draft, part, $"mouth.{key}", key, QuestionWords.MouthSize(mouth, key));
            }
        }

        var next = "";
        do
        {
            yield return new Question(
                "next",
                QuestionWords.Next,
                "end",
                ["end", "coupling", "elbow", "bell"],
                answer => next = answer
            );
            foreach (
                var question in next switch
                {
                    "bell" => Bell(draft),
                    "end" => [],
                    _ => Join(draft, next),
                }
            )
            {
                yield return question;
            }
        } while (next is "coupling" or "elbow");
    }

    private IEnumerable<Question> Pipe(TubeDraft draft, DraftPart pipe, string usual)
    {
        var stock = Measured;
        yield return new Question(
            "pipe",
            QuestionWords.Pipe,
            usual,
            [],
            answer =>
            {
                stock = Named(
                    answer,
                    catalogue.Pipes.Select(row => row.Name),
                    name => catalogue.Pipe(name).Name
                );
                if (stock != Measured)
                {
                    pipe["stock"] = stock;
                }
            }
        );
        if (stock == Measured)
        {
            yield return new Question(
                "pipe.inside",
                QuestionWords.PipeInside,
                null,
                [],
                answer => pipe.Size("inside", answer)
            );
            pipe.IsWhole = true;
            yield return Size(draft, pipe, "pipe.outside", "outside", QuestionWords.PipeOutside);
            yield break;
        }

        var table = draft.Inside(pipe);
        yield return new Question(
            "pipe.inside",
            QuestionWords.PipeCaliper(table),
            QuestionWords.NotMeasured,
            [],
            answer =>
            {
                if (answer != QuestionWords.NotMeasured)
                {
                    pipe.Size("inside", answer);
                }

                pipe.IsWhole = true;
                draft.Check();
            }
        );
    }

    private IEnumerable<Question> Join(TubeDraft draft, string kind)
    {
        var join = draft.AddJoin(kind);
        var before = draft.LastStock;
        foreach (var question in Socket(draft, join, kind, "before", before))
        {
            yield return question;
        }

        foreach (var question in Socket(draft, join, kind, "after", join["before"] ?? before))
        {
            yield return question;
        }

        foreach (
            var key in kind == "elbow" ? ["gap", "inside", "radius"] : new[] { "gap", "inside", "between" }
        )
        {
            yield return Size(draft, join, $"{kind}.{key}", key, QuestionWords.JoinSize(key));
        }

        if (kind == "elbow")
        {
            yield return new Question(
                "elbow.angle",
                QuestionWords.Angle,
                "90",
                [],
                answer =>
                {
                    join.Number("angle", answer);
                    draft.Check();
                }
            );
        }

        var pipe = draft.AddPipe("300 mm");
        var usual =
            join["after"] is { } name && catalogue.Pipes.Any(row => row.Name == name) ? name : Measured;
        foreach (var question in Pipe(draft, pipe, usual))
        {
            yield return question;
        }

        yield return Size(draft, pipe, "pipe.length", "length", QuestionWords.PipeLength);
    }

    private IEnumerable<Question> Socket(
        TubeDraft draft,
        DraftPart join,
        string kind,
        string side,
        string? usual
    )
    {
        var socket = Measured;
        yield return new Question(
            $"socket.{side}",
            QuestionWords.Socket(side),
            usual is not null && catalogue.Sockets.Any(row => row.Name == usual) ? usual : Measured,
            [],
            answer =>
            {
                socket = Named(
                    answer,
                    catalogue.Sockets.Select(row => row.Name),
                    name => catalogue.Socket(name).Name
                );
                if (socket != Measured)
                {
                    join[side] = socket;
                    join.IsWhole = join.IsWhole || IsEnough(kind, side);
                    draft.Check();
                }
            }
        );
        if (socket != Measured)
        {
            yield break;
        }

        var sizes = join.Inner(side);
        sizes["depth"] = "25 mm";
        yield return new Question(
            $"socket.{side}.entrance",
            QuestionWords.Entrance,
            null,
            [],
            answer => sizes.Size("entrance", answer)
        );
        join.IsWhole = join.IsWhole || IsEnough(kind, side);
        yield return Size(draft, sizes, $"socket.{side}.depth", "depth", QuestionWords.Depth);
    }

    // A coupling may end with a socket; an elbow has two.
    private static bool IsEnough(string kind, string side) => kind == "coupling" || side == "after";

    private static IEnumerable<Question> Bell(TubeDraft draft)
    {
        var bell = draft.AddBell();
        yield return Size(draft, bell, "bell.length", "length", QuestionWords.BellLength);
        yield return Size(draft, bell, "bell.inside", "inside", QuestionWords.BellInside);
    }

    // The part has the usual size until another is given.
    private static Question Size(TubeDraft draft, DraftPart part, string key, string member, string text) =>
        new(
            key,
            text,
            part[member],
            [],
            answer =>
            {
                part.Size(member, answer);
                draft.Check();
            }
        );

    // As the catalogue calls it; or measured.
    private static string Named(string answer, IEnumerable<string> names, Func<string, string> find)
    {
        if (string.Equals(answer, Measured, StringComparison.OrdinalIgnoreCase))
        {
            return Measured;
        }

        try
        {
            return find(answer);
        }
        catch (ArgumentException problem)
        {
            var meant = Nearest.IfNear(answer, names);
            throw new FormatException(
                meant is null
                    ? QuestionWords.OrMeasured(PartsObject.Plain(problem))
                    : QuestionWords.DidYouMean(answer, meant),
                problem
            );
        }
    }

    /// <summary>Number of answers, and the next question.</summary>
    /// <returns>Number of answers and next question, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{answers.Length} answers; next: {Next}");
}
