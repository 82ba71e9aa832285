using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Inside;

/// <summary>
/// The field in a segment whose wall runs along the axis, however long it is: U = a·e^(Γy) + b·e^(−Γy) and p = Zc·(a·e^(Γy) − b·e^(−Γy)), y from
/// its far end towards the blown end.
/// </summary>
internal static class StraightField
{
    /// <summary>The state at the near end of a segment from that at its far end, and what its walls take.</summary>
    /// <param name="segment">Straight.</param>
    /// <param name="omega">rad/s.</param>
    /// <param name="far">At its far end.</param>
    /// <param name="impedance">Pa·s/m³, that scales flow against pressure.</param>
    /// <param name="loss">What friction and heat conduction take: ½∫Re Z'·|U|²dy and ½∫Re Y'·|p|²dy.</param>
    public static FieldState Through(
        BoreSegment segment,
        double omega,
        in FieldState far,
        double impedance,
        out WallLoss loss
    )
    {
        var (gas, wall, length) = (segment.Gas, segment.Section.WallAt(0), segment.Length);
        segment.Medium.Wall.At(wall.Radius, FrequencyVector.All(omega), out var h, out var t);
        var area = Math.PI * wall.Radius * wall.Radius;
        var inertance = gas.Density * segment.SeriesFactor(wall) / area;
        var series = Complex.ImaginaryOne * omega * inertance / h.At(0);
        var shunt =
            Complex.ImaginaryOne
            * omega
            * area
            / (gas.Density * gas.SpeedOfSound * gas.SpeedOfSound)
            * t.At(0);
        var gamma = Complex.Sqrt(series * shunt);
        var characteristic = gamma / shunt;
        var (a, b) = (
            0.5 * (far.Flow + far.Pressure / characteristic),
            0.5 * (far.Flow - far.Pressure / characteristic)
        );

        // All over e^(αL), which goes into the scale.
        var (attenuation, phase) = (gamma.Real * length, gamma.Imaginary * length);
        var left = Math.Exp(-2 * attenuation);
        var (forward, backward) = (
            a * Complex.FromPolarCoordinates(1, phase),
            b * Complex.FromPolarCoordinates(left, -phase)
        );
        var scale = far.LogScale + attenuation;
        var grown = length * Mean(-2 * attenuation);
        var own = (a.Real * a.Real + a.Imaginary * a.Imaginary) * grown;
        var other = (b.Real * b.Real + b.Imaginary * b.Imaginary) * left * grown;
        var turned = Complex.FromPolarCoordinates(length * left * Sinc(phase), phase);
        var cross = 2 * (a * Complex.Conjugate(b) * turned).Real;
        var size =
            characteristic.Real * characteristic.Real + characteristic.Imaginary * characteristic.Imaginary;
        loss = new WallLoss(
            0.5 * series.Real * (own + other + cross),
            0.5 * shunt.Real * size * (own + other - cross),
            scale
        );
        return FieldState.Of(characteristic * (forward - backward), forward + backward, scale, impedance);
    }

    // (eˣ − 1)/x.
    private static double Mean(double x) => Math.Abs(x) < 1e-8 ? 1 + 0.5 * x : double.ExpM1(x) / x;

    private static double Sinc(double x) => Math.Abs(x) < 1e-8 ? 1 : Math.Sin(x) / x;
}

/// <summary>What a stretch of wall takes, W for the state of that scale.</summary>
internal readonly record struct WallLoss(double Friction, double Heat, double LogScale);
