using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>Pressure, flow and q = U·δp − p·δU for each parameter at the blown end of a column.</summary>
internal abstract class StateSensitivity
{
    /// <summary>
    /// Computes them at some frequencies: for a fixed state at the far end (p, U)·exp(Log) and q·exp(2·Log), up to a factor that is smooth
    /// in frequency, whatever resonates.
    /// </summary>
    public abstract WaveState At(
        in FrequencyVector frequencies,
        Span<ComplexVector> q,
        CancellationToken cancellationToken
    );
}
