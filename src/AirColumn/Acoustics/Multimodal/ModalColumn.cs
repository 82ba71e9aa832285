using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>A column compiled for a number of radial modes. Safe to share between threads.</summary>
internal sealed class ModalColumn
{
    private readonly Column column;
    private readonly ModalPiece[] pieces; // from the far end
    private readonly double[] densities; // on their near sides
    private readonly double farDensity;
    private readonly ModalEnd end;
    private readonly GasConstants gas; // at the blown end

    public ModalColumn(Column column, int modes)
    {
        this.column = column;
        Modes = modes;
        var basis = RadialBasis.Of(modes);
        var builder = new ModalBuilder(basis, column);
        farDensity = builder.Gas.Density;
        pieces = builder.Pieces();
        densities = builder.Densities;
        gas = builder.Gas;
        end = new ModalEnd(
            basis,
            column.Bore,
            column.Load,
            column.Elements.OfType<SectionElement>().Last().Gas,
            column.Compiled.Mouths
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
    public ModalState EndAt(in FrequencyLanes frequencies)
    {
        var state = new ModalState(Modes, frequencies);
        end.Start(state);
        return state;
    }

    /// <summary>H and t at the blown end.</summary>
    public ModalState StateAt(in FrequencyLanes frequencies)
    {
        var state = EndAt(frequencies);
        foreach (var piece in pieces)
        {
            piece.Carry(state);
        }

        return state;
    }

    /// <summary>The same at one ω, rad/s, as (p, U)·exp(LogScale), both near 1.</summary>
    public (Complex Pressure, Complex Flow, double LogScale) InputAt(double omega)
    {
        var (pressure, flow) = InputAt(new FrequencyLanes(Vector512.Create(omega)));
        var (p, u) = (pressure.Lane(0), flow.Lane(0));
        var size = Math.Max(Complex.Abs(p), column.CharacteristicImpedance * Complex.Abs(u));
        return (p / size, u / size, Math.Log(size));
    }

    /// <summary>
    /// Pressure and flow at the blown end, with the air outside an open one, for a plane wave of 1 Pa that goes out at the far end. The flow
    /// there is even over the section, as from a piston: pressure is its mean.
    /// </summary>
    public (ComplexLanes Pressure, ComplexLanes Flow) InputAt(in FrequencyLanes frequencies)
    {
        var state = StateAt(frequencies);
        var n = Modes;
        LaneSymmetric.Invert(state.H, n);
        var arrives = ComplexLanes.Zero;
        for (var i = 0; i < n; i++)
        {
            arrives = ComplexLanes.MultiplyAdd(state.T[i], state.H[i], arrives);
        }

        var scale = arrives.Inverse();
        var omega = frequencies.Omega;
        // U = W/(jωρ).
        var flow =
            scale * new ComplexLanes(Vector512<double>.Zero, Vector512.Create(-1 / gas.Density) / omega);
        var outside = ComplexLanes.Each(i => column.Blown.Impedance(omega.GetElement(i)));
        return (ComplexLanes.MultiplyAdd(outside, flow, scale * state.H[0]), flow);
    }
}
