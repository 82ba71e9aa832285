using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// A part that carries pressure and flow towards the blown end, and adds what each parameter of it does to
/// q = U·δp − p·δU there.
/// </summary>
/// <remarks>
/// A reciprocal two-port keeps U·δp − p·δU of any two solutions. What is added anywhere therefore arrives at the blown end as it is,
/// where δZ = q/U²: the gradient needs no way back. A series impedance adds δZ'·U², a shunt admittance −δY'·p². Where a part multiplies
/// the state by a factor, q is multiplied by its square.
/// </remarks>
internal abstract class PartSensitivity
{
    /// <summary>Carries on.</summary>
    /// <param name="frequency">In the band that it was prepared for.</param>
    /// <param name="state">On the side of the far end, then on that of the blown end.</param>
    /// <param name="q">For each parameter; added to.</param>
    public abstract void Carry(in FrequencyVector frequency, ref WaveState state, Span<ComplexVector> q);
}
