using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// Pressure, Pa, and volume flow towards the far end, m³/s, at one place: (P, U)·exp(Log), for a fixed state at the far end and up to
/// a factor that is smooth in frequency and does not vanish. Undivided they have no poles, whatever resonates.
/// </summary>
internal struct WaveState
{
    // Beyond these a state that is asked for directly is brought back near 1.
    private const double Largest = 1e100;
    private const double Smallest = 1e-100;

    public ComplexVector P;
    public ComplexVector U;

    /// <summary>What strong attenuation took out of the two, so that they cannot overflow.</summary>
    public RealVector Log;

    public WaveState(in ComplexVector p, in ComplexVector u) => (P, U) = (p, u);

    /// <summary>This wave over another that is the same up to a factor; their logarithms left aside.</summary>
    public readonly ComplexVector Over(in WaveState other, double impedance)
    {
        var square = impedance * impedance;
        var size = other.P.Norm + square * other.U.Norm;
        var product =
            P * new ComplexVector(other.P.Re, -other.P.Im)
            + square * (U * new ComplexVector(other.U.Re, -other.U.Im));
        return (RealVector.One / size) * product;
    }

    /// <summary>The same, its size taken out where that is far from 1: no longer smooth in frequency.</summary>
    public void Normalise(double impedance)
    {
        var size = Vector.SquareRoot(P.Norm) + Vector.SquareRoot(U.Norm) * impedance;
        if (
            !Vector.GreaterThanAny(size, Vector.Create(Largest))
            && !Vector.LessThanAny(size, Vector.Create(Smallest))
        )
        {
            return;
        }

        var inverse = RealVector.One / size;
        (P, U) = (inverse * P, inverse * U);
        Log += Vector.Log(size);
    }
}
