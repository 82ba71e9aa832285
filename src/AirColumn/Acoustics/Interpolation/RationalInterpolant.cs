using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Interpolation;

/// <summary>
/// Rational interpolation through tabulated points, infinitely smooth and without poles between them (source:
/// floater2007): the blend of the polynomials through each group of neighbouring points.
/// </summary>
internal sealed class RationalInterpolant
{
    private static readonly int Lanes = RealVector.Count;

    // Filled up to whole vectors by points infinitely far away, which weigh nothing.
    private readonly int count;
    private readonly double[] nodes;
    private readonly double[] weights;
    private readonly double[] values;

    /// <summary>Takes strictly increasing nodes; <paramref name="degree"/> is that of the blended polynomials.</summary>
    public RationalInterpolant(double[] nodes, double[] values, int degree)
    {
        var length = (nodes.Length + Lanes - 1) / Lanes * Lanes;
        count = nodes.Length;
        this.nodes = new double[length];
        this.nodes.AsSpan().Fill(double.PositiveInfinity);
        this.values = new double[length];
        weights = new double[length];
        nodes.CopyTo(this.nodes, 0);
        values.CopyTo(this.values, 0);
        Weights(nodes, degree).CopyTo(weights, 0);
    }

    private RationalInterpolant(RationalInterpolant other, ReadOnlySpan<double> values)
    {
        (count, nodes, weights) = (other.count, other.nodes, other.weights);
        this.values = new double[nodes.Length];
        values.CopyTo(this.values);
    }

    /// <summary>Through other values at the same nodes.</summary>
    public RationalInterpolant WithValues(ReadOnlySpan<double> others) => new(this, others);

    /// <summary>Between another one of the same nodes and this, of which <paramref name="share"/> counts.</summary>
    public RationalInterpolant Blended(RationalInterpolant other, double share)
    {
        Span<double> blended = stackalloc double[values.Length];
        for (var i = 0; i < blended.Length; i++)
        {
            blended[i] = other.values[i] + share * (values[i] - other.values[i]);
        }

        return WithValues(blended);
    }

    public double At(double x)
    {
        var (numerator, denominator) = (RealVector.Zero, RealVector.Zero);
        var here = Vector.Create(x);
        for (var i = 0; i < nodes.Length; i += Lanes)
        {
            var share = Vector.LoadUnsafe(ref weights[i]) / (here - Vector.LoadUnsafe(ref nodes[i]));
            numerator = RealVectors.MultiplyAdd(share, Vector.LoadUnsafe(ref values[i]), numerator);
            denominator += share;
        }

        var value = Vector.Sum(numerator) / Vector.Sum(denominator);
        return double.IsFinite(value) ? value : AtNode(x);
    }

    /// <summary>Functions made of one by <see cref="WithValues"/>, and it, at eight places.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    [SkipLocalsInit]
    public static void At(RealVector x, ReadOnlySpan<RationalInterpolant> functions, Span<RealVector> values)
    {
        var (nodes, weights) = (functions[0].nodes, functions[0].weights);
        Span<RealVector> shares = stackalloc RealVector[functions[0].count];
        // One division for four of them.
        var i = 0;
        for (; i + 4 <= shares.Length; i += 4)
        {
            var (d0, d1) = (x - Vector.Create(nodes[i]), x - Vector.Create(nodes[i + 1]));
            var (d2, d3) = (x - Vector.Create(nodes[i + 2]), x - Vector.Create(nodes[i + 3]));
            var (before, after) = (d0 * d1, d2 * d3);
            var over = RealVector.One / (before * after);
            (before, after) = (before * over, after * over);
            shares[i] = weights[i] * (d1 * after);
            shares[i + 1] = weights[i + 1] * (d0 * after);
            shares[i + 2] = weights[i + 2] * (d3 * before);
            shares[i + 3] = weights[i + 3] * (d2 * before);
        }

        for (; i < shares.Length; i++)
        {
            shares[i] = Vector.Create(weights[i]) / (x - Vector.Create(nodes[i]));
        }

        var denominator = RealVector.Zero;
        foreach (var share in shares)
        {
            denominator += share;
        }

        var inverse = RealVector.One / denominator;
        for (var n = 0; n < functions.Length; n++)
        {
            var sum = RealVector.Zero;
            var function = functions[n].values;
            for (i = 0; i < shares.Length; i++)
            {
                sum = RealVectors.MultiplyAdd(shares[i], Vector.Create(function[i]), sum);
            }

            values[n] = sum * inverse;
            // Not a number on a node.
            if (!Vector.EqualsAll(values[n], values[n]))
            {
                for (var lane = 0; lane < Lanes; lane++)
                {
                    values[n] = double.IsFinite(values[n][lane])
                        ? values[n]
                        : values[n].WithElement(lane, functions[n].AtNode(x[lane]));
                }
            }
        }
    }

    // Exactly on a node its share is infinite.
    private double AtNode(double x)
    {
        var i = Array.IndexOf(nodes, x);
        return i < 0 ? double.NaN : values[i];
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
