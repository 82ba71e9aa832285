using System.Numerics;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>X of <see cref="MouthField"/> as Chebyshev series in ka: smooth, and quick to take.</summary>
internal sealed class MouthTable
{
    private const int Nodes = MouthSamples.Nodes;

    private readonly int modes;
    private readonly double[] coefficients; // of Re X and of Im X/ka, entry by entry of the lower triangle

    /// <summary>Of a mouth, its outside a cylinder, or of the change that its outside makes.</summary>
    public MouthTable(MouthSamples mouth, RadialBasis basis, bool isChange)
    {
        modes = basis.Count;
        var entries = modes * (modes + 1) / 2;
        var values = new double[2 * entries * Nodes];
        // At rest nothing is radiated: what the discretisation leaves of that in the change is taken off.
        var still = new double[entries];
        var first = -1;
        foreach (var (ka, x) in mouth.Of(basis, isChange))
        {
            var entry = 0;
            for (var i = 0; i < modes; i++)
            {
                for (var j = 0; j <= i; j++, entry++)
                {
                    for (var lane = 0; lane < ComplexVector.Count; lane++)
                    {
                        var (node, at) = (first + lane, x[i * modes + j].At(lane));
                        if (node < 0)
                        {
                            still[entry] = isChange ? at.Imaginary : 0;
                            continue;
                        }

                        values[2 * entry * Nodes + node] = at.Real;
                        values[(2 * entry + 1) * Nodes + node] = (at.Imaginary - still[entry]) / ka[lane];
                    }
                }
            }

            first += ComplexVector.Count;
        }

        coefficients = new double[values.Length];
        Chebyshev.Transform(values, Nodes, coefficients);
    }

    /// <summary>Adds X, or the change of it, for a mouth of this radius, m: 1/m, row-major.</summary>
    public void AddTo(RealVector wavenumber, double radius, Span<ComplexVector> x)
    {
        var ka = wavenumber * radius;
        var t = ka * (2 / MouthSamples.HighestKa) - RealVector.One;
        var entry = 0;
        for (var i = 0; i < modes; i++)
        {
            for (var j = 0; j <= i; j++, entry++)
            {
                var real = Series(2 * entry, t);
                var imaginary = Series(2 * entry + 1, t) * ka;
                var value = (1 / radius) * new ComplexVector(real, imaginary);
                x[i * modes + j] += value;
                if (i != j)
                {
                    x[j * modes + i] += value;
                }
            }
        }
    }

    private RealVector Series(int row, RealVector t)
    {
        var c = coefficients.AsSpan(row * Nodes, Nodes);
        var (next, afterNext) = (RealVector.Zero, RealVector.Zero);
        for (var k = Nodes - 1; k > 0; k--)
        {
            (next, afterNext) = (RealVectors.MultiplyAdd(t + t, next, Vector.Create(c[k]) - afterNext), next);
        }

        return RealVectors.MultiplyAdd(t, next, Vector.Create(c[0]) - afterNext);
    }
}
