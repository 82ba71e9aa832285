namespace AirColumn.Acoustics.Multimodal;

/// <summary>Gauss and Legendre's places and weights.</summary>
internal static class GaussRule
{
    /// <summary>On 0 to 1.</summary>
    public static (double[] Places, double[] Weights) OnUnit(int count)
    {
        var (places, weights) = (new double[count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            var x = Math.Cos(Math.PI * (i + 0.75) / (count + 0.5));
            var slope = 0.0;
            for (var round = 0; round < 100; round++)
            {
                (var p, slope) = Legendre(count, x);
                var step = p / slope;
                x -= step;
                if (Math.Abs(step) < 1e-16)
                {
                    break;
                }
            }

            (_, slope) = Legendre(count, x);
            places[count - 1 - i] = (1 + x) / 2;
            weights[count - 1 - i] = 1 / ((1 - x * x) * slope * slope);
        }

        return (places, weights);
    }

    private static (double Value, double Slope) Legendre(int n, double x)
    {
        var (p, before) = (1.0, 0.0);
        for (var k = 0; k < n; k++)
        {
            (before, p) = (p, ((2 * k + 1) * x * p - k * before) / (k + 1));
        }

        return (p, n * (x * p - before) / (x * x - 1));
    }
}
