using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>An open hole as <see cref="HeardBeyond"/> passed it.</summary>
/// <param name="Wave">Pressure and flow beyond it, for a = 1.</param>
/// <param name="OverW">1/W of it.</param>
/// <param name="Feet">What arrives at its foot.</param>
/// <param name="R">What its mouth hears from beyond for a = 1.</param>
/// <param name="X">What its mouth hears from beyond of its own flow.</param>
/// <param name="Beta">What drives its flow.</param>
/// <param name="Pivot">What divides that.</param>
internal readonly record struct PassedHole(
    WaveState Wave,
    ComplexVector OverW,
    HoleFeet Feet,
    ComplexVector R,
    ComplexVector X,
    ComplexVector Beta,
    ComplexVector Pivot
)
{
    /// <summary>What passes at it.</summary>
    /// <param name="a">Of the wave beyond.</param>
    /// <param name="gamma">Σ γₘ·Uₘ over the openings on this side.</param>
    /// <param name="direct">The pressure that these put on its mouth, directly and by way of those beyond.</param>
    /// <param name="impedance">Z, Pa·s/m³.</param>
    public Mouth MouthFor(
        in ComplexVector a,
        in ComplexVector gamma,
        in ComplexVector direct,
        double impedance
    )
    {
        var own = (Beta * a + gamma) / Pivot;
        var flow = Feet.Flow * own;
        var heard = R * a + X * flow + direct;
        // Z·Σ tₘ·Uₘ, this one among them.
        var sent = gamma + Feet.Heard.P * direct + impedance * (R * OverW * flow);
        return new Mouth(
            flow,
            heard,
            new WaveState(Wave.P * a + sent, Wave.U * a - (1 / impedance) * sent),
            Feet.Own.U * own + Feet.Heard.U * heard
        );
    }
}

/// <summary>Pressure and flow at the foot of an open hole.</summary>
/// <param name="Own">For the mouth's own wave, as <see cref="SidePropagator"/> scales it.</param>
/// <param name="Flow">The flow out of the mouth in that wave.</param>
/// <param name="Heard">For a pressure of 1 Pa put on the mouth from outside, no flow passing there.</param>
internal readonly record struct HoleFeet(WaveState Own, RealVector Flow, WaveState Heard);
