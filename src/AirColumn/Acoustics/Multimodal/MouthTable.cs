using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>X of <see cref="MouthField"/> as Chebyshev series in ka: smooth, and quick to take.</summary>
internal sealed class MouthTable
{
    /// <summary>Up to where it reaches.</summary>
    public const double HighestKa = 3.83;

    private const int Nodes = 24;

    private readonly int modes;
    private readonly double[] coefficients; // of Re X and of Im X/ka, entry by entry of the lower triangle

    /// <summary>Of a field, with its outside as it tapers, or as if it were a cylinder.</summary>
    public MouthTable(MouthField field, RadialBasis basis, bool tapers)
    {
        modes = basis.Count;
        var entries = modes * (modes + 1) / 2;
        var values = new double[2 * entries * Nodes];
        Span<double> ka = stackalloc double[ComplexLanes.Count];
        for (var first = 0; first < Nodes; first += ComplexLanes.Count)
        {
            for (var lane = 0; lane < ka.Length; lane++)
            {
                ka[lane] = HighestKa / 2 * (1 + Math.Cos(Math.PI * (first + lane + 0.5) / Nodes));
            }

            var x = field.At(basis, Vector512.Create<double>(ka), tapers);
            var entry = 0;
            for (var i = 0; i < modes; i++)
            {
                for (var j = 0; j <= i; j++, entry++)
                {
                    for (var lane = 0; lane < ka.Length; lane++)
                    {
                        var at = x[i * modes + j].Lane(lane);
                        values[2 * entry * Nodes + first + lane] = at.Real;
                        values[(2 * entry + 1) * Nodes + first + lane] = at.Imaginary / ka[lane];
                    }
                }
            }
        }

        coefficients = new double[values.Length];
        for (var row = 0; row < 2 * entries; row++)
        {
            ChebyshevFit.Coefficients(values.AsSpan(row * Nodes, Nodes)).CopyTo(coefficients, row * Nodes);
        }
    }

    /// <summary>X of a mouth of this radius, m: 1/m, row-major.</summary>
    public void At(Vector512<double> wavenumber, double radius, Span<ComplexLanes> x)
    {
        var ka = wavenumber * radius;
        var t = ka * (2 / HighestKa) - Vector512<double>.One;
        var entry = 0;
        for (var i = 0; i < modes; i++)
        {
            for (var j = 0; j <= i; j++, entry++)
            {
                var real = Series(2 * entry, t);
                var imaginary = Series(2 * entry + 1, t) * ka;
                var value = (1 / radius) * new ComplexLanes(real, imaginary);
                x[i * modes + j] = value;
                x[j * modes + i] = value;
            }
        }
    }

    private Vector512<double> Series(int row, Vector512<double> t)
    {
        var c = coefficients.AsSpan(row * Nodes, Nodes);
        var (next, afterNext) = (Vector512<double>.Zero, Vector512<double>.Zero);
        for (var k = Nodes - 1; k > 0; k--)
        {
            (next, afterNext) = (
                Vector512.FusedMultiplyAdd(t + t, next, Vector512.Create(c[k]) - afterNext),
                next
            );
        }

        return Vector512.FusedMultiplyAdd(t, next, Vector512.Create(c[0]) - afterNext);
    }
}
