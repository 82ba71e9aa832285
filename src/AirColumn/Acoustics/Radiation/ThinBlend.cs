using System.Numerics;
using AirColumn.Acoustics.Interpolation;

namespace AirColumn.Acoustics.Radiation;

/// <summary>A thin edge, a baffle, or what lies between the two, at some ka; see <see cref="ThinEnd"/>.</summary>
/// <param name="functions">l/a, then ln|R| over (ka)² without its logarithm, then others tabulated at the same places.</param>
/// <param name="logarithm">Of (ka)²·ln ka in the second.</param>
/// <param name="scale">The place is the root of it times v.</param>
internal sealed class ThinBlend(RationalInterpolant[] functions, double logarithm, double scale)
{
    /// <summary>First zero of J₁: the cut-on of the first radial mode of a rigid duct.</summary>
    public const double CutOnKa = 3.8317059702075123;

    /// <summary>ln|R| and l/a, and v there.</summary>
    public (RealVector Log, RealVector Correction, RealVector Variable) At(RealVector ka) => At(ka, []);

    /// <summary>The same, and the other functions there.</summary>
    public (RealVector Log, RealVector Correction, RealVector Variable) At(
        RealVector ka,
        Span<RealVector> others
    )
    {
        Span<double> variables = stackalloc double[RealVector.Count];
        for (var i = 0; i < variables.Length; i++)
        {
            variables[i] = Variable(ka[i]);
        }

        var v = Vector.Create<double>(variables);
        Span<RealVector> values = stackalloc RealVector[functions.Length];
        RationalInterpolant.At(Vector.SquareRoot(v * scale), functions, values);
        values[2..].CopyTo(others);
        var square = ka * ka;
        return (square * (values[1] + logarithm * square * Vector.Log(ka)), values[0], v);
    }

    /// <summary>v: smooth functions of it are smooth up to the cut-on.</summary>
    public static double Variable(double ka) => Math.Asin(ka / CutOnKa);
}
