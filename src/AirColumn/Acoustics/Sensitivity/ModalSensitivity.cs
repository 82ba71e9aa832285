using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Multimodal;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// Gradients of a column of several modes by differences of fourth order: four columns beside it for each parameter. Pressure and flow
/// for a given wave at the far end change smoothly with it, resonance or not.
/// </summary>
internal sealed class ModalSensitivity : StateSensitivity
{
    // Of the step that is right for walls and masses by themselves: waves turn faster than those change.
    private const double Finer = 0.25;

    private static readonly (int[] Offsets, double[] Weights)[] Rules =
    [
        ([-2, -1, 1, 2], [1, -8, 8, -1]),
        ([0, 1, 2, 3, 4], [-25, 48, -36, 16, -3]),
        ([0, -1, -2, -3, -4], [25, -48, 36, -16, 3]),
    ];

    private readonly ModalColumn self;
    private readonly (ModalColumn[] Columns, double[] Weights)[] parameters;

    public ModalSensitivity(
        Column column,
        ModalColumn modes,
        IReadOnlyList<ColumnParameter> parameters,
        CancellationToken cancellationToken
    )
    {
        self = modes;
        // All with as many modes: their number must not change with the parameter.
        var parts = column.Parts with
        {
            Options = column.Options with { Modes = self.Modes, Wavefronts = Wavefronts.Multimodal },
        };
        this.parameters =
        [
            .. parameters.Select(parameter => Around(column, parts, parameter, cancellationToken)),
        ];
    }

    /// <summary>Nothing depends on the band.</summary>
    public override SensitivityPath Prepare(in Band band, CancellationToken cancellationToken) =>
        new Path(this);

    private WaveState At(
        in FrequencyVector frequencies,
        Span<ComplexVector> q,
        CancellationToken cancellationToken
    )
    {
        var (p, u) = self.InputAt(frequencies, cancellationToken);
        for (var n = 0; n < parameters.Length; n++)
        {
            var (columns, weights) = parameters[n];
            var (pressure, flow) = (ComplexVector.Zero, ComplexVector.Zero);
            for (var i = 0; i < columns.Length; i++)
            {
                var (otherP, otherU) = columns[i].InputAt(frequencies, cancellationToken);
                pressure += weights[i] * otherP;
                flow += weights[i] * otherU;
            }

            q[n] = u * pressure - p * flow;
        }

        return new WaveState(p, u);
    }

    private static (ModalColumn[] Columns, double[] Weights) Around(
        Column column,
        in ColumnParts parts,
        ColumnParameter parameter,
        CancellationToken cancellationToken
    )
    {
        var value = parameter.Of(parts);
        var step = Finer * parameter.StepAt(parts);
        for (var attempt = 0; step > 0 && attempt < 3; attempt++, step /= 10)
        {
            foreach (var (offsets, weights) in Rules)
            {
                if (Beside(column, parts, parameter, value, step, offsets, cancellationToken) is { } columns)
                {
                    return (columns, [.. weights.Select(weight => weight / (12 * step))]);
                }
            }
        }

        throw new ArgumentException(
            $"The {parameter} is {parameter.Show(value)}, too near the limits of its range for a derivative. Give it another "
                + "value or leave it out.",
            nameof(parameter)
        );
    }

    private static ModalColumn[]? Beside(
        Column column,
        in ColumnParts parts,
        ColumnParameter parameter,
        double value,
        double step,
        int[] offsets,
        CancellationToken cancellationToken
    )
    {
        var columns = new ModalColumn[offsets.Length];
        for (var i = 0; i < columns.Length; i++)
        {
            try
            {
                var beside = column.With(parameter.With(parts, value + offsets[i] * step));
                columns[i] = beside.Modal(cancellationToken)!;
            }
            catch (ArgumentException)
            {
                return null;
            }
        }

        return columns;
    }

    private sealed class Path(ModalSensitivity owner) : SensitivityPath
    {
        public override WaveState At(
            in FrequencyVector frequencies,
            Span<ComplexVector> q,
            CancellationToken cancellationToken
        ) => owner.At(frequencies, q, cancellationToken);
    }
}
