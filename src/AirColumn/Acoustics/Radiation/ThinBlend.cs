using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Interpolation;

namespace AirColumn.Acoustics.Radiation;

/// <summary>A thin edge, a baffle, or what lies between the two, at eight ka; see <see cref="ThinEnd"/>.</summary>
internal sealed class ThinBlend(RationalInterpolant[] functions, double logarithm, double scale)
{
    /// <summary>ln|R| and l/a, and v there.</summary>
    public (Vector512<double> Log, Vector512<double> Correction, Vector512<double> Variable) At(
        Vector512<double> ka
    )
    {
        Span<double> variables = stackalloc double[Vector512<double>.Count];
        for (var i = 0; i < variables.Length; i++)
        {
            variables[i] = ThinEnd.Variable(ka[i]);
        }

        var v = Vector512.Create<double>(variables);
        Span<Vector512<double>> values = stackalloc Vector512<double>[functions.Length];
        RationalInterpolant.At(Vector512.Sqrt(v * scale), functions, values);
        var square = ka * ka;
        return (square * (values[1] + logarithm * square * Vector512.Log(ka)), values[0], v);
    }
}
