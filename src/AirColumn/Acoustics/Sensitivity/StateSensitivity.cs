using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>What the parameters of a column do to its waves, to be prepared for a band of frequencies.</summary>
internal abstract class StateSensitivity
{
    /// <summary>Prepares it for a band.</summary>
    public abstract SensitivityPath Prepare(in Band band, CancellationToken cancellationToken);
}

/// <summary>Pressure, flow and q = U·δp − p·δU for each parameter at the blown end of a column, prepared for a band of frequencies.</summary>
internal abstract class SensitivityPath
{
    /// <summary>
    /// Computes them at some frequencies: for a fixed state at the far end (p, U)·exp(Log) and q·exp(2·Log), up to a factor that is smooth
    /// in frequency, whatever resonates.
    /// </summary>
    /// <param name="frequencies">In the band.</param>
    /// <param name="q">Receives q of each parameter.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public abstract WaveState At(
        in FrequencyVector frequencies,
        Span<ComplexVector> q,
        CancellationToken cancellationToken
    );
}
