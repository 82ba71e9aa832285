using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// An element that carries pressure and flow towards the blown end, and adds what each parameter of it does to
/// q = U·δp − p·δU there.
/// </summary>
/// <remarks>
/// A reciprocal two-port keeps U·δp − p·δU of any two solutions. What is added anywhere therefore arrives at the blown end as it is,
/// where δZ = q/U²: the gradient needs no way back. A series impedance adds δZ'·U², a shunt admittance −δY'·p².
/// </remarks>
internal abstract class ElementSensitivity
{
    /// <summary>Carries on.</summary>
    /// <param name="frequencies">Eight of them.</param>
    /// <param name="p">Pressure on the side of the far end, then on that of the blown end.</param>
    /// <param name="u">Flow, likewise.</param>
    /// <param name="q">For each parameter; added to.</param>
    public abstract void Carry(
        in FrequencyLanes frequencies,
        ref ComplexLanes p,
        ref ComplexLanes u,
        Span<ComplexLanes> q
    );
}
