using System.Numerics;

namespace AirColumn.Acoustics.Junctions;

/// <summary>A pipe as its radial modes see it below their cut-on: pressures at its ends for the flows there.</summary>
/// <remarks>
/// The last modes fade out, so that their number may change without a jump: on the wider side of a step, where the flow is given, they take
/// no pressure; on the narrower side, where it is not, they take more and more and let no flow through.
/// </remarks>
internal sealed class EvanescentPipe
{
    private const double FadesFrom = 0.8; // of the highest wavenumber

    /// <summary>A pipe.</summary>
    /// <param name="radius">m.</param>
    /// <param name="length">m; infinite where nothing comes back from its other end.</param>
    /// <param name="modes">How many, without the plane one.</param>
    /// <param name="highest">The wavenumber across up to which there are modes, 1/m.</param>
    /// <param name="square">k², 1/m².</param>
    /// <param name="inletIsWide">Whether it is the wider one at the step before it.</param>
    /// <param name="outletIsWide">Whether it is the wider one at the step behind it.</param>
    public EvanescentPipe(
        double radius,
        double length,
        int modes,
        double highest,
        RealVector square,
        bool inletIsWide,
        bool outletIsWide
    )
    {
        (AtInlet, AtOutlet, Far) = (new RealVector[modes], new RealVector[modes], new RealVector[modes]);
        for (var n = 0; n < modes; n++)
        {
            var across = RadialZeros.Gamma[n] / radius;
            var kappa = Vector.SquareRoot(Vector.Create(across * across) - square);
            var impedance = RealVector.One / (Math.PI * radius * radius * kappa);
            var fade = Fade(across / highest);
            var (inlet, outlet) = (inletIsWide ? fade : 1 / fade, outletIsWide ? fade : 1 / fade);
            var near = impedance;
            if (!double.IsInfinity(length))
            {
                var decay = Vector.Exp(-length * kappa);
                var both = impedance / (RealVector.One - decay * decay);
                near = both * (RealVector.One + decay * decay);
                // As the root of what both ends have, so that the energy stays positive.
                Far[n] = 2 * (inletIsWide == outletIsWide ? inlet : 1) * both * decay;
            }

            (AtInlet[n], AtOutlet[n]) = (inlet * near, outlet * near);
        }
    }

    /// <summary>Z·coth κL: pressure for flow at the end before it.</summary>
    public RealVector[] AtInlet { get; }

    /// <summary>The same at the end behind it.</summary>
    public RealVector[] AtOutlet { get; }

    /// <summary>Z/sinh κL: pressure at one end for the flow at the other.</summary>
    public RealVector[] Far { get; }

    private static double Fade(double share)
    {
        var u = Math.Max(0, (share - FadesFrom) / (1 - FadesFrom));
        var left = 1 - u * u * u * u;
        return Math.Max(left * left, 1e-9);
    }
}
