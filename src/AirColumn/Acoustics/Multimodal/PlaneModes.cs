using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// Modes across a straight space that begins at the plane of a mouth and has no end: what flow a pressure over the plane sends into it,
/// H = G·√(λ − k²)·Gᵀ.
/// </summary>
internal sealed class PlaneModes
{
    private readonly int count;
    private readonly Complex[] weights; // G

    /// <summary>From the stiffness and mass of its cross-section.</summary>
    public PlaneModes(Complex[] stiffness, Complex[] mass, int count)
    {
        this.count = count;
        var lower = Factor(mass, count);
        // L⁻¹·K·L⁻ᵀ
        var half = Forward(lower, stiffness, count);
        var turned = Transposed(half, count);
        var standard = Forward(lower, turned, count);
        (Squares, var vectors) = SymmetricModes.Of(standard, count);
        Vectors = Backward(lower, vectors, count);
        weights = new Complex[count * count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                Complex sum = 0;
                for (var l = 0; l <= i; l++)
                {
                    sum += lower[i * count + l] * vectors[l * count + j];
                }

                weights[i * count + j] = sum;
            }
        }
    }

    /// <summary>The modes, columns of a row-major matrix, of mass 1.</summary>
    public Complex[] Vectors { get; }

    /// <summary>What a mode, by its mass, is of each unknown: G.</summary>
    public Complex Weight(int unknown, int mode) => weights[unknown * count + mode];

    /// <summary>λ, the squares of the wavenumbers across.</summary>
    public Complex[] Squares { get; }

    /// <summary>Adds H to the lower triangle of a system of <paramref name="size"/>, from an unknown on.</summary>
    /// <param name="system">The system.</param>
    /// <param name="size">How many unknowns it has.</param>
    /// <param name="index">Where each of the unknowns here is in it, rising.</param>
    /// <param name="square">k² at eight frequencies.</param>
    /// <param name="takes">Which modes count.</param>
    public void AddTo(
        Span<ComplexVector> system,
        int size,
        ReadOnlySpan<int> index,
        RealVector square,
        Func<Complex, bool>? takes = null
    )
    {
        for (var mode = 0; mode < count; mode++)
        {
            if (takes is not null && !takes(Squares[mode]))
            {
                continue;
            }

            var root = (ComplexVector.All(Squares[mode]) - square + ComplexVector.Zero).Root();
            for (var i = 0; i < count; i++)
            {
                var left = ComplexVector.All(weights[i * count + mode]) * root;
                for (var j = 0; j <= i; j++)
                {
                    var at = index[i] * size + index[j];
                    system[at] = ComplexVector.MultiplyAdd(
                        left,
                        ComplexVector.All(weights[j * count + mode]),
                        system[at]
                    );
                }
            }
        }
    }

    private static Complex[] Factor(Complex[] a, int n)
    {
        var l = new Complex[n * n];
        for (var j = 0; j < n; j++)
        {
            for (var i = j; i < n; i++)
            {
                var sum = a[i * n + j];
                for (var k = 0; k < j; k++)
                {
                    sum -= l[i * n + k] * l[j * n + k];
                }

                l[i * n + j] = i == j ? Complex.Sqrt(sum) : sum / l[j * n + j];
            }
        }

        return l;
    }

    private static Complex[] Forward(Complex[] lower, Complex[] right, int n)
    {
        var x = (Complex[])right.Clone();
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++)
            {
                var factor = lower[i * n + k];
                for (var j = 0; j < n; j++)
                {
                    x[i * n + j] -= factor * x[k * n + j];
                }
            }

            var inverse = 1 / lower[i * n + i];
            for (var j = 0; j < n; j++)
            {
                x[i * n + j] *= inverse;
            }
        }

        return x;
    }

    // L⁻ᵀ·x
    private static Complex[] Backward(Complex[] lower, Complex[] right, int n)
    {
        var x = (Complex[])right.Clone();
        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++)
            {
                var factor = lower[k * n + i];
                for (var j = 0; j < n; j++)
                {
                    x[i * n + j] -= factor * x[k * n + j];
                }
            }

            var inverse = 1 / lower[i * n + i];
            for (var j = 0; j < n; j++)
            {
                x[i * n + j] *= inverse;
            }
        }

        return x;
    }

    private static Complex[] Transposed(Complex[] a, int n)
    {
        var t = new Complex[n * n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                t[j * n + i] = a[i * n + j];
            }
        }

        return t;
    }
}
