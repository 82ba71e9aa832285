using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Losses;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>What the boundary layer at the wall of a short stretch adds to its system, without the modes' values there.</summary>
internal sealed class WallLayer(int functions, int points, GasConstants gas, WallLosses losses)
{
    private readonly double[] radii = new double[points]; // a/cos of the slope
    private readonly double[] friction = new double[points * functions * functions];
    private readonly double[] heat = new double[points * functions * functions];

    /// <summary>A place to integrate at, <paramref name="stretch"/> being the length of wall over that of axis, squared.</summary>
    public void Add(int point, in Wall wall, double stretch, double weight, double[] value, double[] slope)
    {
        radii[point] = wall.Radius * Math.Sqrt(stretch);
        var at = point * functions * functions;
        for (var i = 0; i < functions; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                friction[at + i * functions + j] = weight * slope[i] * slope[j];
                heat[at + i * functions + j] = weight * stretch * value[i] * value[j];
            }
        }
    }

    /// <summary>−Im of what it adds to pᴴ·p, by friction and as heat, at one ω, rad/s, of a pressure at the wall.</summary>
    public (double Friction, double Heat) Taken(double omega, Complex[] p)
    {
        var (byFriction, asHeat) = (0.0, 0.0);
        var k = omega / gas.SpeedOfSound;
        for (var g = 0; g < radii.Length; g++)
        {
            var terms = LossTerms.At(radii[g], omega, gas, losses);
            var at = g * functions * functions;
            byFriction -= (terms.Series / (1 + terms.Series)).Imaginary * Form(friction.AsSpan(at), p);
            asHeat -= k * k * terms.Shunt.Imaginary * Form(heat.AsSpan(at), p);
        }

        return (byFriction, asHeat);
    }

    // pᴴ·a·p of a symmetric matrix whose lower triangle is given.
    private double Form(ReadOnlySpan<double> a, Complex[] p)
    {
        var sum = 0.0;
        for (var i = 0; i < functions; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                sum += (i == j ? 1 : 2) * a[i * functions + j] * (Complex.Conjugate(p[i]) * p[j]).Real;
            }
        }

        return sum;
    }

    /// <summary>The lower triangle for the functions along x, at k².</summary>
    public void At(in FrequencyLanes frequencies, Vector512<double> square, Span<ComplexLanes> sum)
    {
        sum[..(functions * functions)].Clear();
        for (var g = 0; g < radii.Length; g++)
        {
            var (series, shunt) = SectionLanes.LossesAt(radii[g], gas, losses, frequencies);
            // 1/(1 − Fv) = 1 + ε, so Fv = ε/(1 + ε).
            var slowed = series / (1 + series);
            var warmed = square * shunt;
            var at = g * functions * functions;
            for (var i = 0; i < functions; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    var n = i * functions + j;
                    sum[n] -= friction[at + n] * slowed + heat[at + n] * warmed;
                }
            }
        }
    }
}
