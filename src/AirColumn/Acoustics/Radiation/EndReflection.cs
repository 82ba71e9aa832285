using System.Numerics;

namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// What an open end sends back: R = −|R|·exp(−2j·ka·l/a), pressure, in the plane of the end, exp(+jωt).
/// </summary>
/// <param name="LogModulus">ln|R|: |R| itself hides the radiated power at low frequency.</param>
/// <param name="EndCorrection">l/a, end correction over inner radius.</param>
internal readonly record struct EndReflection(double LogModulus, double EndCorrection)
{
    /// <summary>|R|.</summary>
    public double Modulus => Math.Exp(LogModulus);

    /// <summary>Impedance over ρc/S: (1 + R)/(1 − R) = tanh(j·ka·l/a − ln|R|/2), in which nothing cancels.</summary>
    public Complex RelativeImpedance(double ka)
    {
        // tanh(x + jy) = (sinh 2x + j·sin 2y)/(cosh 2x + cos 2y).
        var (sin, cos) = Math.SinCos(2 * ka * EndCorrection);
        return new Complex(Math.Sinh(-LogModulus), sin) / (cos + Math.Cosh(LogModulus));
    }
}
