using AirColumn.Documents;
using Shared;

namespace ColumnTool.Questions;

/// <summary>Why a question has no answer.</summary>
internal enum ProblemKind
{
    /// <summary>The line is no request.</summary>
    Request,

    /// <summary>Something asked for cannot be.</summary>
    Arguments,

    /// <summary>A file cannot be read.</summary>
    File,

    /// <summary>A document is not one.</summary>
    Document,

    /// <summary>The question is sound, but has no answer.</summary>
    Unanswered,

    /// <summary>There was no answer in time.</summary>
    Time,

    /// <summary>The question was taken back.</summary>
    Cancelled,

    /// <summary>The program failed.</summary>
    Fault,
}

/// <summary>A question without an answer: of what kind the reason is, in which document and where, and a line that says it.</summary>
internal sealed class Problem(ProblemKind kind, string message, string? document = null, string? place = null)
    : Exception(OneLine.Of(message))
{
    public ProblemKind Kind => kind;

    /// <summary>The name of the document that it is about; null where it is about none, or about one without a name.</summary>
    public string? Document => document;

    /// <summary>Where in the document, or which argument; null where that is not known.</summary>
    public string? Place => place;

    /// <summary>What a program compares.</summary>
    public string Code => Codes[(int)kind];

    /// <summary>The message with the document before it, which one about a file has in it.</summary>
    public string Line => document is null || kind == ProblemKind.File ? Message : $"{document}: {Message}";

    /// <summary>All codes, in the order of <see cref="ProblemKind"/>.</summary>
    public static IReadOnlyList<string> Codes { get; } =
    ["request", "arguments", "file", "document", "unanswered", "time", "cancelled", "fault"];

    /// <summary>With which exit code the program ends.</summary>
    public int ExitCode =>
        kind switch
        {
            ProblemKind.Arguments or ProblemKind.Request => 2,
            ProblemKind.File => 3,
            ProblemKind.Document => 4,
            _ => 1,
        };

    /// <summary>The same of whatever was thrown.</summary>
    public static Problem Of(Exception thrown, string? document = null) =>
        thrown switch
        {
            Problem problem => problem,
            ColumnDocumentException problem => new(
                ProblemKind.Document,
                problem.Message,
                document,
                problem.Path.Length == 0 ? null : problem.Path
            ),
            FailureException => new(ProblemKind.Unanswered, thrown.Message, document),
            BadInputException => new(ProblemKind.Arguments, thrown.Message, document),
            NotSupportedException or ArithmeticException => new(
                ProblemKind.Unanswered,
                thrown.Message,
                document
            ),
            _ => new(ProblemKind.Fault, $"{thrown.GetType().Name}: {OneLine.Of(thrown)}", document),
        };
}
