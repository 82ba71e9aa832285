using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Multimodal;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>Pressure, flow and q = U·δp − p·δU for each parameter at the blown end of a column.</summary>
internal abstract class StateSensitivity
{
    /// <summary>Prepares it.</summary>
    /// <exception cref="ArgumentException">The column has not one of the parameters.</exception>
    public static StateSensitivity Of(Column column, IReadOnlyList<ColumnParameter> parameters) =>
        column.Modal is null
            ? new ColumnSensitivity(column, parameters)
            : new ModalSensitivity(column, parameters);

    /// <summary>
    /// Computes them at eight frequencies: for a fixed state at the far end (p, U)·exp(LogScale) and q·exp(2·LogScale), smooth in
    /// frequency whatever resonates.
    /// </summary>
    public abstract (ComplexLanes Pressure, ComplexLanes Flow, double LogScale) At(
        in FrequencyLanes frequencies,
        Span<ComplexLanes> q
    );
}
