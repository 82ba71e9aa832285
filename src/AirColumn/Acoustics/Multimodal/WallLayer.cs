using System.Numerics;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>What the boundary layer at the wall of a short stretch adds to its system, without the modes' values there.</summary>
/// <remarks>
/// Friction is −Fv·S·|p₀' + g·s'|², p₀ the plane mode, s what the others add to it at the wall. g is 1 where the layer is thin. Where it is
/// not thin against what the modes resolve, a layer in which the pressure does not change is no model of what they feel, and
/// g² = (1 − |Fv|)/(1 − |Fv| + |Fv|·Σwₙ²), n > 0, keeps what is left of the inertia positive: the plane mode is slowed as it is by itself.
/// </remarks>
/// <param name="functions">How many there are along x.</param>
/// <param name="points">At how many places it is integrated.</param>
/// <param name="atWall">Σwₙ² of all modes but the plane one.</param>
/// <param name="gas">The gas.</param>
/// <param name="losses">The losses.</param>
internal sealed class WallLayer(
    int functions,
    int points,
    double atWall,
    GasConstants gas,
    BoundaryLayer losses
)
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

    /// <summary>
    /// −Im of what it adds to pᴴ·p, by friction and as heat, at one ω, rad/s, of the plane mode's pressure and of what the others add to it at
    /// the wall.
    /// </summary>
    public (double Friction, double Heat) Taken(double omega, Complex[] plane, Complex[] rest)
    {
        var (byFriction, asHeat) = (0.0, 0.0);
        var k = omega / gas.SpeedOfSound;
        Complex[] all = [.. plane.Zip(rest, (a, b) => a + b)];
        for (var g = 0; g < radii.Length; g++)
        {
            losses.At(radii[g], FrequencyVector.All(omega), out var h, out var t);
            var slowed = 1 - h.At(0);
            var size = Complex.Abs(slowed);
            var share = Math.Sqrt(Math.Max(0, 1 - size) / (1 - size + size * atWall));
            Complex[] felt = [.. plane.Zip(rest, (a, b) => a + share * b)];
            var at = g * functions * functions;
            byFriction -= slowed.Imaginary * Form(friction.AsSpan(at), felt);
            asHeat -= k * k * t.At(0).Imaginary * Form(heat.AsSpan(at), all);
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

    /// <summary>
    /// The lower triangle for the functions along x, at k²: three of them, of the plane mode with itself, with another, and of two others.
    /// </summary>
    public void At(in FrequencyVector frequencies, RealVector square, Span<ComplexVector> sums)
    {
        var each = functions * functions;
        sums[..(3 * each)].Clear();
        for (var g = 0; g < radii.Length; g++)
        {
            losses.At(radii[g], frequencies, out var h, out var t);
            var slowed = 1 - h;
            var size = Vector.SquareRoot(slowed.Norm);
            var left = Vector.Max(RealVector.One - size, RealVector.Zero);
            var share = Vector.SquareRoot(left / (left + size * atWall));
            var mixed = share * slowed;
            var other = share * mixed;
            var warmed = square * (t - RealVector.One);
            var at = g * each;
            for (var i = 0; i < functions; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    var n = i * functions + j;
                    var stored = heat[at + n] * warmed;
                    sums[n] -= friction[at + n] * slowed + stored;
                    sums[each + n] -= friction[at + n] * mixed + stored;
                    sums[2 * each + n] -= friction[at + n] * other + stored;
                }
            }
        }
    }
}
