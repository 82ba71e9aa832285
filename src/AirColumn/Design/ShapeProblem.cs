using MathNet.Numerics.LinearAlgebra;

namespace AirColumn;

/// <summary>
/// Targets as residuals over variables between 0 and 1: residuals in cents, tenths of a decibel and tenths of a millimetre, times weights.
/// </summary>
internal sealed class ShapeProblem
{
    // In place of a residual where there is no such resonance, or no such column: far worse than any that there is.
    private const double Missing = 1e5;

    private const double TenthsOfMillimetre = 1e4; // in a metre
    private static readonly double TenthsOfDecibel = 200 / Math.Log(10);

    private readonly ColumnParameter[] parameters;
    private readonly (Fingering? Fingering, int Resonances)[] fingerings;
    private readonly CancellationToken cancellationToken;
    private ShapePoint? last;

    public ShapeProblem(
        Column column,
        IReadOnlyList<DesignVariable> variables,
        IReadOnlyList<ShapeTarget> targets,
        CancellationToken cancellationToken
    )
    {
        this.cancellationToken = cancellationToken;
        if (variables.Count == 0 || targets.Count == 0)
        {
            throw new ArgumentException(
                $"There are {variables.Count} variables and {targets.Count} targets; give at least one of each.",
                variables.Count == 0 ? nameof(variables) : nameof(targets)
            );
        }

        (Column, Variables, Targets) = (column, [.. variables], [.. targets]);
        parameters = [.. Variables.Select(variable => variable.Parameter)];
        fingerings =
        [
            .. Targets
                .Where(target => target.HighestResonance > 0)
                .GroupBy(target => target.Fingering)
                .Select(group => (group.Key, group.Max(target => target.HighestResonance))),
        ];
        foreach (var target in Targets)
        {
            _ = target.Fingering?.ForHoles(column.Bore.Holes.Count, nameof(targets));
            if (target.Kind == ShapeTargetKind.Widening)
            {
                Require.InRange(target.Second, 0, column.Bore.Sections.Count - 1, "", "last");
            }
        }

        Present = [.. Variables.Select(variable => Share(variable, variable.Parameter.Of(column)))];
        Residuals = Targets.Sum(Count);
    }

    public Column Column { get; }

    public IReadOnlyList<DesignVariable> Variables { get; }

    public IReadOnlyList<ShapeTarget> Targets { get; }

    /// <summary>The column as it is.</summary>
    public double[] Present { get; }

    /// <summary>How many residuals there are.</summary>
    public int Residuals { get; }

    /// <summary>For how many places resonances were computed.</summary>
    public int Evaluations { get; private set; }

    /// <summary>The residuals at a place.</summary>
    public ShapePoint At(Vector<double> place)
    {
        if (last is null || !last.Place.Equals(place))
        {
            last = Evaluate(place.Clone());
        }

        return last;
    }

    /// <summary>[residual, variable].</summary>
    public double[,] Jacobian(ShapePoint point)
    {
        var jacobian = new double[Residuals, Variables.Count];
        if (point.Column is null)
        {
            return jacobian;
        }

        var gradients = new Dictionary<(Fingering?, int), ResonanceGradient>();
        foreach (var answer in point.Answers)
        {
            // Only those that are asked for.
            var asked = Targets
                .Where(target => Equals(target.Fingering, answer.Fingering) && target.HighestResonance > 0)
                .SelectMany(target => new[] { target.First, target.Second })
                .Where(number => number > 0 && number <= answer.Resonances.Count)
                .Distinct()
                .ToList();
            var found = answer.Column.Gradients(
                [.. asked.Select(n => answer.Resonances[n - 1])],
                parameters,
                cancellationToken: cancellationToken
            );
            for (var i = 0; i < asked.Count; i++)
            {
                gradients[(answer.Fingering, asked[i])] = found[i];
            }
        }

        var needsShape = Targets.Any(target =>
            target.Kind is ShapeTargetKind.TotalLength or ShapeTargetKind.Widening
        );
        var shapes = needsShape
            ? Variables.Select(variable => ShapeSlopes(point.Column, variable)).ToList()
            : [];
        var row = 0;
        foreach (var target in Targets)
        {
            for (var n = 0; n < Count(target); n++, row++)
            {
                for (var i = 0; i < Variables.Count; i++)
                {
                    var slope = Slope(target, n, i);
                    jacobian[row, i] = target.Weight * slope * (Variables[i].To - Variables[i].From);
                }
            }
        }

        return jacobian;

        // Per unit of the parameter.
        double Slope(ShapeTarget target, int n, int i)
        {
            switch (target.Kind)
            {
                case ShapeTargetKind.Resonance:
                    return Of(target.First)?.CentsPerUnit(i) ?? 0;
                case ShapeTargetKind.Interval:
                    return Of(target.First) is { } lower && Of(target.Second) is { } upper
                        ? upper.CentsPerUnit(i) - lower.CentsPerUnit(i)
                        : 0;
                case ShapeTargetKind.Level:
                    return TenthsOfDecibel * (Of(target.First)?.LogMagnitudePerUnit[i] ?? 0);
                case ShapeTargetKind.TotalLength:
                    return TenthsOfMillimetre * shapes[i].Length;
                default:
                    var place = 2 * target.First + n;
                    return point.Residuals[row] > 0
                        ? TenthsOfMillimetre * (shapes[i].Diameters[place] - shapes[i].Diameters[place + 1])
                        : 0;
            }

            ResonanceGradient? Of(int number) => gradients.GetValueOrDefault((target.Fingering, number));
        }
    }

    public TargetError[] Errors(ShapePoint point)
    {
        var errors = new TargetError[Targets.Count];
        var row = 0;
        for (var i = 0; i < errors.Length; i++)
        {
            var largest = 0.0;
            for (var n = 0; n < Count(Targets[i]); n++, row++)
            {
                var error =
                    point.Column is null || point.IsMissing[row]
                        ? double.NaN
                        : point.Residuals[row] / Targets[i].Weight;
                // Either is NaN if one is.
                largest = Math.Abs(error) <= Math.Abs(largest) ? largest : error;
            }

            errors[i] = new TargetError(Targets[i], largest);
        }

        return errors;
    }

    /// <summary>The largest |error| of any target; NaN where one cannot be told.</summary>
    public double LargestError(ShapePoint point)
    {
        var largest = 0.0;
        foreach (var (_, error) in Errors(point))
        {
            largest = double.IsNaN(error) ? double.NaN : Math.Max(largest, Math.Abs(error));
        }

        return largest;
    }

    /// <summary>The values at a place; those of the column as it is where they make none.</summary>
    public ChosenValue[] Values(ShapePoint point) =>
        [
            .. Variables.Select(
                (variable, i) =>
                {
                    var share = point.Column is null ? Present[i] : point.Place[i];
                    return new ChosenValue(variable, Value(variable, share), share is < 2e-3 or > 1 - 2e-3);
                }
            ),
        ];

    private static int Count(ShapeTarget target) =>
        target.Kind == ShapeTargetKind.Widening ? 2 * (target.Second - target.First) + 1 : 1;

    private static double Share(DesignVariable variable, double value) =>
        (value - variable.From) / (variable.To - variable.From);

    private static double Value(DesignVariable variable, double share) =>
        variable.From + share * (variable.To - variable.From);

    private ShapePoint Evaluate(Vector<double> place)
    {
        cancellationToken.ThrowIfCancellationRequested();
        Evaluations++;
        var residuals = new double[Residuals];
        var isMissing = new bool[Residuals];
        Column column;
        List<FingeredAnswer> answers;
        try
        {
            var parts = Column.Parts;
            for (var i = 0; i < Variables.Count; i++)
            {
                parts = parameters[i].With(parts, Value(Variables[i], place[i]));
            }

            column = Column.With(parts);
            answers =
            [
                .. fingerings.Select(fingering =>
                {
                    var fingered = fingering.Fingering is { } other ? column.WithFingering(other) : column;
                    return new FingeredAnswer(
                        fingering.Fingering,
                        fingered,
                        fingered.FirstResonances(fingering.Resonances, cancellationToken)
                    );
                }),
            ];
        }
        catch (ArgumentException problem)
        {
            // Holes overlap, or a diameter does not fit its place: no such bore.
            var missing = Targets
                .SelectMany(target => Enumerable.Repeat(Missing * target.Weight, Count(target)))
                .ToArray();
            return new ShapePoint(place, null, [], missing, isMissing, problem.Message);
        }

        var row = 0;
        foreach (var target in Targets)
        {
            foreach (var error in ErrorsOf(target, column, answers))
            {
                isMissing[row] = double.IsNaN(error);
                residuals[row] = target.Weight * (isMissing[row] ? Missing : error);
                row++;
            }
        }

        return new ShapePoint(place, column, answers, residuals, isMissing, null);
    }

    // NaN where there is no such resonance.
    private static IEnumerable<double> ErrorsOf(
        ShapeTarget target,
        Column column,
        List<FingeredAnswer> answers
    )
    {
        switch (target.Kind)
        {
            case ShapeTargetKind.Resonance:
                yield return Of(target.First) is { } resonance
                    ? Cents.Between(target.Value, resonance.Frequency.Hertz)
                    : double.NaN;
                break;
            case ShapeTargetKind.Interval:
                yield return Of(target.First) is { } lower && Of(target.Second) is { } upper
                    ? Cents.Between(lower.Frequency.Hertz, upper.Frequency.Hertz) - target.Value
                    : double.NaN;
                break;
            case ShapeTargetKind.Level:
                yield return Of(target.First) is { } level
                    ? TenthsOfDecibel * (Math.Log(level.Magnitude) - target.Value)
                    : double.NaN;
                break;
            case ShapeTargetKind.TotalLength:
                yield return TenthsOfMillimetre * (column.Bore.LengthMetres - target.Value);
                break;
            default:
                var diameters = Diameters(column.Bore);
                for (var i = 2 * target.First; i < 2 * target.Second + 1; i++)
                {
                    yield return TenthsOfMillimetre * Math.Max(0, diameters[i] - diameters[i + 1]);
                }

                break;
        }

        Resonance? Of(int number) =>
            answers.Find(answer => Equals(answer.Fingering, target.Fingering)).Resonances is var found
            && found.Count >= number
                ? found[number - 1]
                : null;
    }

    // Lengths and diameters change in proportion to the parameters, or smoothly; at an end of what is possible, to the other side.
    private static (double Length, double[] Diameters) ShapeSlopes(Column column, DesignVariable variable)
    {
        var parts = column.Parts;
        var (value, step) = (variable.Parameter.Of(parts), 1e-3 * variable.Parameter.StepAt(parts));
        var before = Diameters(column.Bore);
        foreach (var change in new[] { step, -step })
        {
            try
            {
                var other = variable.Parameter.With(parts, value + change).Bore;
                var after = Diameters(other);
                return (
                    (other.LengthMetres - column.Bore.LengthMetres) / change,
                    [.. before.Select((d, i) => (after[i] - d) / change)]
                );
            }
            catch (ArgumentException)
            {
                // No such bore on that side.
            }
        }

        return (0, new double[before.Length]);
    }

    // At both ends of each section, m.
    private static double[] Diameters(Bore bore) =>
        [
            .. bore.Sections.SelectMany(section =>
                new[] { 2 * section.WallAt(0).Radius, 2 * section.WallAt(section.LengthMetres).Radius }
            ),
        ];
}

/// <summary>A place among the variables and what the column does there; no column where the values make none.</summary>
internal sealed record ShapePoint(
    Vector<double> Place,
    Column? Column,
    IReadOnlyList<FingeredAnswer> Answers,
    double[] Residuals,
    bool[] IsMissing,
    string? Problem
)
{
    /// <summary>Whether there is a column and it shows all resonances asked for.</summary>
    public bool IsComplete { get; } = Column is not null && !IsMissing.Contains(true);

    public double Cost { get; } = Residuals.Sum(residual => residual * residual);
}

/// <summary>The resonances with a fingering.</summary>
internal readonly record struct FingeredAnswer(Fingering? Fingering, Column Column, ResonanceList Resonances);
