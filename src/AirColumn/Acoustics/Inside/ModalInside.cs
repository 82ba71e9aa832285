using System.Numerics;
using AirColumn.Acoustics.Multimodal;
using UnitsNet;

namespace AirColumn.Acoustics.Inside;

/// <summary>What <see cref="InsideColumn"/> answers, for a column of several modes.</summary>
internal static class ModalInside
{
    public static ModalField FieldAt(Column column, double omega, CancellationToken cancellationToken) =>
        new(
            column.Modal(cancellationToken)!,
            omega,
            column.Options.BlownEnd.IsOpen,
            column.Model.Blown.Impedance(omega),
            cancellationToken
        );

    public static (Complex[] Pressure, Complex[] Flow) At(
        Column column,
        double omega,
        double[] metres,
        CancellationToken cancellationToken
    )
    {
        var field = FieldAt(column, omega, cancellationToken);
        var (pressure, flow) = (new Complex[metres.Length], new Complex[metres.Length]);
        for (var i = 0; i < metres.Length; i++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            (pressure[i], flow[i]) = field.At(metres[i]);
        }

        return (pressure, flow);
    }

    public static PowerBalance Power(Column column, Frequency frequency, CancellationToken cancellationToken)
    {
        var field = FieldAt(column, column.Omega(frequency), cancellationToken);
        var (viscous, thermal, side) = (0.0, 0.0, 0.0);
        for (var i = 0; i < field.Count; i++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (field.Piece(i) is SidePiece)
            {
                side += field.Power(i) - field.Power(i + 1);
            }
            else
            {
                var (friction, heat) = field.Loss(i);
                viscous += friction;
                thermal += heat;
            }
        }

        return new PowerBalance(frequency, field.Power(0), field.Power(field.Count), viscous, thermal, side);
    }

    public static TransferFunction Transfer(
        Column column,
        Frequency frequency,
        CancellationToken cancellationToken
    )
    {
        var field = FieldAt(column, column.Omega(frequency), cancellationToken);
        var (near, far) = (field.Joint(0), field.Joint(field.Count));
        return new TransferFunction(
            far.Pressure / near.Pressure,
            far.Flow / near.Flow,
            far.Pressure / near.Flow,
            field.Power(field.Count) / field.Power(0)
        );
    }
}
