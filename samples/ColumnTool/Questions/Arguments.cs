using AirColumn;
using AirColumn.Documents;
using Shared;

namespace ColumnTool.Questions;

/// <summary>What one question says.</summary>
/// <param name="values">What was given.</param>
/// <param name="column">Reads the column that it is about.</param>
/// <param name="isTyped">Whether it comes from a command line, where parameters have dashes.</param>
/// <param name="token">Cancelled when the answer is no longer wanted.</param>
internal sealed class Arguments(
    IReadOnlyList<(Parameter Parameter, object Value)> values,
    Func<Arguments, AskedColumn> column,
    bool isTyped,
    CancellationToken token
)
{
    private AskedColumn? read;

    /// <summary>The column that it is about, with its wave fronts, modes and fingering.</summary>
    public Column Column => Asked.Column;

    /// <summary>The document of the column.</summary>
    public ColumnDocument Document => Asked.Document;

    /// <summary>What the answer rests on.</summary>
    public Provenance Provenance => Asked.Provenance(token);

    private AskedColumn Asked => read ??= column(this);

    public CancellationToken Token => token;

    /// <summary>Whether it was given.</summary>
    public bool Has(Parameter parameter) => Find(parameter) is not null;

    /// <summary>What was given for a required one.</summary>
    public T Get<T>(Parameter<T> parameter)
        where T : notnull => (T)Find(parameter)!;

    /// <summary>What was given, or what holds otherwise.</summary>
    public T Get<T>(Parameter<T> parameter, T otherwise)
        where T : notnull => Find(parameter) is T value ? value : otherwise;

    /// <summary>What was given; null if nothing.</summary>
    public T? Maybe<T>(Parameter<T> parameter)
        where T : struct => Find(parameter) as T?;

    /// <summary>What the person or program that asks calls it.</summary>
    public string Name(Parameter parameter) => isTyped ? $"--{parameter.Name}" : parameter.JsonName;

    /// <summary>What is wrong with a parameter: a sentence that begins with its name.</summary>
    public Problem Wrong(Parameter parameter, string what) =>
        new(ProblemKind.Arguments, $"{Name(parameter)} {what}", null, parameter.JsonName);

    /// <summary>Computes; what is thrown because an argument cannot be is blamed on a parameter.</summary>
    public T Blame<T>(Parameter parameter, Func<T> compute) => Blame(parameter, Name(parameter), compute);

    /// <summary>The same, where messages begin with another name than that of the parameter.</summary>
    public static T Blame<T>(Parameter parameter, string name, Func<T> compute)
    {
        try
        {
            return compute();
        }
        catch (ArgumentException problem)
        {
            throw new Problem(ProblemKind.Arguments, OneLine.Of(problem, name), null, parameter.JsonName);
        }
    }

    private object? Find(Parameter parameter)
    {
        foreach (var (known, value) in values)
        {
            if (ReferenceEquals(known, parameter))
            {
                return value;
            }
        }

        return null;
    }
}
