using System.Numerics;

namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// What an open end sends back: R = −|R|·exp(−2j·ka·l/a), pressure, in the plane of the end, exp(+jωt).
/// </summary>
/// <param name="Modulus">|R|.</param>
/// <param name="EndCorrection">l/a, end correction over inner radius.</param>
internal readonly record struct EndReflection(double Modulus, double EndCorrection)
{
    /// <summary>Impedance over ρc/S: (1 + R)/(1 − R).</summary>
    public Complex RelativeImpedance(double ka)
    {
        var phase = 2 * ka * EndCorrection;
        var (sin, cos) = Math.SinCos(phase);
        var r = -Modulus * new Complex(cos, -sin);
        // 1 + R without cancellation at low frequency: (1 − |R|) + |R|(1 − e^(−jφ)).
        var half = Math.Sin(phase / 2);
        var onePlusR = new Complex(1 - Modulus + 2 * Modulus * half * half, Modulus * sin);
        return onePlusR / (1 - r);
    }
}
