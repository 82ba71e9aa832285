using System.Numerics;

namespace AirColumn.Acoustics.Junctions;

/// <summary>
/// The mass of air that moves at a discontinuity of the bore. It grows with frequency as the modes that die away there reach further: what
/// belongs to a mode of cut-on ω_c as 1/√(1 − (ω/ω_c)²).
/// </summary>
internal class GrowingMass
{
    // Where the first mode is about to propagate the mass is held: there one-dimensional theory is at its end.
    public const double HighestShareOfCutOn = 0.9;

    private readonly double still;
    private readonly (double Mass, double CutOn)[] modes;

    /// <param name="still">At low frequency, kg/m⁴.</param>
    /// <param name="modes">What of it belongs to a mode, kg/m⁴, and the mode's cut-on, rad/s; the lowest first.</param>
    public GrowingMass(double still, params (double Mass, double CutOn)[] modes) =>
        (this.still, this.modes) = (still, modes);

    /// <summary>ω from which the mass is held.</summary>
    public double HeldFrom => HighestShareOfCutOn * modes[0].CutOn;

    /// <summary>The acoustic mass, kg/m⁴, at ω, rad/s.</summary>
    public double At(double omega)
    {
        var held = Math.Min(omega, HeldFrom);
        var sum = still;
        foreach (var (mass, cutOn) in modes)
        {
            // 1/√(1 − share²) − 1 without cancellation.
            var share = held / cutOn;
            var root = Math.Sqrt(1 - share * share);
            sum += mass * share * share / (root * (1 + root));
        }

        return sum;
    }

    /// <summary>The same at some ω.</summary>
    public RealVector At(RealVector omega)
    {
        var held = Vector.Min(omega, Vector.Create(HeldFrom));
        var sum = Vector.Create(still);
        foreach (var (mass, cutOn) in modes)
        {
            var share = held * (1 / cutOn);
            var square = share * share;
            var root = Vector.SquareRoot(RealVector.One - square);
            sum += mass * square / (root * (RealVector.One + root));
        }

        return sum;
    }
}
