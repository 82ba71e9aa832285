using System.Numerics;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Elements;

/// <summary>Elements one after the other, with what ends them.</summary>
internal static class Chain
{
    /// <summary>
    /// Pressure and flow at the first element at ω, rad/s, as (p, U)·exp(LogScale) from the fixed state of the end: the state
    /// kept near 1 against <paramref name="impedance"/>, its scale apart, so that no attenuation overflows.
    /// </summary>
    public static (Complex Pressure, Complex Flow, double LogScale) StateAtInlet(
        Element[] elements,
        FarEndLoad load,
        double impedance,
        double omega
    )
    {
        var (p, u) = load.At(omega);
        var logScale = 0.0;
        for (var i = elements.Length - 1; i >= 0; i--)
        {
            (p, u, var log) = elements[i].Carry(omega, p, u);
            var size = Math.Max(Complex.Abs(p), impedance * Complex.Abs(u));
            (p, u) = (p / size, u / size);
            logScale += log + Math.Log(size);
        }

        return (p, u, logScale);
    }
}
