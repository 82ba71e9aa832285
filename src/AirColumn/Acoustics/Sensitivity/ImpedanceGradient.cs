using System.Numerics;

namespace AirColumn;

/// <summary>
/// The gradient of input impedance with respect to dimensions and the air, over a grid of frequencies: ∂Z/∂θ for each parameter θ. Immutable.
/// </summary>
public sealed class ImpedanceGradient
{
    private readonly double[] real; // [parameter·frequencies + frequency]
    private readonly double[] imaginary;

    internal ImpedanceGradient(
        ImpedanceCurve impedance,
        IReadOnlyList<ColumnParameter> parameters,
        double[] real,
        double[] imaginary,
        double interpolationError
    )
    {
        (Impedance, Parameters) = (impedance, parameters);
        (this.real, this.imaginary) = (real, imaginary);
        InterpolationError = interpolationError;
    }

    /// <summary>The impedance itself, from the same computation.</summary>
    public ImpedanceCurve Impedance { get; }

    /// <summary>The frequencies.</summary>
    public FrequencyGrid Grid => Impedance.Grid;

    /// <summary>The parameters, in the order in which they were given.</summary>
    public IReadOnlyList<ColumnParameter> Parameters { get; }

    /// <summary>
    /// The largest possible error of a derivative due to interpolation in frequency; 0 if no derivative was interpolated. The error is
    /// relative to the largest derivative with respect to the same parameter within a few resonances. Where Z has a peak, this reference is
    /// larger in the same proportion.
    /// </summary>
    public double InterpolationError { get; }

    /// <summary>Re ∂Z/∂θ at each frequency, Pa·s/m³ per <see cref="ColumnParameter.Unit"/>.</summary>
    /// <param name="parameter">Its index in <see cref="Parameters"/>.</param>
    /// <returns>One value for each frequency.</returns>
    public ReadOnlySpan<double> Real(int parameter) => real.AsSpan(Index(parameter) * Grid.Count, Grid.Count);

    /// <summary>Im ∂Z/∂θ at each frequency, Pa·s/m³ per <see cref="ColumnParameter.Unit"/>.</summary>
    /// <param name="parameter">Its index in <see cref="Parameters"/>.</param>
    /// <returns>One value for each frequency.</returns>
    public ReadOnlySpan<double> Imaginary(int parameter) =>
        imaginary.AsSpan(Index(parameter) * Grid.Count, Grid.Count);

    /// <summary>∂Z/∂θ at one frequency, Pa·s/m³ per <see cref="ColumnParameter.Unit"/>.</summary>
    /// <param name="parameter">Its index in <see cref="Parameters"/>.</param>
    /// <param name="frequency">Its index in <see cref="Grid"/>.</param>
    /// <returns>The derivative.</returns>
    public Complex At(int parameter, int frequency)
    {
        Require.InRange(frequency, 0, Grid.Count - 1, "");
        var i = Index(parameter) * Grid.Count + frequency;
        return new Complex(real[i], imaginary[i]);
    }

    private int Index(int parameter) =>
        (int)Require.InRange(parameter, 0, Parameters.Count - 1, "", nameof(parameter));

    /// <summary>The number of parameters and the frequencies.</summary>
    /// <returns>The text.</returns>
    public override string ToString() =>
        $"Derivatives of input impedance with respect to {Parameters.Count} parameters at {Grid}";
}
