using System.Numerics;
using AirColumn.Acoustics.Elements;

namespace AirColumn.Acoustics.Inside;

/// <summary>
/// Pressure and flow at every joint of a column at one angular frequency, from the far end, and between the joints on demand;
/// in terms of the source at the blown end.
/// </summary>
internal sealed class ColumnField
{
    private readonly Column column;
    private readonly FieldState[] joints; // joints[i] is on the near side of element i; the last one at the far end
    private readonly Complex source;
    private readonly double sourceLog;

    public ColumnField(Column column, double omega)
    {
        this.column = column;
        Omega = omega;
        var elements = column.Elements;
        joints = new FieldState[elements.Length + 1];
        var (p, u) = column.Load.At(omega);
        joints[^1] = new FieldState(p, u, 0);
        for (var i = elements.Length - 1; i >= 0; i--)
        {
            joints[i] = joints[i + 1].Through(elements[i].At(omega), column.CharacteristicImpedance);
        }

        var blown = joints[0];
        sourceLog = blown.LogScale;
        source = column.Options.BlownEnd.IsOpen
            ? blown.Pressure + column.Blown.Impedance(omega) * blown.Flow
            : blown.Flow;
    }

    public double Omega { get; }

    /// <summary>On the near side of element <paramref name="i"/>; past the last one, at the far end.</summary>
    public FieldState Joint(int i) => joints[i];

    /// <summary>Inside section element <paramref name="i"/>, m from its inlet.</summary>
    public FieldState Within(int i, double from)
    {
        var element = (SectionElement)column.Elements[i];
        return Before(joints[i + 1], element, from, element.Section.LengthMetres);
    }

    /// <summary>At one place of a section element, m from its inlet, from the state at a later one.</summary>
    public FieldState Before(in FieldState state, SectionElement element, double from, double to) =>
        state.Through(element.Between(from, to, Omega), column.CharacteristicImpedance);

    /// <summary>
    /// Pressure and flow for a source of 1: m³/s into a closed blown end, Pa outside an open one and its correction.
    /// </summary>
    public (Complex Pressure, Complex Flow) PerSource(in FieldState state)
    {
        var scale = Complex.Exp(state.LogScale - sourceLog) / source;
        var (p, u) = (state.Pressure * scale, state.Flow * scale);
        return Complex.IsFinite(p) && Complex.IsFinite(u)
            ? (p, u)
            : throw new ArithmeticException(
                $"At {Require.Show(Omega / (2 * Math.PI), "Hz")} the column without any losses resonates without bound; ask "
                    + "beside that frequency or with losses."
            );
    }

    /// <summary>½·Re(p·U*), the power that passes towards the far end, W for that source.</summary>
    public double Power(in FieldState state)
    {
        var (p, u) = PerSource(state);
        return 0.5 * (p.Real * u.Real + p.Imaginary * u.Imaginary);
    }
}

/// <summary>(p, U)·exp(LogScale): kept near 1, so that no attenuation overflows.</summary>
internal readonly record struct FieldState(Complex Pressure, Complex Flow, double LogScale)
{
    /// <summary>The state on the near side of a two-port that has this one on its far side.</summary>
    public FieldState Through(in ScaledMatrix twoPort, double impedance)
    {
        var (m, log) = twoPort;
        var (p, u) = (m.A * Pressure + m.B * Flow, m.C * Pressure + m.D * Flow);
        var size = Math.Max(Complex.Abs(p), impedance * Complex.Abs(u));
        return new FieldState(p / size, u / size, LogScale + log + Math.Log(size));
    }
}
