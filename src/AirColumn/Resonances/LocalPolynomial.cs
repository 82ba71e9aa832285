using System.Numerics;

namespace AirColumn.Resonances;

/// <summary>
/// A complex polynomial of eighth degree in t through its values at t = −2, −1.5, … 2 (Newton's divided differences).
/// </summary>
internal readonly struct LocalPolynomial
{
    public const int Points = 9;

    private readonly Complex[] coefficients;

    public LocalPolynomial(ReadOnlySpan<Complex> values)
    {
        coefficients = values.ToArray();
        for (var order = 1; order < Points; order++)
        {
            for (var i = Points - 1; i >= order; i--)
            {
                coefficients[i] = (coefficients[i] - coefficients[i - 1]) / (Node(i) - Node(i - order));
            }
        }
    }

    /// <summary>Where value i belongs.</summary>
    public static double Node(int i) => 0.5 * (i - Points / 2);

    public (Complex Value, Complex Slope, Complex Curvature) At(Complex t)
    {
        var (value, slope, halfCurvature) = (coefficients[Points - 1], Complex.Zero, Complex.Zero);
        for (var i = Points - 2; i >= 0; i--)
        {
            var distance = t - Node(i);
            halfCurvature = halfCurvature * distance + slope;
            slope = slope * distance + value;
            value = value * distance + coefficients[i];
        }

        return (value, slope, 2 * halfCurvature);
    }
}
