using System.Numerics;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn;

/// <summary>Input impedance Z = p/U at the blown end over a grid of frequencies, Pa·s/m³, exp(+jωt). Immutable.</summary>
/// <remarks>
/// At index i the frequency is <c>curve.Grid[i]</c> and the impedance <c>curve[i]</c>. Extension methods give other forms (<see cref="ImpedanceCurveValues"/>):
/// <c>curve.Magnitude()</c>, <c>curve.Decibels()</c>, <c>curve.WriteCsv(writer)</c>.
/// </remarks>
[JsonConverter(typeof(JsonAnswerConverter<ImpedanceCurve>))]
public sealed class ImpedanceCurve : IJsonAnswer
{
    private readonly double[] real;
    private readonly double[] imaginary;
    private readonly Func<CancellationToken, double>? modeConvergence;

    internal ImpedanceCurve(
        Column column,
        FrequencyGrid grid,
        double[] real,
        double[] imaginary,
        IReadOnlyList<string> warnings,
        double interpolationError = 0,
        Func<CancellationToken, double>? modeConvergence = null
    )
    {
        this.modeConvergence = modeConvergence;
        InterpolationError = interpolationError;
        Column = column;
        Grid = grid;
        this.real = real;
        this.imaginary = imaginary;
        Warnings = warnings;
    }

    /// <summary>The column that the curve belongs to. Divide by its <see cref="Column.CharacteristicImpedance"/> for relative values.</summary>
    public Column Column { get; }

    /// <summary>The frequencies.</summary>
    public FrequencyGrid Grid { get; }

    /// <summary>The number of frequencies.</summary>
    public int Count => real.Length;

    /// <summary>Acoustic resistance Re Z at each frequency, Pa·s/m³: a span, so write <c>Real.ToArray()</c> for LINQ.</summary>
    public ReadOnlySpan<double> Real => real;

    /// <summary>Acoustic reactance Im Z at each frequency, Pa·s/m³: a span, as <see cref="Real"/> is.</summary>
    public ReadOnlySpan<double> Imaginary => imaginary;

    /// <summary>
    /// Largest possible error of interpolation at any of the frequencies, relative to |Z| there; 0 if each frequency was computed by itself,
    /// as it is when there are only a few.
    /// </summary>
    public double InterpolationError { get; }

    /// <summary>
    /// Estimated mode-truncation error in cents, with <see cref="Wavefronts.Multimodal"/>; otherwise 0. It is the largest shift at eight
    /// frequencies across the curve when two of the N radial modes are dropped (two are added if there are only two). The true error is
    /// smaller, about 2/N of this shift.
    /// </summary>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The shift in cents.</returns>
    public double ModeConvergence(CancellationToken cancellationToken = default) =>
        modeConvergence?.Invoke(cancellationToken) ?? 0;

    /// <summary>Cautions to read before relying on the curve, such as frequencies beyond the plane-wave theory.</summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>Z at one frequency of the grid, Pa·s/m³.</summary>
    /// <param name="index">0 to <see cref="Count"/> − 1.</param>
    public Complex this[int index] => new(real[index], imaginary[index]);

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Number("characteristicImpedancePaSPerM3", Column.CharacteristicImpedance);
        json.Numbers("frequencyHz", Grid.Hertz);
        json.Numbers("rePaSPerM3", Real);
        json.Numbers("imPaSPerM3", Imaginary);
        json.Number("interpolationError", InterpolationError);
        json.Texts("warnings", Warnings);
    }

    /// <summary>The quantity and its frequencies.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => $"Input impedance at {Grid}";
}
