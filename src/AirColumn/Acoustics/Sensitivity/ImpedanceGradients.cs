using AirColumn.Acoustics.Sensitivity;

namespace AirColumn;

/// <summary>Gradients of the impedance of a column with respect to its dimensions and its air.</summary>
public static class ImpedanceGradients
{
    /// <summary>
    /// Input impedance over a grid of frequencies, and its gradient: the derivative of Z with respect to each dimension and each quantity of the air.
    /// </summary>
    /// <remarks>
    /// By reciprocity δZ = (1/U₀²)·∫(δZ'·U² − δY'·p²)dx, so one pass from the far end gives all parameters at once. In this pass pressure
    /// and flow are integrated at the accuracy of doubles. Only the effect of a parameter on walls, gas constants, holes and ends is taken
    /// from differences of fourth order; these are real functions without resonances. For a hole the difference is that of the
    /// impedance of the hole, not of the column. Over many frequencies, smooth functions are interpolated.
    /// </remarks>
    /// <param name="column">The column.</param>
    /// <param name="grid">The frequencies; as for <see cref="Column.Impedance(FrequencyGrid, CancellationToken)"/>.</param>
    /// <param name="parameters">The parameters. Default: all of <see cref="ColumnParameter.AllOf"/>.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The curve, and ∂Z/∂θ at each frequency for each parameter θ.</returns>
    /// <exception cref="ArgumentException">The column does not have one of the parameters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is beyond the model of the radiating end.</exception>
    public static ImpedanceGradient ImpedanceGradient(
        this Column column,
        FrequencyGrid grid,
        IReadOnlyList<ColumnParameter>? parameters = null,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(grid);
        column.RequireRadiation(grid);
        ColumnParameter[] all = [.. parameters ?? ColumnParameter.AllOf(column)];
        var curve = new GradientCurve(
            column.Answers(cancellationToken).Wave,
            StateSensitivities.Of(column, all, cancellationToken),
            column.Options.RelativeTolerance,
            all.Length,
            column.Wavefronts != Wavefronts.Multimodal,
            grid.Hertz,
            progress,
            cancellationToken
        );
        return new ImpedanceGradient(
            column.Curve(grid, curve.Real, curve.Imaginary, curve.Error),
            all,
            curve.GradientReal,
            curve.GradientImaginary,
            curve.Error
        );
    }
}
