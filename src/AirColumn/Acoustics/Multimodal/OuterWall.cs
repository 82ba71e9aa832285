using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// What it changes behind a mouth that the outside of the pipe is not a cylinder: the modes of the annulus around it, carried over the
/// stretch where it tapers.
/// </summary>
/// <remarks>
/// The modes are those around the cylinder of the rim's radius, the lower ones, squeezed or stretched with the gap; they are carried as
/// those in the bore are (<see cref="WallPiece"/>). Only the difference to the cylinder is used, so that the edge, which needs the
/// upper modes, is left to those.
/// </remarks>
internal sealed class OuterWall
{
    private const int Functions = 5; // along the axis, in each part
    private const double HighestAcross = 8; // |√λ| of the modes that count, times the radius

    private readonly PlaneModes straight;
    private readonly int[] chosen;
    private readonly PlaneModes beyond;
    private readonly List<(Complex[] Stiffness, Complex[] Mass)> parts = []; // from the mouth

    /// <summary>Around this profile.</summary>
    /// <param name="mesh">The plane of the mouth.</param>
    /// <param name="firstElement">The one that begins at the outer edge.</param>
    /// <param name="lastElement">The outermost.</param>
    /// <param name="index">The unknowns behind the mouth.</param>
    /// <param name="straight">Their modes around a cylinder.</param>
    /// <param name="profile">Outer radius at a distance behind the mouth, and how it changes with that, over the radius of the mouth.</param>
    /// <param name="depth">How far it is followed.</param>
    public OuterWall(
        RadialMesh mesh,
        int firstElement,
        int lastElement,
        int[] index,
        PlaneModes straight,
        Func<double, (double Radius, double Slope)> profile,
        double depth
    )
    {
        this.straight = straight;
        chosen =
        [
            .. Enumerable
                .Range(0, index.Length)
                .Where(i => straight.Squares[i].Magnitude < HighestAcross * HighestAcross),
        ];
        var (k, m) = mesh.Matrices(firstElement + 1, lastElement, 0, mesh.Count);
        int[] own = [.. Enumerable.Range(0, index.Length)];
        var fixedStiffness = Reduced(k, mesh.Count, index, own);
        var fixedMass = Reduced(m, mesh.Count, index, own);
        var (places, weights) = GaussRule.OnUnit(Functions + 1);
        var (value, slope) = (new double[Functions], new double[Functions]);
        var n = chosen.Length;
        for (var at = 0.0; at < depth; )
        {
            var h = Math.Min(Math.Min(0.25 + 0.6 * at, 0.8), depth - at);
            h = depth - at - h < 0.1 ? depth - at : h;
            var size = n * Functions;
            var (stiffness, mass) = (new Complex[size * size], new Complex[size * size]);
            for (var g = 0; g < places.Length; g++)
            {
                var (radius, rate) = profile(at + places[g] * h);
                var (local, a, d, s) = mesh.Moved(firstElement, radius, rate);
                int[] all = [.. Enumerable.Range(0, local.Length)];
                int[] where = [.. local.Select(i => Array.IndexOf(index, i))];
                var across = Sum(fixedStiffness, Reduced(s, local.Length, all, where));
                var content = Sum(fixedMass, Reduced(a, local.Length, all, where));
                var drift = Reduced(d, local.Length, all, where);
                AxialFunctions.At(places[g], value, slope);
                Add(stiffness, mass, weights[g] * h, value, slope, h, across, content, drift);
            }

            parts.Add((stiffness, mass));
            at += h;
        }

        var (last, _) = profile(depth);
        var (unknowns, end, _, turned) = mesh.Moved(firstElement, last, 0);
        int[] every = [.. Enumerable.Range(0, unknowns.Length)];
        int[] place = [.. unknowns.Select(i => Array.IndexOf(index, i))];
        beyond = new PlaneModes(
            Sum(fixedStiffness, Reduced(turned, unknowns.Length, every, place)),
            Sum(fixedMass, Reduced(end, unknowns.Length, every, place)),
            n
        );
    }

    /// <summary>Adds the difference to a system, as <see cref="PlaneModes.AddTo"/>.</summary>
    public void AddTo(Span<ComplexVector> system, int size, ReadOnlySpan<int> index, RealVector square)
    {
        var n = chosen.Length;
        var change = Carried(square);
        for (var i = 0; i < n; i++)
        {
            change[i * n + i] -= (
                ComplexVector.All(straight.Squares[chosen[i]]) - square + ComplexVector.Zero
            ).Root();
        }

        // G·Δ·Gᵀ
        var half = new ComplexVector[index.Length * n];
        for (var i = 0; i < index.Length; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var sum = ComplexVector.Zero;
                for (var l = 0; l < n; l++)
                {
                    sum = ComplexVector.MultiplyAdd(
                        ComplexVector.All(straight.Weight(i, chosen[l])),
                        change[l * n + j],
                        sum
                    );
                }

                half[i * n + j] = sum;
            }
        }

        for (var i = 0; i < index.Length; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = system[index[i] * size + index[j]];
                for (var l = 0; l < n; l++)
                {
                    sum = ComplexVector.MultiplyAdd(
                        half[i * n + l],
                        ComplexVector.All(straight.Weight(j, chosen[l])),
                        sum
                    );
                }

                system[index[i] * size + index[j]] = sum;
            }
        }
    }

    // H of the chosen modes at the mouth.
    private ComplexVector[] Carried(RealVector square)
    {
        var n = chosen.Length;
        var h = new ComplexVector[n * n];
        int[] all = [.. Enumerable.Range(0, n)];
        beyond.AddTo(h, n, all, square);
        var size = n * Functions;
        var system = new ComplexVector[size * size];
        var row = new ComplexVector[size];
        for (var part = parts.Count - 1; part >= 0; part--)
        {
            var (stiffness, mass) = parts[part];
            for (var i = 0; i < size; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    var at = i * size + j;
                    system[at] = ComplexVector.All(stiffness[at]) - square * ComplexVector.All(mass[at]);
                }
            }

            var far = size - 2 * n;
            var near = size - n;
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    system[(far + i) * size + far + j] += h[i * n + j];
                }
            }

            LaneSymmetric.Eliminate(system, size, near, row);
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    h[i * n + j] = system[(near + i) * size + near + j];
                    h[j * n + i] = h[i * n + j];
                }
            }
        }

        return h;
    }

    // Vᵀ·x·V over the chosen modes, x given over some rows of its own, V's being others.
    private Complex[] Reduced(Complex[] x, int size, int[] rows, int[] unknowns)
    {
        var n = chosen.Length;
        var total = (int)Math.Sqrt(straight.Vectors.Length);
        var half = new Complex[rows.Length * n];
        for (var i = 0; i < rows.Length; i++)
        {
            for (var l = 0; l < rows.Length; l++)
            {
                var factor = x[rows[i] * size + rows[l]];
                if (factor == 0 || unknowns[l] < 0)
                {
                    continue;
                }

                for (var j = 0; j < n; j++)
                {
                    half[i * n + j] += factor * straight.Vectors[unknowns[l] * total + chosen[j]];
                }
            }
        }

        var result = new Complex[n * n];
        for (var l = 0; l < rows.Length; l++)
        {
            for (var i = 0; i < n && unknowns[l] >= 0; i++)
            {
                var factor = straight.Vectors[unknowns[l] * total + chosen[i]];
                for (var j = 0; j < n; j++)
                {
                    result[i * n + j] += factor * half[l * n + j];
                }
            }
        }

        return result;
    }

    private static Complex[] Sum(Complex[] a, Complex[] b)
    {
        var sum = new Complex[a.Length];
        for (var i = 0; i < a.Length; i++)
        {
            sum[i] = a[i] + b[i];
        }

        return sum;
    }

    private void Add(
        Complex[] stiffness,
        Complex[] mass,
        double weight,
        double[] value,
        double[] slope,
        double length,
        Complex[] across,
        Complex[] content,
        Complex[] drift
    )
    {
        var n = chosen.Length;
        var size = n * Functions;
        for (var i = 0; i < Functions; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var (rates, first, second, values) = (
                    weight * slope[i] * slope[j] / (length * length),
                    weight * slope[i] * value[j] / length,
                    weight * value[i] * slope[j] / length,
                    weight * value[i] * value[j]
                );
                for (var m = 0; m < n; m++)
                {
                    var at = (i * n + m) * size + j * n;
                    for (var l = 0; l < n; l++)
                    {
                        stiffness[at + l] +=
                            rates * content[m * n + l]
                            - first * drift[m * n + l]
                            - second * drift[l * n + m]
                            + values * across[m * n + l];
                        mass[at + l] += values * content[m * n + l];
                    }
                }
            }
        }
    }
}
