using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// The sound around a mouth of radius 1 with a square rim: what pressures the modes' flows meet there, P = X·W, at any ka.
/// </summary>
/// <remarks>
/// The unknown is the pressure over the plane of the mouth. Three straight spaces meet there: the half space in front, the room behind
/// around the outside of the pipe (none behind a baffle), and the pipe, of which the modes beyond those carried are taken to go
/// on in a straight pipe. Each takes up the flow G·√(λ − k²)·Gᵀ of its own modes across, radial ones with r turned into the
/// complex plane far out (after felix2018, who computes with such modes too). Of a straight pipe the plane wave therefore meets the same end
/// however many modes are carried.
/// </remarks>
internal sealed class MouthField
{
    /// <summary>Of how many modes the field is known at most.</summary>
    public const int MostModes = ColumnOptions.MostModes;

    private const int PipeFunctions = 12;
    private const int EdgeFunctions = 8;
    private const int OuterFunctions = 4;
    private const int OuterElements = 7;

    private readonly RadialMesh mesh = new();
    private readonly PlaneModes pipe;
    private readonly PlaneModes front;
    private readonly PlaneModes? behind;
    private readonly OuterWall? outside;
    private readonly int[] pipeIndex;
    private readonly int[] frontIndex;
    private readonly int[] behindIndex = [];
    private readonly int silent; // the pressure at the end of all, which is none
    private readonly double[] projection; // of the polynomials that modes are made of

    /// <summary>Whether the outside is not a cylinder.</summary>
    public bool Tapers => outside is not null;

    /// <summary>With this outer radius of the rim, infinite for a baffle, and an outside that is not a cylinder's, if so.</summary>
    public MouthField(
        double outer,
        OuterProfile? profile = null,
        CancellationToken cancellationToken = default
    )
    {
        var isBaffle = double.IsInfinity(outer);
        var turn = Complex.FromPolarCoordinates(1, -0.9);
        var mouth = mesh.Place();
        var axis = mesh.Place();
        mesh.FromEdge(1, 0, PipeFunctions, mouth, axis);
        var pipeUnknowns = mesh.Count;
        var elements = 1;
        var edge = mouth;
        var outerEdge = isBaffle ? 1 : outer;
        if (!isBaffle)
        {
            // Fewer on a narrow rim, whose shortest waves would drown the longest ones in rounding.
            var functions = outer switch
            {
                < 1.05 => 3,
                < 1.3 => 4,
                < 1.8 => 6,
                _ => 9,
            };
            var middle = mesh.Place();
            mesh.FromEdge(1, (1 + outer) / 2, functions, mouth, middle);
            edge = mesh.Place();
            mesh.FromEdge(outer, (1 + outer) / 2, functions, edge, middle);
            elements += 2;
        }

        var firstBehind = mesh.Count;
        var next = mesh.Place();
        var from = Math.Max(outerEdge, profile?.Largest ?? 0) + 0.7;
        mesh.FromEdge(outerEdge, from, EdgeFunctions, edge, next);
        Complex at = from;
        var step = 0.8;
        for (var i = 0; i < OuterElements; i++)
        {
            var end = mesh.Place();
            mesh.Between(at, at + step * turn, OuterFunctions, next, end);
            (at, next, step) = (at + step * turn, end, 2.1 * step);
        }

        var last = elements + OuterElements;
        pipeIndex = [.. Enumerable.Range(0, pipeUnknowns)];
        silent = next;
        frontIndex = [.. Enumerable.Range(0, mesh.Count).Where(i => i != silent)];
        projection = mesh.Projection(MostModes);
        var (k, m) = mesh.Matrices(0, 0, 0, pipeUnknowns);
        pipe = new PlaneModes(k, m, pipeUnknowns);
        (k, m) = mesh.Matrices(0, last, 0, mesh.Count);
        cancellationToken.ThrowIfCancellationRequested();
        front = new PlaneModes(Part(k, frontIndex), Part(m, frontIndex), frontIndex.Length);
        if (!isBaffle)
        {
            // The outer edge's unknown comes before those of the rim's second half: keep it, leave those out.
            behindIndex =
            [
                edge,
                .. Enumerable.Range(firstBehind, mesh.Count - firstBehind).Where(i => i != silent),
            ];
            cancellationToken.ThrowIfCancellationRequested();
            (k, m) = mesh.Matrices(elements, last, 0, mesh.Count);
            behind = new PlaneModes(Part(k, behindIndex), Part(m, behindIndex), behindIndex.Length);
            cancellationToken.ThrowIfCancellationRequested();
            outside = profile is null
                ? null
                : new OuterWall(mesh, elements, last, behindIndex, behind, profile.At, profile.Depth);
        }
    }

    /// <summary>X at some values of ka, times the radius, row-major, as if the outside were a cylinder.</summary>
    public ComplexVector[] At(RadialBasis basis, RealVector ka) => Of(basis, ka, Seen(ka, false));

    /// <summary>
    /// What pressures the flows of <see cref="MostModes"/> polynomials meet at some values of ka, times the radius, all but the plane mode going on in
    /// a straight pipe too: of that, X follows for any number of modes.
    /// </summary>
    /// <param name="ka">ka.</param>
    /// <param name="tapers">Whether the outside is taken as it is, not as a cylinder.</param>
    public ComplexVector[] Seen(RealVector ka, bool tapers)
    {
        var n = mesh.Count;
        var size = n + MostModes;
        var system = new ComplexVector[size * size];
        var square = ka * ka;
        front.AddTo(system, size, frontIndex, square);
        behind?.AddTo(system, size, behindIndex, square);
        if (tapers)
        {
            outside?.AddTo(system, size, behindIndex, square);
        }

        pipe.AddTo(system, size, pipeIndex, square, value => value.Real > 1);
        system[silent * size + silent] = ComplexVector.One;
        for (var k = 0; k < MostModes; k++)
        {
            for (var i = 0; i < n; i++)
            {
                system[(n + k) * size + i] = ComplexVector.All(projection[k * n + i]);
            }
        }

        LaneSymmetric.Eliminate(system, size, n, new ComplexVector[size]);
        var result = new ComplexVector[MostModes * MostModes];
        for (var i = 0; i < MostModes; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var entry = -system[(n + i) * size + n + j];
                result[i * MostModes + j] = entry;
                result[j * MostModes + i] = entry;
            }
        }

        return result;
    }

    /// <summary>X of some modes, times the radius, from what was seen.</summary>
    public static ComplexVector[] Of(RadialBasis basis, RealVector ka, ComplexVector[] seen)
    {
        var (n, c) = (basis.Count, basis.Coefficients);
        var half = new ComplexVector[n * n];
        var x = new ComplexVector[n * n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                for (var k = 0; k < n; k++)
                {
                    half[i * n + j] += c[i * n + k] * seen[k * MostModes + j];
                }
            }
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                for (var k = 0; k < n; k++)
                {
                    x[i * n + j] += c[j * n + k] * half[i * n + k];
                }
            }
        }

        if (n == 1)
        {
            return x;
        }

        // The modes that are carried do not go on in a straight pipe: its admittance is taken off theirs.
        LaneSymmetric.Invert(x, n);
        for (var mode = 1; mode < n; mode++)
        {
            var across = basis.Gamma[mode] * basis.Gamma[mode];
            x[mode * n + mode] -= Math.PI * (ComplexVector.All(across) - ka * ka + ComplexVector.Zero).Root();
        }

        LaneSymmetric.Invert(x, n);
        return x;
    }

    private static Complex[] Part(Complex[] whole, int[] index)
    {
        var (n, size) = (index.Length, (int)Math.Sqrt(whole.Length));
        var part = new Complex[n * n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                part[i * n + j] = whole[index[i] * size + index[j]];
            }
        }

        return part;
    }
}
