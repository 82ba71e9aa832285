using System.Numerics;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Junctions;

/// <summary>The air mass that a step of radius has more, or less, because others are near (<see cref="StepChain"/>).</summary>
/// <param name="coefficients">Of the mass times r, kg/m⁴, as a Chebyshev series in r = √(1 − (ω/ω_c)²): with that, smooth up to the cut-on.</param>
/// <param name="cutOn">ω_c, cut-on of the widest pipe concerned, rad/s.</param>
internal sealed class StepInteraction(double[] coefficients, double cutOn)
{
    /// <summary>How many coefficients there are.</summary>
    public const int Nodes = 4;

    // As the mass of a step by itself.
    private const double HighestShareOfCutOn = GrowingMass.HighestShareOfCutOn;
    private static readonly double Least = Math.Sqrt(1 - HighestShareOfCutOn * HighestShareOfCutOn);

    /// <summary>ω from which the mass is held.</summary>
    public double HeldFrom => HighestShareOfCutOn * cutOn;

    /// <summary>r at a node of the series.</summary>
    public static double RootAt(int node) => Least + (1 - Least) * (1 + Chebyshev.Node(node, Nodes)) / 2;

    /// <summary>The mass, kg/m⁴, at ω, rad/s.</summary>
    public double At(double omega)
    {
        var share = Math.Min(omega / cutOn, HighestShareOfCutOn);
        var root = Math.Sqrt(1 - share * share);
        var t = 2 * (root - Least) / (1 - Least) - 1;
        var (next, afterNext) = (0.0, 0.0);
        for (var k = Nodes - 1; k > 0; k--)
        {
            (next, afterNext) = (2 * t * next + coefficients[k] - afterNext, next);
        }

        return (t * next + coefficients[0] - afterNext) / root;
    }

    /// <summary>The same at some ω.</summary>
    public RealVector At(RealVector omega)
    {
        var share = Vector.Min(omega * (1 / cutOn), Vector.Create(HighestShareOfCutOn));
        var root = Vector.SquareRoot(RealVector.One - share * share);
        var t = (root - Vector.Create(Least)) * (2 / (1 - Least)) - RealVector.One;
        var (next, afterNext) = (RealVector.Zero, RealVector.Zero);
        for (var k = Nodes - 1; k > 0; k--)
        {
            (next, afterNext) = (
                RealVectors.MultiplyAdd(t + t, next, Vector.Create(coefficients[k]) - afterNext),
                next
            );
        }

        return RealVectors.MultiplyAdd(t, next, Vector.Create(coefficients[0]) - afterNext) / root;
    }
}
