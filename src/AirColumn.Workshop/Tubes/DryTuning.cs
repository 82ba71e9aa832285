using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>The note that a tube should sound while its joints are dry, so that it is in tune when they are pushed home. Immutable.</summary>
/// <param name="Fit">The dry tube.</param>
/// <param name="CentsToHome">The rise of the first resonance from dry to home, cents.</param>
/// <param name="StandardDeviationCents">The standard deviation of that rise, cents.</param>
/// <param name="Target">The note to trim to while the joints are dry.</param>
public sealed record DryTuning(
    DryFit Fit,
    double CentsToHome,
    double StandardDeviationCents,
    Frequency Target
)
{
    /// <summary>Half the 95 % range of <see cref="CentsToHome"/>.</summary>
    public double PlusMinusCents => 1.96 * StandardDeviationCents;

    /// <summary>Cents per millimetre of the distance by which all pipes together stop short; 0 if they reach home.</summary>
    public double CentsPerMillimetre => Fit.InAll > Length.Zero ? CentsToHome / Fit.InAll.Millimeters : 0;
}
