using System.Numerics;
using System.Runtime.CompilerServices;

namespace AirColumn.Acoustics.Vectors;

/// <summary>Angular frequencies side by side, rad/s, with the powers of them that waves need.</summary>
internal readonly struct FrequencyVector
{
    public FrequencyVector(RealVector omega)
    {
        Omega = omega;
        Root = Vector.SquareRoot(omega);
        InverseRoot = RealVector.One / Root;
    }

    /// <summary>ω.</summary>
    public readonly RealVector Omega;

    /// <summary>√ω.</summary>
    public readonly RealVector Root;

    /// <summary>1/√ω.</summary>
    public readonly RealVector InverseRoot;

    /// <summary>The smallest ω.</summary>
    public double Lowest => RealVectors.Smallest(Omega);

    /// <summary>The largest ω.</summary>
    public double Highest => RealVectors.Largest(Omega);

    /// <summary>The same frequency everywhere, rad/s.</summary>
    public static FrequencyVector All(double omega) => new(Vector.Create(omega));

    /// <summary>Frequencies in Hz; the last of them again where there are fewer than lie side by side.</summary>
    public static FrequencyVector OfHertz(ReadOnlySpan<double> hertz)
    {
        if (hertz.Length >= RealVectors.Count)
        {
            return new FrequencyVector(2 * Math.PI * Vector.Create(hertz));
        }

        Span<double> omega = stackalloc double[RealVectors.Count];
        for (var i = 0; i < omega.Length; i++)
        {
            omega[i] = 2 * Math.PI * hertz[Math.Min(i, hertz.Length - 1)];
        }

        return new FrequencyVector(Vector.Create<double>(omega));
    }

    /// <summary>k = ω/c, 1/m.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public RealVector Wavenumber(double speedOfSound) => Omega * (1 / speedOfSound);

    /// <summary>1/k, m.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public RealVector InverseWavenumber(double speedOfSound) => speedOfSound * (InverseRoot * InverseRoot);
}
