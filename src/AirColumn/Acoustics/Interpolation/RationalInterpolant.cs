namespace AirColumn.Acoustics.Interpolation;

/// <summary>
/// Rational interpolation through tabulated points, infinitely smooth and without poles between them (source:
/// floater2007): the blend of the polynomials through each group of neighbouring points.
/// </summary>
internal sealed class RationalInterpolant
{
    private readonly double[] nodes;
    private readonly double[] weights;
    private readonly double[] values;

    /// <summary>Takes strictly increasing nodes; <paramref name="degree"/> is that of the blended polynomials.</summary>
    public RationalInterpolant(double[] nodes, double[] values, int degree)
    {
        this.nodes = nodes;
        this.values = values;
        weights = Weights(nodes, degree);
    }

    public double At(double x)
    {
        var (numerator, denominator) = (0.0, 0.0);
        for (var i = 0; i < nodes.Length; i++)
        {
            var distance = x - nodes[i];
            if (distance == 0)
            {
                return values[i];
            }

            var share = weights[i] / distance;
            numerator += share * values[i];
            denominator += share;
        }

        return numerator / denominator;
    }

    // floater2007, eq. (11) for the weights of any nodes.
    private static double[] Weights(double[] nodes, int degree)
    {
        var last = nodes.Length - 1;
        var weights = new double[nodes.Length];
        for (var k = 0; k <= last; k++)
        {
            for (var first = Math.Max(0, k - degree); first <= Math.Min(k, last - degree); first++)
            {
                var product = first % 2 == 0 ? 1.0 : -1.0;
                for (var j = first; j <= first + degree; j++)
                {
                    product *= j == k ? 1 : 1 / (nodes[k] - nodes[j]);
                }

                weights[k] += product;
            }
        }

        return weights;
    }
}
