using System.CommandLine;
using ColumnTool.Questions;
using Shared;

namespace ColumnTool.CommandLine;

/// <summary>Parameters as options of a command, and what is given for them.</summary>
internal sealed class GivenOptions
{
    private readonly List<(Parameter Parameter, Option Option)> options;

    /// <summary>Adds the options to a command.</summary>
    public GivenOptions(Command command, IEnumerable<Parameter> parameters)
    {
        options = [.. parameters.Select(parameter => (parameter, parameter.CreateOption()))];
        foreach (var (_, option) in options)
        {
            command.Add(option);
        }
    }

    /// <summary>What a command line says.</summary>
    /// <exception cref="Problem">An option is not possible.</exception>
    public Arguments Arguments(
        ParseResult parsed,
        Func<Arguments, AskedColumn> column,
        CancellationToken token
    ) => new(Values(parsed), column, true, token);

    /// <summary>The same for many questions that say the same.</summary>
    public IReadOnlyList<(Parameter, object)> Values(ParseResult parsed)
    {
        var values = new List<(Parameter, object)>();
        foreach (var (parameter, option) in options)
        {
            if (parsed.GetResult(option) is { Implicit: false } result)
            {
                values.Add((parameter, Read(parameter, [.. result.Tokens.Select(token => token.Value)])));
            }
        }

        return values;
    }

    private static object Read(Parameter parameter, string[] texts)
    {
        var name = $"--{parameter.Name}";
        try
        {
            return parameter.Read(texts);
        }
        catch (FormatException problem)
        {
            throw new Problem(ProblemKind.Arguments, $"{name}: {problem.Message}", null, parameter.JsonName);
        }
        catch (ArgumentException problem)
        {
            throw new Problem(ProblemKind.Arguments, OneLine.Of(problem, name), null, parameter.JsonName);
        }
    }
}
