using System.Numerics;

namespace AirColumn.Acoustics.Elements;

/// <summary>One compiled piece of a column: a two-port at any angular frequency.</summary>
internal abstract class Element
{
    /// <summary>The two-port at ω, rad/s.</summary>
    public abstract ScaledMatrix At(double omega);

    /// <summary>
    /// Pressure and flow on the side of the blown end, as (p, U)·exp(LogScale), from those on the side of the far end; up to
    /// a common factor, which an element may choose so that both are free of poles in ω.
    /// </summary>
    public virtual (Complex Pressure, Complex Flow, double LogScale) Carry(double omega, Complex p, Complex u)
    {
        var (m, log) = At(omega);
        return (m.A * p + m.B * u, m.C * p + m.D * u, log);
    }
}

/// <summary>
/// A two-port as exp(<paramref name="LogScale"/>)·<paramref name="Matrix"/>, so that strong attenuation in a long
/// narrow bore cannot overflow.
/// </summary>
internal readonly record struct ScaledMatrix(TransferMatrix Matrix, double LogScale)
{
    public static ScaledMatrix operator *(ScaledMatrix left, ScaledMatrix right) =>
        new(left.Matrix * right.Matrix, left.LogScale + right.LogScale);
}

/// <summary>A lumped air mass in series, kg/m⁴ at ω: what a step of diameter adds.</summary>
internal sealed class InertanceElement(Func<double, double> inertance, double? corner = null) : Element
{
    public InertanceElement(double inertance)
        : this(_ => inertance) { }

    /// <summary>ω where the mass has a corner as a function of frequency, if it has one.</summary>
    public double? Corner => corner;

    /// <summary>Acoustic mass, kg/m⁴, at ω.</summary>
    public double InertanceAt(double omega) => inertance(omega);

    public override ScaledMatrix At(double omega) =>
        new(new TransferMatrix(1, new Complex(0, omega * inertance(omega)), 0, 1), 0);
}
