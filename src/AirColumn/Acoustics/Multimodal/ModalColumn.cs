using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>A column compiled for a number of radial modes. Safe to share between threads.</summary>
internal sealed class ModalColumn
{
    private readonly ColumnModel column;
    private readonly ModalPiece[] pieces; // from the far end
    private readonly double[] densities; // on their near sides
    private readonly double farDensity;
    private readonly ModalEnd end;
    private readonly GasConstants gas; // at the blown end

    /// <summary>Compiles it.</summary>
    /// <param name="column">The column.</param>
    /// <param name="modes">How many, the plane one included.</param>
    /// <param name="mouths">Where fields of mouths are kept.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public ModalColumn(ColumnModel column, int modes, MouthStore mouths, CancellationToken cancellationToken)
    {
        this.column = column;
        Modes = modes;
        var basis = mouths.Bases.Of(modes);
        var builder = new ModalBuilder(mouths.Bases, basis, column);
        farDensity = builder.Gas.Density;
        pieces = builder.Pieces(cancellationToken);
        densities = builder.Densities;
        gas = builder.Gas;
        end = new ModalEnd(
            basis,
            column.Bore,
            column.End,
            column.Way.OfType<BoreSegment>().Last().Gas,
            mouths,
            cancellationToken
        );
    }

    /// <summary>How many modes are carried, the plane one included.</summary>
    public int Modes { get; }

    /// <summary>From the far end.</summary>
    public IReadOnlyList<ModalPiece> Pieces => pieces;

    /// <summary>At the blown end, m/s.</summary>
    public double SpeedOfSound => gas.SpeedOfSound;

    /// <summary>On the near side of a piece, counted from the blown end; past the last one, at the far end: kg/m³.</summary>
    public double DensityOf(int piece) =>
        piece == pieces.Length ? farDensity : densities[pieces.Length - 1 - piece];

    /// <summary>H and t at the far end.</summary>
    public ModalState EndAt(in FrequencyVector frequencies)
    {
        var state = new ModalState(Modes, frequencies);
        end.Start(state);
        return state;
    }

    /// <summary>H and t at the blown end.</summary>
    public ModalState StateAt(in FrequencyVector frequencies, CancellationToken cancellationToken)
    {
        var state = EndAt(frequencies);
        foreach (var piece in pieces)
        {
            cancellationToken.ThrowIfCancellationRequested();
            piece.Carry(state);
        }

        return state;
    }

    /// <summary>
    /// Pressure and flow at the blown end, with the air outside an open one, for a plane wave of 1 Pa that goes out at the far end. The flow
    /// there is even over the section, as from a piston: pressure is its mean.
    /// </summary>
    public (ComplexVector Pressure, ComplexVector Flow) InputAt(
        in FrequencyVector frequencies,
        CancellationToken cancellationToken = default
    )
    {
        var state = StateAt(frequencies, cancellationToken);
        var n = Modes;
        LaneSymmetric.Invert(state.H, n);
        var arrives = ComplexVector.Zero;
        for (var i = 0; i < n; i++)
        {
            arrives = ComplexVector.MultiplyAdd(state.T[i], state.H[i], arrives);
        }

        var scale = arrives.Inverse();
        var omega = frequencies.Omega;
        // U = W/(jωρ).
        var flow = scale * new ComplexVector(RealVector.Zero, Vector.Create(-1 / gas.Density) / omega);
        var outside = column.Blown.Impedance(omega);
        return (ComplexVector.MultiplyAdd(outside, flow, scale * state.H[0]), flow);
    }
}
