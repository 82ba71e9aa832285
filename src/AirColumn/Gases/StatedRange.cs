namespace AirColumn;

/// <summary>The range a source states for its formulas, and what it means to be outside.</summary>
/// <param name="Quantity">What is limited; begins the sentence.</param>
/// <param name="Min">Smallest value inside, in <paramref name="Unit"/>.</param>
/// <param name="Max">Largest value inside, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit of the numbers.</param>
/// <param name="Source">Who states it.</param>
/// <param name="Consequence">What no longer holds outside; ends the sentence.</param>
internal readonly record struct StatedRange(
    string Quantity,
    double Min,
    double Max,
    string Unit,
    string Source,
    string Consequence
)
{
    /// <summary>The value, or the end of the range that is nearest to it.</summary>
    public double Nearest(double value) => Math.Clamp(value, Min, Max);

    /// <summary>A plain sentence if the value is outside, otherwise null.</summary>
    public string? Warning(double value)
    {
        // Unit conversion leaves a last digit astray (86 °F, 1.02 bar): nine decimals decide.
        var rounded = Math.Round(value, 9);
        return rounded >= Min && rounded <= Max
            ? null
            : $"{Quantity} is {Require.Show(rounded, Unit)}, outside the {Require.Show(Min, Unit)} to "
                + $"{Require.Show(Max, Unit)} stated by {Source}: {Consequence}.";
    }
}
