using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// The modes' pressures and flows at one angular frequency at the joints of a column's pieces, and between them on demand, for a source
/// of 1 at the blown end.
/// </summary>
internal sealed class ModalField
{
    private const double SamePlace = 1e-9; // of the length

    private readonly ModalColumn column;
    private readonly FrequencyVector frequency;
    private readonly double[] starts; // of each piece, m, from the blown end
    private readonly ComplexVector[][] beyond; // H at the near side of each piece; the last one at the far end
    private readonly Complex[][] pressure; // likewise

    /// <summary>For a flow of 1 m³/s into a closed blown end, or a pressure of 1 Pa before an open one.</summary>
    public ModalField(
        ModalColumn column,
        double omega,
        bool isOpen,
        Complex outside,
        CancellationToken cancellationToken
    )
    {
        this.column = column;
        Omega = omega;
        frequency = new FrequencyVector(Vector.Create(omega));
        var pieces = column.Pieces; // from the far end
        var (n, count) = (column.Modes, pieces.Count);
        starts = new double[count + 1];
        beyond = new ComplexVector[count + 1][];
        pressure = new Complex[count + 1][];
        var state = column.EndAt(frequency);
        beyond[count] = [.. state.H];
        for (var i = count - 1; i >= 0; i--)
        {
            cancellationToken.ThrowIfCancellationRequested();
            Piece(i).Carry(state);
            beyond[i] = [.. state.H];
        }

        for (var i = 0; i < count; i++)
        {
            starts[i + 1] = starts[i] + Piece(i).Length;
        }

        pressure[0] = AtSource(isOpen, outside);
        for (var i = 0; i < count; i++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            pressure[i + 1] = Through(Piece(i), beyond[i + 1], pressure[i]);
        }
    }

    public double Omega { get; }

    /// <summary>How many pieces there are, from the blown end.</summary>
    public int Count => starts.Length - 1;

    /// <summary>From where to where a piece reaches, m from the blown end.</summary>
    public (double From, double To) Reach(int piece) => (starts[piece], starts[piece + 1]);

    public ModalPiece Piece(int i) => column.Pieces[column.Pieces.Count - 1 - i];

    /// <summary>Mean pressure and volume flow at a place, m from the blown end; of a step, on its far side.</summary>
    public (Complex Pressure, Complex Flow) At(double x)
    {
        var (p, w) = ModesAt(x, out var piece);
        return (p[0], w[0] / new Complex(0, Omega * column.DensityOf(piece)));
    }

    /// <summary>The same on the near side of a piece; past the last one, at the far end.</summary>
    public (Complex Pressure, Complex Flow) Joint(int piece) =>
        (
            pressure[piece][0],
            Times(beyond[piece], pressure[piece])[0] / new Complex(0, Omega * column.DensityOf(piece))
        );

    /// <summary>½·Re Σ PₙUₙ*, the power that passes the near side of a piece; past the last one, what leaves the far end.</summary>
    public double Power(int piece)
    {
        var (p, w) = (pressure[piece], Times(beyond[piece], pressure[piece]));
        var sum = 0.0;
        for (var n = 0; n < p.Length; n++)
        {
            // Re(P·(W/jωρ)*) = Im(P*W)/(ωρ).
            sum += (Complex.Conjugate(p[n]) * w[n]).Imaginary;
        }

        return 0.5 * sum / (Omega * column.DensityOf(piece));
    }

    /// <summary>What the wall of a piece takes, W: by friction and as heat.</summary>
    public (double Friction, double Heat) Loss(int piece) =>
        Piece(piece)
            .Loss(
                new ModalEnds(
                    pressure[piece],
                    Times(beyond[piece], pressure[piece]),
                    pressure[piece + 1],
                    Times(beyond[piece + 1], pressure[piece + 1])
                ),
                frequency
            );

    private (Complex[] Pressure, Complex[] Flow) ModesAt(double x, out int piece)
    {
        // A place that is a joint but for rounding is the joint, on its far side.
        var same = SamePlace * starts[^1];
        piece = Count;
        while (piece > 0 && starts[piece] > x + same)
        {
            piece--;
        }

        return piece == Count || x - starts[piece] < same
            ? (pressure[piece], Times(beyond[piece], pressure[piece]))
            : Within(piece, x - starts[piece]);
    }

    private (Complex[] Pressure, Complex[] Flow) Within(int piece, double at)
    {
        var (near, far) = Piece(piece).Split(at);
        var state = new ModalState(column.Modes, frequency);
        beyond[piece + 1].CopyTo(state.H.AsSpan());
        far.Carry(state);
        ComplexVector[] here = [.. state.H];
        var p = Through(near, here, pressure[piece]);
        return (p, Times(here, p));
    }

    // The pressures on the far side of a piece from those on its near side, one at a time: what a piece makes of t is the way there.
    private Complex[] Through(ModalPiece piece, ComplexVector[] far, Complex[] near)
    {
        var n = column.Modes;
        var result = new Complex[n];
        for (var m = 0; m < n; m++)
        {
            var state = new ModalState(n, frequency);
            far.CopyTo(state.H.AsSpan());
            state.T[m] = ComplexVector.One;
            piece.Carry(state);
            for (var i = 0; i < n; i++)
            {
                result[m] += state.T[i].At(0) * near[i];
            }
        }

        return result;
    }

    // An even flow over the section at the blown end; its pressure with the air outside an open one is 1 there.
    private Complex[] AtSource(bool isOpen, Complex outside)
    {
        var n = column.Modes;
        var inverse = (ComplexVector[])beyond[0].Clone();
        LaneSymmetric.Invert(inverse, n);
        var flow = new Complex(0, Omega * column.DensityOf(0)); // W of 1 m³/s
        if (isOpen)
        {
            flow /= inverse[0].At(0) * flow + outside;
        }

        var p = new Complex[n];
        for (var i = 0; i < n; i++)
        {
            p[i] = inverse[i * n].At(0) * flow;
        }

        return Complex.IsFinite(p[0])
            ? p
            : throw new ArithmeticException(
                $"At {Require.Show(Omega / (2 * Math.PI), "Hz")} this column, which has no losses, resonates without bound. Ask "
                    + "for a frequency beside it, or give the column losses."
            );
    }

    private static Complex[] Times(ComplexVector[] h, Complex[] p)
    {
        var n = p.Length;
        var w = new Complex[n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                w[i] += h[i * n + j].At(0) * p[j];
            }
        }

        return w;
    }
}
