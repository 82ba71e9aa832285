namespace AirColumn.Accuracy;

/// <summary>One row of the report: what was compared with what, over which range, and the errors.</summary>
/// <param name="Name">What is computed.</param>
/// <param name="Reference">What it is compared with; source as a key of docs/references.bib, and its own error.</param>
/// <param name="Range">Where.</param>
/// <param name="Unit">Of the errors: "cent", "dB", "" for a relative or dimensionless one.</param>
/// <param name="Errors">Ours minus the reference, or relative to it, at each point of comparison.</param>
/// <param name="Bound">What is asked of the largest, in the same unit; null where nothing is.</param>
internal sealed record Quantity(
    string Name,
    string Reference,
    string Range,
    string Unit,
    IReadOnlyList<double> Errors,
    double? Bound = null
)
{
    public double Largest => Errors.Max(Math.Abs);

    public double Median
    {
        get
        {
            var sorted = Errors.Select(Math.Abs).Order().ToArray();
            var middle = sorted.Length / 2;
            return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
        }
    }
}

/// <summary>A part of the report: rows that belong together, where their models hold, and plots of them.</summary>
internal sealed record Chapter(
    string Title,
    string Validity,
    IReadOnlyList<Quantity> Quantities,
    IReadOnlyList<Plot> Plots
);
