using System.Numerics;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// The radial modes of a round cross-section, as the best that polynomials in r² of a given number can be: mean square 1, mode 0
/// constant, wavenumbers γ/a.
/// </summary>
/// <remarks>
/// Rayleigh and Ritz: the eigenfunctions of ∇² with a rigid wall among the polynomials 1, ξ², … ξ^(2N−2), ξ = r/a. The lower ones are
/// J₀(γₙξ) to many digits; the uppermost take what is left over of the space, in which the slope at a wall that is not parallel to the
/// axis is represented too. A series in J₀ alone, whose every term meets the wall without slope, converges there as 1/N only.
/// ξ·d/dξ stays within the space, and so does what a narrower disc sees of it: products below are exact.
/// </remarks>
internal sealed class RadialBasis
{
    /// <summary>That of a number of modes.</summary>
    public RadialBasis(int count)
    {
        Count = count;
        var (places, weights) = GaussRule.OnUnit(count + 1);
        var stiffness = new Complex[count * count];
        var (value, slope) = (new double[count], new double[count]);
        for (var g = 0; g < places.Length; g++)
        {
            Legendre(places[g], value, slope);
            for (var i = 0; i < count; i++)
            {
                for (var j = 0; j < count; j++)
                {
                    // ∫2ξ·(dφ/dξ)² dξ with t = ξ².
                    stiffness[i * count + j] += 4 * places[g] * weights[g] * slope[i] * slope[j];
                }
            }
        }

        var (squares, vectors) = SymmetricModes.Of(stiffness, count);
        var order = Enumerable.Range(0, count).OrderBy(i => squares[i].Real).ToArray();
        Coefficients = new double[count * count];
        Gamma = new double[count];
        AtWall = new double[count];
        for (var n = 0; n < count; n++)
        {
            Gamma[n] = n == 0 ? 0 : Math.Sqrt(squares[order[n]].Real);
            for (var k = 0; k < count; k++)
            {
                Coefficients[n * count + k] = n == 0 ? (k == 0 ? 1 : 0) : vectors[k * count + order[n]].Real;
            }

            var wall = ValueAt(n, 1);
            if (wall < 0)
            {
                for (var k = 0; k < count; k++)
                {
                    Coefficients[n * count + k] *= -1;
                }
            }

            AtWall[n] = Math.Abs(wall);
        }

        Drift = new double[count * count];
        for (var g = 0; g < places.Length; g++)
        {
            Modes(places[g], value, slope);
            for (var m = 0; m < count; m++)
            {
                for (var n = 0; n < count; n++)
                {
                    Drift[m * count + n] += weights[g] * value[m] * 2 * places[g] * slope[n];
                }
            }
        }
    }

    /// <summary>How many modes.</summary>
    public int Count { get; }

    /// <summary>Wavenumbers across times the radius; 0, 3.83, …</summary>
    public double[] Gamma { get; }

    /// <summary>Row n: mode n in the polynomials √(2k + 1)·Pₖ(2ξ² − 1), an orthogonal matrix.</summary>
    public double[] Coefficients { get; }

    /// <summary>The modes at the wall.</summary>
    public double[] AtWall { get; }

    /// <summary>∫2ξ·φₘ·ξφₙ' dξ: how a change of radius turns one mode into another.</summary>
    public double[] Drift { get; }

    /// <summary>All modes and their derivatives in t = ξ².</summary>
    public void Modes(double t, Span<double> value, Span<double> slope)
    {
        Span<double> p = stackalloc double[Count];
        Span<double> d = stackalloc double[Count];
        Legendre(t, p, d);
        for (var n = 0; n < Count; n++)
        {
            var (sum, rate) = (0.0, 0.0);
            for (var k = 0; k < Count; k++)
            {
                sum += Coefficients[n * Count + k] * p[k];
                rate += Coefficients[n * Count + k] * d[k];
            }

            (value[n], slope[n]) = (sum, rate);
        }
    }

    /// <summary>
    /// The mean over a disc of <paramref name="ratio"/> times the radius of products of its modes with those of a wider one: row, its
    /// mode.
    /// </summary>
    public double[] Overlap(RadialBasis wider, double ratio)
    {
        var result = new double[Count * wider.Count];
        var (places, weights) = GaussRule.OnUnit((Count + wider.Count) / 2 + 1);
        var (here, slope) = (new double[Count], new double[Count]);
        var (there, slopeThere) = (new double[wider.Count], new double[wider.Count]);
        for (var g = 0; g < places.Length; g++)
        {
            Modes(places[g], here, slope);
            wider.Modes(ratio * ratio * places[g], there, slopeThere);
            for (var m = 0; m < Count; m++)
            {
                for (var n = 0; n < wider.Count; n++)
                {
                    result[m * wider.Count + n] += weights[g] * here[m] * there[n];
                }
            }
        }

        return result;
    }

    private double ValueAt(int mode, double t)
    {
        Span<double> p = stackalloc double[Count];
        Span<double> d = stackalloc double[Count];
        Legendre(t, p, d);
        var sum = 0.0;
        for (var k = 0; k < Count; k++)
        {
            sum += Coefficients[mode * Count + k] * p[k];
        }

        return sum;
    }

    /// <summary>The polynomials √(2k + 1)·Pₖ(2t − 1) of which modes are made, t = ξ², and their derivatives in t.</summary>
    public static void Legendre(double t, Span<double> value, Span<double> slope)
    {
        var x = 2 * t - 1;
        var (p, before, d, dBefore) = (1.0, 0.0, 0.0, 0.0);
        for (var k = 0; k < value.Length; k++)
        {
            var norm = Math.Sqrt(2 * k + 1);
            (value[k], slope[k]) = (norm * p, norm * 2 * d);
            var next = ((2 * k + 1) * x * p - k * before) / (k + 1);
            var dNext = dBefore + (2 * k + 1) * p;
            (before, p, dBefore, d) = (p, next, d, dNext);
        }
    }
}
