using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using Complex = System.Numerics.Complex;

namespace AirColumn;

/// <summary>
/// A measured input impedance, kept as the reflectance R = (Z − Zr)/(Z + Zr) of the blown end. Its magnitude stays near 1, so one
/// uncertainty holds at peaks and dips of Z alike. Immutable.
/// </summary>
public sealed class MeasuredReflectance : BoreMeasurement
{
    private const double LargestReflectance = 2;
    private const double FewestInBand = 8; // frequencies
    private static readonly char[] Separators = [',', ';', '\t'];

    private readonly double[] hertz;
    private readonly Complex[] values;

    private MeasuredReflectance(
        double[] hertz,
        Complex[] values,
        double referenceImpedance,
        double standardDeviation
    )
    {
        (this.hertz, this.values) = (hertz, values);
        (ReferenceImpedance, StandardDeviation) = (referenceImpedance, standardDeviation);
    }

    /// <summary>The frequencies, Hz, rising.</summary>
    public ReadOnlySpan<double> Hertz => hertz;

    /// <summary>R at each frequency.</summary>
    public ReadOnlySpan<Complex> Values => values;

    /// <summary>Zr, Pa·s/m³.</summary>
    public double ReferenceImpedance { get; }

    /// <summary>The standard deviation of the real part and of the imaginary part of R at each frequency; the two are independent.</summary>
    public double StandardDeviation { get; }

    /// <summary>Takes a measured impedance.</summary>
    /// <param name="hertz">The frequencies, Hz, above 0 and rising.</param>
    /// <param name="impedance">Z at each frequency, Pa·s/m³; never −Zr.</param>
    /// <param name="referenceImpedance">Zr, Pa·s/m³, above 0: best near ρc/S of the blown end.</param>
    /// <param name="standardDeviation">
    /// The standard deviation of the real part and of the imaginary part of R, above 0 and below 1: 0.01 if the reflectance is known to 1 %.
    /// </param>
    /// <returns>The measurement.</returns>
    /// <exception cref="ArgumentException">
    /// The frequencies do not rise, there are not as many values as frequencies, or a value is not a finite number.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static MeasuredReflectance OfImpedance(
        ReadOnlySpan<double> hertz,
        ReadOnlySpan<Complex> impedance,
        double referenceImpedance,
        double standardDeviation
    )
    {
        Require.Positive(referenceImpedance, "Pa·s/m³", nameof(referenceImpedance));
        var values = new Complex[impedance.Length];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = Of(impedance[i], referenceImpedance);
        }

        return OfReflectance(hertz, values, referenceImpedance, standardDeviation);
    }

    /// <summary>Takes a measured reflectance.</summary>
    /// <param name="hertz">The frequencies, Hz, above 0 and rising.</param>
    /// <param name="reflectance">R at each frequency; |R| is at most 2.</param>
    /// <param name="referenceImpedance">Zr, Pa·s/m³, above 0.</param>
    /// <param name="standardDeviation">The standard deviation of the real part and of the imaginary part of R, above 0 and below 1.</param>
    /// <returns>The measurement.</returns>
    /// <exception cref="ArgumentException">
    /// The frequencies do not rise, there are not as many values as frequencies, or a value is not a finite number.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static MeasuredReflectance OfReflectance(
        ReadOnlySpan<double> hertz,
        ReadOnlySpan<Complex> reflectance,
        double referenceImpedance,
        double standardDeviation
    )
    {
        Require.Positive(referenceImpedance, "Pa·s/m³", nameof(referenceImpedance));
        Require.InRange(standardDeviation, 1e-9, 1, "", nameof(standardDeviation));
        if (hertz.Length == 0 || hertz.Length != reflectance.Length)
        {
            throw new ArgumentException(
                $"There are {hertz.Length} frequencies and {reflectance.Length} values; give at least one frequency, and one value for each.",
                nameof(hertz)
            );
        }

        for (var i = 0; i < hertz.Length; i++)
        {
            if (!(double.IsFinite(hertz[i]) && hertz[i] > (i == 0 ? 0 : hertz[i - 1])))
            {
                throw new ArgumentException(
                    $"Frequency {i + 1} is {Require.Show(hertz[i], "Hz")}; frequencies must be above 0 and rise.",
                    nameof(hertz)
                );
            }

            if (!(Complex.Abs(reflectance[i]) <= LargestReflectance))
            {
                throw new ArgumentException(
                    $"The reflectance at {Require.Show(hertz[i], "Hz")} is {Complex.Abs(reflectance[i]):0.###} in size; it must be at most {LargestReflectance}. "
                        + "Check that the impedance is in Pa·s/m³ and the reference impedance is the one of the blown end.",
                    nameof(reflectance)
                );
            }
        }

        return new MeasuredReflectance(
            hertz.ToArray(),
            reflectance.ToArray(),
            referenceImpedance,
            standardDeviation
        );
    }

    /// <summary>
    /// Reads a measured impedance: a line for each frequency with the frequency in Hz, then Re Z and Im Z in Pa·s/m³. Numbers are separated
    /// by commas, semicolons or tabs and have decimal points. Lines before the first number are a heading; empty lines and lines that begin
    /// with # are skipped.
    /// </summary>
    /// <param name="csv">The text.</param>
    /// <param name="referenceImpedance">Zr, Pa·s/m³, above 0: best near ρc/S of the blown end.</param>
    /// <param name="standardDeviation">The standard deviation of the real part and of the imaginary part of R, above 0 and below 1.</param>
    /// <returns>The measurement.</returns>
    /// <exception cref="FormatException">A line does not have three numbers; the message names the line.</exception>
    /// <exception cref="ArgumentException">The frequencies do not rise, or there are no frequencies.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static MeasuredReflectance ReadImpedance(
        TextReader csv,
        double referenceImpedance,
        double standardDeviation
    )
    {
        ArgumentNullException.ThrowIfNull(csv);
        var (hertz, impedance) = (new List<double>(), new List<Complex>());
        for (var number = 1; csv.ReadLine() is { } line; number++)
        {
            if (string.IsNullOrWhiteSpace(line) || line.TrimStart().StartsWith('#'))
            {
                continue;
            }

            var cells = line.Split(Separators, StringSplitOptions.TrimEntries);
            if (
                cells.Length == 3
                && Number(cells[0]) is { } f
                && Number(cells[1]) is { } real
                && Number(cells[2]) is { } imaginary
            )
            {
                hertz.Add(f);
                impedance.Add(new Complex(real, imaginary));
            }
            else if (hertz.Count > 0 || Number(cells[0]) is not null)
            {
                throw new FormatException(
                    $"Line {number} is \"{line}\"; each line must have three numbers: the frequency in Hz, then Re Z and Im Z in Pa·s/m³."
                );
            }
        }

        return OfImpedance([.. hertz], [.. impedance], referenceImpedance, standardDeviation);

        static double? Number(string cell) =>
            double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && double.IsFinite(value)
                ? value
                : null;
    }

    internal override double HighestHertz => hertz[^1];

    // The lowest octaves first, and each time one more: they see the bore as a whole, so that the upper ones, whose phase turns many times, begin near
    // their minimum.
    internal override IReadOnlyList<int> Stages
    {
        get
        {
            var counts = new List<int> { hertz.Length };
            for (var high = hertz[^1] / 2; ; high /= 2)
            {
                var count = 0;
                while (hertz[count] < high)
                {
                    count++;
                }

                if (count < FewestInBand)
                {
                    counts.Reverse();
                    return counts;
                }

                counts.Add(count);
            }
        }
    }

    internal override int NumbersOf(int stage) => 2 * stage;

    internal override double HighestHertzOf(int stage) => hertz[stage - 1];

    internal override Vector<double> Residuals(Column column, int stage, CancellationToken cancellationToken)
    {
        var (real, imaginary) = (new double[stage], new double[stage]);
        column.Impedance(Hertz[..stage], real, imaginary, cancellationToken);
        var residuals = Vector<double>.Build.Dense(2 * stage);
        for (var f = 0; f < stage; f++)
        {
            var off = Of(new Complex(real[f], imaginary[f]), ReferenceImpedance) - values[f];
            residuals[2 * f] = off.Real / StandardDeviation;
            residuals[2 * f + 1] = off.Imaginary / StandardDeviation;
        }

        return residuals;
    }

    internal override Matrix<double> Slopes(
        Column column,
        ColumnParameter[] parameters,
        int stage,
        CancellationToken cancellationToken
    )
    {
        var gradient = column.ImpedanceGradient(
            FrequencyGrid.FromHertz(Hertz[..stage]),
            parameters,
            cancellationToken: cancellationToken
        );
        var slopes = Matrix<double>.Build.Dense(2 * stage, parameters.Length);
        for (var f = 0; f < stage; f++)
        {
            var sum = gradient.Impedance[f] + ReferenceImpedance;
            var rate = 2 * ReferenceImpedance / (sum * sum) / StandardDeviation;
            for (var n = 0; n < parameters.Length; n++)
            {
                var slope = rate * gradient.At(n, f);
                (slopes[2 * f, n], slopes[2 * f + 1, n]) = (slope.Real, slope.Imaginary);
            }
        }

        return slopes;
    }

    internal static Complex Of(Complex impedance, double reference) =>
        (impedance - reference) / (impedance + reference);

    /// <summary>Number and range of the frequencies, in the invariant culture.</summary>
    /// <returns>Number and range of the frequencies, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{hertz.Length} frequencies, {hertz[0]:0.##} Hz to {hertz[^1]:0.##} Hz");
}
