using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Parameters;

/// <summary>Several parameters changed by the same amount.</summary>
internal sealed record TogetherParameter(EquatableArray<IColumnChange> Parameters) : IColumnChange
{
    public string Unit => Parameters[0].Unit;

    public (int First, int Last)? Sections
    {
        get
        {
            var (first, last) = (int.MaxValue, 0);
            foreach (var parameter in Parameters)
            {
                if (parameter.Sections is not var (from, to))
                {
                    return null;
                }

                (first, last) = (Math.Min(first, from), Math.Max(last, to));
            }

            return (first, last);
        }
    }

    public IColumnChange After(int sections) =>
        new TogetherParameter(
            new EquatableArray<IColumnChange>(Parameters.Select(parameter => parameter.After(sections)))
        );

    public double StepAt(in ColumnParts parts)
    {
        var step = double.PositiveInfinity;
        foreach (var parameter in Parameters)
        {
            step = Math.Min(step, parameter.StepAt(parts));
        }

        return step;
    }

    public double Of(in ColumnParts parts) => Parameters[0].Of(parts);

    public ColumnParts With(in ColumnParts parts, double value)
    {
        var change = value - Of(parts);
        var changed = parts;
        foreach (var parameter in Parameters)
        {
            changed = parameter.With(changed, parameter.Of(changed) + change);
        }

        return changed;
    }

    /// <summary>All of them.</summary>
    public override string ToString() => string.Join(" and ", Parameters);
}
