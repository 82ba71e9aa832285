using System.Numerics;
using MathNet.Numerics;

namespace AirColumn.Tests.Acoustics;

/// <summary>
/// Input impedance as a textbook would program it (chaigne2016, ch. 5): cylinders with boundary-layer losses, Bessel
/// functions from a general-purpose library, products of 2×2 matrices. Slow and plain: a check of the engine, and what it
/// is timed against.
/// </summary>
internal sealed class PlainColumn(
    double c,
    double density,
    double viscosity,
    double conductivity,
    double heatCapacity,
    double gamma
)
{
    /// <summary>Z at the blown end of cylinders (radius and length, m) closed at the far end.</summary>
    public Complex ClosedImpedance(Complex hertz, IReadOnlyList<(double Radius, double Length)> cylinders)
    {
        var omega = 2 * Math.PI * hertz;
        var (a, b, cc, d) = (Complex.One, Complex.Zero, Complex.Zero, Complex.One);
        foreach (var (radius, length) in cylinders)
        {
            var area = Math.PI * radius * radius;
            var minusJ = -Complex.ImaginaryOne;
            var fv = F(radius * Complex.Sqrt(minusJ * omega * density / viscosity));
            var ft = F(radius * Complex.Sqrt(minusJ * omega * density * heatCapacity / conductivity));
            var series = Complex.ImaginaryOne * omega * density / area / (1 - fv);
            var shunt = Complex.ImaginaryOne * omega * area / (density * c * c) * (1 + (gamma - 1) * ft);
            var propagation = Complex.Sqrt(series * shunt);
            var characteristic = Complex.Sqrt(series / shunt);
            var (cosh, sinh) = (Complex.Cosh(propagation * length), Complex.Sinh(propagation * length));
            (a, b, cc, d) = (
                a * cosh + b * sinh / characteristic,
                a * characteristic * sinh + b * cosh,
                cc * cosh + d * sinh / characteristic,
                cc * characteristic * sinh + d * cosh
            );
        }

        return a / cc;
    }

    // Exponentially scaled, or they overflow: J(x)·exp(−|Im x|).
    private static Complex F(Complex x) =>
        2 * SpecialFunctions.BesselJScaled(1, x) / (x * SpecialFunctions.BesselJScaled(0, x));
}
