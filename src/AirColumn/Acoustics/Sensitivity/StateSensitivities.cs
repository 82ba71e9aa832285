namespace AirColumn.Acoustics.Sensitivity;

/// <summary>The sensitivity that fits a column's waves.</summary>
internal static class StateSensitivities
{
    /// <summary>Prepares it.</summary>
    /// <exception cref="ArgumentException">The column has not one of the parameters.</exception>
    public static StateSensitivity Of(
        Column column,
        IReadOnlyList<ColumnParameter> parameters,
        CancellationToken cancellationToken
    ) =>
        column.Modal(cancellationToken) is { } modes
            ? new ModalSensitivity(column, modes, parameters, cancellationToken)
            : new PlaneSensitivity(column.Model, parameters, cancellationToken);
}
