using System.Numerics;
using AirColumn.Acoustics.Line;

namespace AirColumn.Tests.Oracle;

/// <summary>
/// A column one frequency at a time by another method than the engine's: scalar Magnus steps of sixth order in each segment with error
/// control, the losses from continued fractions.
/// </summary>
internal static class MagnusColumn
{
    /// <summary>Z at the blown end at ω, rad/s, the air outside an open one included.</summary>
    public static Complex InputImpedance(this Column column, double omega)
    {
        var (p, u, _) = column.InputState(omega);
        return p / u;
    }

    /// <summary>Pressure and flow at the blown end from the fixed state of the far end, as (p, U)·exp(LogScale).</summary>
    public static (Complex Pressure, Complex Flow, double LogScale) InputState(
        this Column column,
        double omega
    )
    {
        if (column.Modal() is not null)
        {
            return column.Answers().At(omega / (2 * Math.PI));
        }

        var model = column.Model;
        var (p, u, log) = StateAtInlet(
            model.Way,
            model.End,
            model.Impedance,
            column.Options.RelativeTolerance,
            omega
        );
        return (p + model.Blown.Impedance(omega) * u, u, log);
    }

    private static (Complex Pressure, Complex Flow, double LogScale) StateAtInlet(
        LinePart[] parts,
        Termination end,
        double impedance,
        double tolerance,
        double omega
    )
    {
        var (p, u) = end.At(omega);
        var logScale = 0.0;
        for (var i = parts.Length - 1; i >= 0; i--)
        {
            (p, u, var log) = Carry(parts[i], p, u, tolerance, omega);
            var size = Math.Max(Complex.Abs(p), impedance * Complex.Abs(u));
            (p, u) = (p / size, u / size);
            logScale += log + Math.Log(size);
        }

        return (p, u, logScale);
    }

    private static (Complex Pressure, Complex Flow, double LogScale) Carry(
        LinePart part,
        Complex p,
        Complex u,
        double tolerance,
        double omega
    )
    {
        switch (part)
        {
            case BoreSegment segment:
                var (m, log) = new MagnusSegment(segment, tolerance).At(omega);
                return (m.A * p + m.B * u, m.C * p + m.D * u, log);
            case SeriesMass mass:
                return (p + new Complex(0, omega * mass.InertanceAt(omega)) * u, u, 0);
            case SideColumn side:
                var arm = new Complex(0, omega * side.SeriesMass / 2);
                var (branchP, branchU, branchLog) = StateAtInlet(
                    side.Parts,
                    side.End,
                    side.Impedance,
                    tolerance,
                    omega
                );
                var middle = p + arm * u;
                var flow = branchP * u + branchU * middle;
                return (branchP * middle + arm * flow, flow, branchLog);
            default:
                throw new ArgumentException($"Unknown part {part}.", nameof(part));
        }
    }
}
