namespace AirColumn.Recordings.Tones;

/// <summary>Least squares a + b·x + c·(x² − mean of x²) through equidistant values, x from the middle: the terms are orthogonal.</summary>
internal sealed class Trend
{
    private readonly double middle;
    private readonly double xx;
    private readonly double meanSquare;
    private readonly double qq;

    public Trend(double[] values)
    {
        var n = values.Length;
        middle = (n - 1) / 2.0;
        var fourth = 0.0;
        for (var m = 0; m < n; m++)
        {
            var x = m - middle;
            xx += x * x;
            fourth += x * x * x * x;
        }

        meanSquare = xx / n;
        qq = fourth - n * meanSquare * meanSquare;
        var (a, b, c) = (0.0, 0.0, 0.0);
        // From the first value: turns grow large.
        for (var m = 0; m < n; m++)
        {
            var value = values[m] - values[0];
            a += value / n;
            b += X(m) * value / xx;
            c += Q(m) * value / qq;
        }

        Curvature = c;
        Left = new double[n];
        for (var m = 0; m < n; m++)
        {
            Left[m] = values[m] - values[0] - a - b * X(m) - c * Q(m);
        }
    }

    /// <summary>c.</summary>
    public double Curvature { get; }

    /// <summary>The values less the trend.</summary>
    public double[] Left { get; }

    /// <summary>By how much value k moves the trend at m.</summary>
    public double Share(int m, int k) => 1.0 / Left.Length + X(m) * X(k) / xx + Q(m) * Q(k) / qq;

    private double X(int m) => m - middle;

    private double Q(int m) => X(m) * X(m) - meanSquare;
}
