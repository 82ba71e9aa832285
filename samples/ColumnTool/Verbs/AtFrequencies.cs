using System.Globalization;
using AirColumn;
using ColumnTool.Questions;

namespace ColumnTool.Verbs;

/// <summary>The frequencies that a question names, one by one or as a span.</summary>
internal static class AtFrequencies
{
    private const double Lowest = 1e-6;
    private const double Highest = 1e9;
    private const int Most = 1_000_000;
    private const string Span = "give from, to and points";

    private static readonly Parameter<double[]> At = new(
        "at",
        Kinds.Listed(new NumberKind(Lowest, Highest, "Hz"), 1, Most),
        "frequencies in Hz; on the command line separated by commas",
        Span
    );

    private static readonly Parameter<double> From = new(
        "from",
        new NumberKind(Lowest, Highest, "Hz"),
        "the first frequency, 10⁻⁶ to 10⁹ Hz",
        "give at"
    );

    private static readonly Parameter<double> To = new(
        "to",
        new NumberKind(Lowest, Highest, "Hz"),
        "the last frequency",
        "give at"
    );

    private static readonly Parameter<int> Points = new(
        "points",
        new WholeKind(2, Most),
        "the number of frequencies, equally spaced, 2 to 1 000 000",
        "give at"
    );

    public static IReadOnlyList<Parameter> Parameters { get; } = [At, From, To, Points];

    /// <summary>In Hz, in the order asked for.</summary>
    public static double[] Of(Arguments arguments)
    {
        var list = arguments.Has(At) ? arguments.Get(At) : null;
        return (list, arguments.Maybe(From), arguments.Maybe(To), arguments.Maybe(Points)) switch
        {
            (not null, null, null, null) => list,
            (null, { } from, { } to, { } points) => Spaced(arguments, from, to, points),
            _ => throw new Problem(
                ProblemKind.Arguments,
                $"Say at which frequencies: either {arguments.Name(At)}, such as 30 and 33.17, or {arguments.Name(From)}, {arguments.Name(To)} and {arguments.Name(Points)}, such as 20, 2000 and 4096."
            ),
        };
    }

    /// <summary>Computes at frequencies; one that cannot be is blamed on the highest.</summary>
    public static T Compute<T>(Func<T> compute) => Arguments.Blame(At, "The highest frequency", compute);

    /// <summary>What to know of answers at these frequencies.</summary>
    public static IReadOnlyList<string> Warnings(Column column, double[] hertz, CancellationToken token) =>
        Compute(() => column.Impedance(FrequencyGrid.FromHertz([hertz.Max()]), token)).Warnings;

    private static double[] Spaced(Arguments arguments, double from, double to, int points)
    {
        if (to <= from)
        {
            throw arguments.Wrong(
                To,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"is {to} Hz; it must be above {arguments.Name(From)}, {from} Hz."
                )
            );
        }

        try
        {
            return FrequencyGrid.Linear(from, to, points).Hertz.ToArray();
        }
        catch (ArgumentException)
        {
            throw arguments.Wrong(
                Points,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"is {points}; {arguments.Name(From)} {from} Hz and {arguments.Name(To)} {to} Hz are too close together for that: some would coincide. Ask for fewer."
                )
            );
        }
    }
}
