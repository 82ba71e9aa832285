using System.Text.Json;
using ColumnTool.Answers;
using Shared;

namespace ColumnTool.Questions;

/// <summary>A kind of question: what it says and what its answer has, for command line, JSON lines, schema and reference alike.</summary>
internal abstract class Verb
{
    public required string Name { get; init; }

    /// <summary>Sentences for people.</summary>
    public required string Summary { get; init; }

    /// <summary>Whether it is about a column, and so about a document.</summary>
    public bool IsAboutColumn { get; init; } = true;

    /// <summary>What only this question says.</summary>
    public required IReadOnlyList<Parameter> Own { private get; init; }

    /// <summary>What it says: first what all questions about a column say.</summary>
    public IReadOnlyList<Parameter> Parameters =>
        parameters ??= IsAboutColumn ? [.. ColumnChoices.All, .. Own] : Own;

    /// <summary>What its answer has.</summary>
    public abstract IEnumerable<Field> Fields { get; }

    /// <summary>Whether people, too, get its answer as CSV.</summary>
    public bool IsCsv { get; init; }

    /// <summary>The names of the columns of its CSV.</summary>
    public abstract IEnumerable<string> CsvHeader { get; }

    /// <summary>Answers it.</summary>
    /// <exception cref="Exception">There is no answer: see <see cref="Problem.Of"/>.</exception>
    public abstract VerbAnswer Ask(Arguments arguments);

    private IReadOnlyList<Parameter>? parameters;
}

/// <summary>A kind of question whose answer is of that type.</summary>
internal sealed class Verb<T> : Verb
{
    /// <summary>What the answer has; warnings and provenance come last.</summary>
    public required IReadOnlyList<Field<T>> Members { get; init; }

    public override IEnumerable<Field> Fields => Members;

    /// <summary>Answers a question, and says what to know of the answer.</summary>
    public required Func<Arguments, (T Answer, IReadOnlyList<string> Warnings)> Compute { get; init; }

    public override IEnumerable<string> CsvHeader => Table.Header;

    // The first list of the answer.
    private ITable<T> Table => Members.OfType<ITable<T>>().First();

    public override VerbAnswer Ask(Arguments arguments)
    {
        var (answer, warnings) = Compute(arguments);
        return new Answered(this, answer, warnings, arguments);
    }

    private sealed class Answered(Verb<T> verb, T answer, IReadOnlyList<string> warnings, Arguments arguments)
        : VerbAnswer
    {
        public override IReadOnlyList<string> Warnings => warnings;

        public override void WriteMembers(Utf8JsonWriter json)
        {
            foreach (var member in verb.Members)
            {
                member.WriteJson(json, answer);
            }

            json.Texts("warnings", warnings);
            Provenances.Write(json, verb.IsAboutColumn ? arguments.Provenance : null);
        }

        public override IEnumerable<string> CsvLines() => verb.Table.Lines(answer);

        public override string Text()
        {
            if (verb.IsCsv)
            {
                return $"{string.Join(',', verb.CsvHeader)}\n{string.Concat(CsvLines())}";
            }

            var page = new TextPage();
            foreach (var member in verb.Members)
            {
                member.Show(page, answer);
            }

            return page.ToString();
        }
    }
}

/// <summary>An answer: data first, of which each view shows the same.</summary>
internal abstract class VerbAnswer
{
    /// <summary>What to know before relying on it.</summary>
    public abstract IReadOnlyList<string> Warnings { get; }

    /// <summary>Its members, in an object that has begun.</summary>
    public abstract void WriteMembers(Utf8JsonWriter json);

    /// <summary>The rows of its CSV, a line break behind each.</summary>
    public abstract IEnumerable<string> CsvLines();

    /// <summary>For people: a table or CSV.</summary>
    public abstract string Text();
}
