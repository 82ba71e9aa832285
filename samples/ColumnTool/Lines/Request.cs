using System.Runtime.InteropServices;
using System.Text.Json;
using AirColumn.Documents;
using ColumnTool.Questions;
using Shared;

namespace ColumnTool.Lines;

/// <summary>A request read: which question, and what it says.</summary>
internal sealed class Request
{
    private const double Shortest = 0.1;
    private const double Longest = 1e6;

    /// <summary>What a time limit may be.</summary>
    public static NumberKind Seconds { get; } = new(Shortest, Longest, "s");

    private readonly List<(Parameter, object)> values = [];
    private JsonElement? document;
    private string? file;

    /// <summary>How many seconds it gives itself; null if it does not say.</summary>
    public double? TimeLimit { get; private set; }

    /// <summary>Reads what a request says to a verb.</summary>
    /// <exception cref="Problem">Something in it is not known, is not possible, or is missing.</exception>
    public static Request Read(JsonElement json, Verb verb)
    {
        var request = new Request();
        var given = new HashSet<string>(StringComparer.Ordinal);
        foreach (var member in json.EnumerateObject())
        {
            var name = Try("A member", null, () => JsonRead.Name(member));
            if (!given.Add(name))
            {
                throw Wrong(name, "is given twice.");
            }

            if (!request.Take(name, member.Value, verb))
            {
                throw Unknown(name, verb);
            }
        }

        request.RequireAll(verb);
        return request;
    }

    /// <summary>The arguments of the question.</summary>
    public Arguments Arguments(ColumnSource source, bool mayReadFiles, CancellationToken token) =>
        new(values, arguments => Column(source, mayReadFiles, arguments), false, token);

    /// <summary>The name of the document that it is about, if it has one.</summary>
    public string? Document => file;

    private AskedColumn Column(ColumnSource source, bool mayReadFiles, Arguments arguments)
    {
        if (document is { } inline)
        {
            return source.Of(JsonMarshal.GetRawUtf8Value(inline), null, arguments);
        }

        return mayReadFiles
            ? source.OfFile(file!, arguments)
            : throw new Problem(
                ProblemKind.File,
                "Requests may not name files here; put the document itself into \"document\".",
                file,
                "file"
            );
    }

    private bool Take(string name, JsonElement value, Verb verb)
    {
        switch (name)
        {
            case "id" or "verb":
                return true;
            case "timeLimit":
                TimeLimit = Try(name, name, () => Seconds.Read(value));
                return true;
            case "document" when verb.IsAboutColumn:
                document =
                    value.ValueKind == JsonValueKind.Object
                        ? value
                        : throw Wrong(
                            name,
                            "is not a JSON object; put a column document there, or its name into \"file\"."
                        );
                return true;
            case "file" when verb.IsAboutColumn:
                file = Try(
                    name,
                    name,
                    () => value.ValueKind == JsonValueKind.String ? JsonRead.Text(value) : null
                );
                if (file is null or "" or "-")
                {
                    throw Wrong(name, "is not the name of a file; the standard input has the requests.");
                }

                return true;
            default:
                foreach (var parameter in verb.Parameters)
                {
                    if (parameter.JsonName == name)
                    {
                        values.Add((parameter, Try(name, name, () => parameter.Read(value))));
                        return true;
                    }
                }

                return false;
        }
    }

    private void RequireAll(Verb verb)
    {
        if (verb.IsAboutColumn && (document is null) == (file is null))
        {
            throw new Problem(
                ProblemKind.Arguments,
                document is null
                    ? "The document is missing; put it into \"document\", or its name into \"file\"."
                    : "Both document and file are given; give one of them.",
                null,
                "document"
            );
        }

        foreach (var parameter in verb.Parameters)
        {
            if (parameter.IsRequired && !values.Exists(value => value.Item1 == parameter))
            {
                throw Wrong(parameter.JsonName, $"is missing; {verb.Name} needs it: {parameter.Meaning}.");
            }
        }
    }

    private static Problem Unknown(string name, Verb verb)
    {
        string[] known =
        [
            .. verb.IsAboutColumn ? ["document", "file"] : Array.Empty<string>(),
            "timeLimit",
            .. verb.Parameters.Select(parameter => parameter.JsonName),
        ];
        var meant = Nearest.IfNear(name, known);
        return new Problem(
            ProblemKind.Arguments,
            $"'{name}' is not known to {verb.Name}; {(meant is null ? $"known are {string.Join(", ", known)}." : $"did you mean '{meant}'?")}",
            null,
            name.Length <= 100 ? name : null
        );
    }

    private static Problem Wrong(string name, string what) =>
        new(ProblemKind.Arguments, $"{name} {what}", null, name);

    private static T Try<T>(string shown, string? place, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (FormatException problem)
        {
            throw new Problem(ProblemKind.Arguments, $"{shown}: {problem.Message}", null, place);
        }
        catch (ArgumentException problem)
        {
            throw new Problem(ProblemKind.Arguments, OneLine.Of(problem, shown), null, place);
        }
    }
}
