using Complex = System.Numerics.Complex;

namespace AirColumn.Tables;

/// <summary>
/// The sound in a straight pipe of radius 1 behind its mouth, where the plane wave has the velocity 1 and the impedance z; pressures are
/// over ρc.
/// </summary>
/// <param name="Ka">Wavenumber.</param>
/// <param name="Impedance">z, over ρc/S.</param>
/// <param name="Evanescent">Each mode that dies away from the mouth: its pressure at the edge, and its decay per radius.</param>
internal sealed record MouthField(
    double Ka,
    Complex Impedance,
    IReadOnlyList<(Complex Pressure, double Decay)> Evanescent
)
{
    /// <summary>ln|R|: |R|² = 1 − 4·Re z/|z + 1|².</summary>
    public double LogReflection
    {
        get
        {
            var size = (Impedance + 1).Magnitude;
            return 0.5 * double.LogP1(-4 * Impedance.Real / (size * size));
        }
    }

    /// <summary>l/a, R = −|R|·exp(−2j·ka·l/a).</summary>
    public double EndCorrection => -((1 - Impedance) / (1 + Impedance)).Phase / (2 * Ka);

    /// <summary>
    /// ∫[(v² + p²) − (v₀² + p₀²)]·sⁿ ds along the wall behind the mouth, s the distance, v₀ and p₀ the plane wave, v and p the whole.
    /// </summary>
    public Complex WallMoment(int n)
    {
        // v₀ = cos ks + jz·sin ks and p₀ = z·cos ks + j·sin ks as sums of exp(∓jks): shares (1 ∓ z)/2 and (z ∓ 1)/2.
        var jk = new Complex(0, Ka);
        Complex sum = 0;
        foreach (var (pressure, decay) in Evanescent)
        {
            var velocity = -decay / jk * pressure;
            sum += (velocity * (1 - Impedance) + pressure * (Impedance - 1)) * Moment(decay + jk, n);
            sum += (velocity + pressure) * (1 + Impedance) * Moment(decay - jk, n);
            foreach (var (other, otherDecay) in Evanescent)
            {
                sum += (1 + decay / jk * otherDecay / jk) * pressure * other * Moment(decay + otherDecay, n);
            }
        }

        return sum;
    }

    // ∫exp(−rate·s)·sⁿ ds from 0 to ∞, n 1 or 2.
    private static Complex Moment(Complex rate, int n) => n / Complex.Pow(rate, n + 1);
}
