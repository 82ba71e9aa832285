using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Radiation;

/// <summary>What an open end sends back as a function of ka, up to where, and what a user should know of it.</summary>
internal sealed record OpenEndModel(Func<double, EndReflection> At, double HighestKa, string? Warning = null)
{
    /// <summary>ln|R| and l/a of the straight end at eight ka; null where they are asked for one by one.</summary>
    public Func<
        Vector512<double>,
        (Vector512<double> Log, Vector512<double> Correction)
    >? EightAt { get; init; }

    /// <summary>The tapering bore behind it, if it tapers.</summary>
    public TaperedMouth? Mouth { get; private init; }

    /// <summary>The same end with a tapering bore behind it.</summary>
    public OpenEndModel Behind(TaperedMouth mouth) =>
        this with
        {
            At = ka => mouth.Of(At(ka), ka),
            Mouth = mouth,
        };

    /// <summary>R at eight ka.</summary>
    public ComplexLanes ReflectionAt(Vector512<double> ka)
    {
        if (EightAt is null)
        {
            return ComplexLanes.Each(i =>
            {
                var end = At(ka[i]);
                return -Complex.FromPolarCoordinates(end.Modulus, -2 * ka[i] * end.EndCorrection);
            });
        }

        var (log, correction) = EightAt(ka);
        var (sin, cos) = Vector512.SinCos(2 * ka * correction);
        var modulus = Vector512.Exp(log);
        var reflection = new ComplexLanes(-modulus * cos, modulus * sin);
        if (Mouth is null)
        {
            return reflection;
        }

        var one = Vector512<double>.One;
        var z = (1.0 + reflection) / -(reflection - one) + Mouth.Added(ka);
        return (z - one) / (1.0 + z);
    }

    /// <summary>Impedance over ρc/S at eight ka, in which nothing cancels; see <see cref="EndReflection.RelativeImpedance"/>.</summary>
    public ComplexLanes RelativeImpedanceAt(Vector512<double> ka)
    {
        if (EightAt is null)
        {
            return ComplexLanes.Each(i => At(ka[i]).RelativeImpedance(ka[i]));
        }

        var (log, correction) = EightAt(ka);
        var (sin, cos) = Vector512.SinCos(2 * ka * correction);
        var grown = Vector512.Exp(-log);
        var shrunk = Vector512<double>.One / grown;
        var inverse = Vector512<double>.One / (cos + 0.5 * (grown + shrunk));
        var straight = new ComplexLanes(inverse * Sinh(-log, grown, shrunk), inverse * sin);
        return Mouth is null ? straight : straight + Mouth.Added(ka);
    }

    private static Vector512<double> Sinh(
        Vector512<double> x,
        Vector512<double> grown,
        Vector512<double> shrunk
    )
    {
        // x + x³/3! + …, to rounding below a half.
        var square = x * x;
        var series = Vector512<double>.One;
        for (var n = 15; n > 1; n -= 2)
        {
            series = Vector512.FusedMultiplyAdd(
                square * (1.0 / (n * (n - 1))),
                series,
                Vector512<double>.One
            );
        }

        return Vector512.ConditionalSelect(
            Vector512.LessThan(Vector512.Abs(x), Vector512.Create(0.5)),
            x * series,
            0.5 * (grown - shrunk)
        );
    }
}
