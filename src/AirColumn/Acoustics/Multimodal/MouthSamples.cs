using System.Numerics;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>What is seen at the nodes of a series in ka, for any number of modes: this is what takes time at a mouth.</summary>
internal sealed class MouthSamples
{
    /// <summary>Up to where a mouth is known.</summary>
    public const double HighestKa = 3.83;

    /// <summary>How many nodes; one lane of the vectors they fill is for ka = 0.</summary>
    public const int Nodes = 23;

    private readonly List<(RealVector Ka, ComplexVector[] Straight, ComplexVector[]? Tapering)> seen = [];

    /// <summary>Takes them of a field.</summary>
    /// <param name="field">The field.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public MouthSamples(MouthField field, CancellationToken cancellationToken = default)
    {
        Span<double> ka = stackalloc double[ComplexVector.Count];
        for (var first = -1; first < Nodes; first += ComplexVector.Count)
        {
            cancellationToken.ThrowIfCancellationRequested();
            for (var lane = 0; lane < ka.Length; lane++)
            {
                var node = first + lane;
                ka[lane] = node < 0 ? 0 : HighestKa / 2 * (1 + Chebyshev.Node(node, Nodes));
            }

            var lanes = Vector.Create<double>(ka);
            seen.Add((lanes, field.Seen(lanes, false), field.Tapers ? field.Seen(lanes, true) : null));
        }
    }

    /// <summary>Whether the outside is not a cylinder.</summary>
    public bool Tapers => seen[0].Tapering is not null;

    /// <summary>X at ka = 0 and at the nodes, from the vector of the first on: as a cylinder's, or what the outside changes.</summary>
    public IEnumerable<(RealVector Ka, ComplexVector[] X)> Of(RadialBasis basis, bool isChange)
    {
        foreach (var (ka, straight, tapering) in seen)
        {
            var x = MouthField.Of(basis, ka, straight);
            if (isChange)
            {
                var other = MouthField.Of(basis, ka, tapering!);
                for (var i = 0; i < x.Length; i++)
                {
                    x[i] = other[i] - x[i];
                }
            }

            yield return (ka, x);
        }
    }
}
