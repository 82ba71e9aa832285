using MathNet.Numerics.LinearAlgebra;
using Complex = System.Numerics.Complex;

namespace AirColumn.Tables;

/// <summary>
/// A space that begins at a plane and has no end in any direction, its cross-section everywhere that of the plane: the flow that a
/// pressure over the plane sends into it, H = M·√(M⁻¹A), A = K − k²M.
/// </summary>
/// <remarks>
/// √z = (2/π)·∫z/(z + t²)dt from 0 to ∞, along arg t = π/4 by the trapezoidal rule in ln t, which converges exponentially (hale2008):
/// with the radius turned into the complex plane far out all z have an argument between 0 and π. The modes themselves would not do:
/// where the radius is complex they are hardly independent.
/// </remarks>
internal sealed class OpenSpace(RadialElements mesh, int edge, double smallest)
{
    private const double Step = 0.22; // of ln t; the rule errs by exp(−π²/(2·Step))
    private readonly (BandMatrix Stiffness, BandMatrix Mass) matrices = mesh.Matrices(edge, mesh.Last);

    /// <summary>H at a wavenumber.</summary>
    public Matrix<Complex> At(double ka)
    {
        var (stiffness, mass) = matrices;
        var a = stiffness.Plus(-ka * ka, mass);
        // |z| reaches from k² to that of the shortest elements; what the ends leave of it is of third order.
        var (first, last) = (Math.Log(3e-4 * ka), Math.Log(300 / smallest));
        var count = (int)Math.Ceiling((last - first) / Step);
        var turn = Complex.FromPolarCoordinates(1, Math.PI / 4);
        var (low, high) = (new Complex[mass.Size, mass.Size], new Complex[mass.Size, mass.Size]);
        // The t left out below and beyond: there the integrand is M·t or A/t, and the sums are geometric series.
        var shareOfMass = Step * turn * Math.Exp(first) / (Math.Exp(Step) - 1);
        var shareOfA = Step / turn * Math.Exp(-first - count * Step) / (1 - Math.Exp(-Step));
        for (var i = 0; i < count; i++)
        {
            var t = turn * Math.Exp(first + i * Step);
            var shifted = a.Plus(t * t, mass);
            if (t.Magnitude > 1)
            {
                shifted.AddInverse(Step * t, high);
            }
            else
            {
                // A·(A + t²M)⁻¹·M = M − t²M·(A + t²M)⁻¹·M, in which the long waves keep their digits.
                shareOfMass += Step * t;
                shifted.AddInverse(-Step * t * t * t, low);
            }
        }

        Symmetric(low);
        Symmetric(high);
        var left = mass.TimesTransposeOf(low);
        var right = a.TimesTransposeOf(high);
        for (var i = 0; i < mass.Size; i++)
        {
            for (var j = 0; j < mass.Size; j++)
            {
                left[i, j] += right[i, j];
            }
        }

        var flow = mass.TimesTransposeOf(left);
        return Matrix<Complex>.Build.Dense(
            mass.Size,
            mass.Size,
            (i, j) => 2 / Math.PI * (flow[i, j] + shareOfMass * mass[i, j] + shareOfA * a[i, j])
        );
    }

    private static void Symmetric(Complex[,] lower)
    {
        for (var i = 0; i < lower.GetLength(0); i++)
        {
            for (var j = 0; j < i; j++)
            {
                lower[j, i] = lower[i, j];
            }
        }
    }
}
