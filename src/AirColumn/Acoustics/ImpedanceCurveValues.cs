using System.Globalization;
using System.Numerics;

namespace AirColumn;

/// <summary>Other forms of an impedance curve: magnitude, phase, level, relative impedance, admittance, reflection, CSV.</summary>
public static class ImpedanceCurveValues
{
    /// <summary>|Z| at each frequency, Pa·s/m³.</summary>
    /// <param name="curve">The curve.</param>
    /// <returns>One value for each frequency.</returns>
    public static double[] Magnitude(this ImpedanceCurve curve) => Each(curve, Complex.Abs);

    /// <summary>The phase of Z at each frequency, radians from −π to π: positive where the flow lags behind the pressure, exp(+jωt).</summary>
    /// <param name="curve">The curve.</param>
    /// <returns>One value for each frequency.</returns>
    public static double[] Phase(this ImpedanceCurve curve) => Each(curve, z => z.Phase);

    /// <summary>The level of Z at each frequency, dB over the characteristic impedance ρc/S at the blown end: 20·lg(|Z|·S/ρc).</summary>
    /// <param name="curve">The curve.</param>
    /// <returns>One value for each frequency; −∞ where Z is 0.</returns>
    public static double[] Decibels(this ImpedanceCurve curve) =>
        Each(curve, z => 20 * Math.Log10(Complex.Abs(z) / curve.Column.CharacteristicImpedance));

    /// <summary>Z·S/ρc at each frequency, relative to the characteristic impedance at the blown end.</summary>
    /// <param name="curve">The curve.</param>
    /// <returns>One value for each frequency.</returns>
    public static Complex[] Normalised(this ImpedanceCurve curve) =>
        Each(curve, z => z / curve.Column.CharacteristicImpedance);

    /// <summary>The admittance 1/Z at each frequency, m³/(Pa·s).</summary>
    /// <param name="curve">The curve.</param>
    /// <returns>One value for each frequency.</returns>
    public static Complex[] Admittance(this ImpedanceCurve curve) => Each(curve, z => 1 / z);

    /// <summary>The pressure reflection coefficient (Z − Z₀)/(Z + Z₀) at each frequency, Z₀ = ρc/S at the blown end.</summary>
    /// <param name="curve">The curve.</param>
    /// <returns>One value for each frequency.</returns>
    public static Complex[] Reflection(this ImpedanceCurve curve) =>
        Each(
            curve,
            z => (z - curve.Column.CharacteristicImpedance) / (z + curve.Column.CharacteristicImpedance)
        );

    /// <summary>
    /// Writes the curve as CSV: a heading, then frequency in Hz, Re Z and Im Z in Pa·s/m³, to all digits and in the invariant culture. ColumnTool
    /// writes
    /// the same columns.
    /// </summary>
    /// <param name="curve">The curve.</param>
    /// <param name="writer">Receives the text.</param>
    public static void WriteCsv(this ImpedanceCurve curve, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write("frequency_hz,re,im\n");
        for (var i = 0; i < curve.Count; i++)
        {
            writer.Write(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{curve.Grid.Hertz[i]:R},{curve.Real[i]:R},{curve.Imaginary[i]:R}\n"
                )
            );
        }
    }

    private static T[] Each<T>(ImpedanceCurve curve, Func<Complex, T> value)
    {
        ArgumentNullException.ThrowIfNull(curve);
        var values = new T[curve.Count];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = value(curve[i]);
        }

        return values;
    }
}
