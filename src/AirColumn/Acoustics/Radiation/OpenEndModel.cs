using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Radiation;

/// <summary>What an open end sends back as a function of ka, up to where, and what a user should know of it.</summary>
internal sealed record OpenEndModel(Func<double, EndReflection> At, double HighestKa, string? Warning = null)
{
    /// <summary>ln|R| and l/a of the straight end at some ka; null where they are asked for one by one.</summary>
    public VectorFunction<(RealVector Log, RealVector Correction)>? SomeAt { get; init; }

    /// <summary>ka where a course of the model is held and so has a corner; infinite where none is.</summary>
    public double CornerKa { get; init; } = double.PositiveInfinity;

    /// <summary>The tapering bore behind it, if it tapers.</summary>
    public TaperedMouth? Mouth { get; private init; }

    /// <summary>The same end with a tapering bore behind it.</summary>
    public OpenEndModel Behind(TaperedMouth mouth) =>
        this with
        {
            At = ka => mouth.Of(At(ka), ka),
            Mouth = mouth,
        };

    /// <summary>R at some ka.</summary>
    public ComplexVector ReflectionAt(RealVector ka)
    {
        if (SomeAt is null)
        {
            return ReflectionsAt(ka);
        }

        var (log, correction) = SomeAt(ka);
        var (sin, cos) = Vector.SinCos(2 * ka * correction);
        var modulus = Vector.Exp(log);
        var reflection = new ComplexVector(-modulus * cos, modulus * sin);
        if (Mouth is null)
        {
            return reflection;
        }

        var one = RealVector.One;
        var z = (1.0 + reflection) / -(reflection - one) + Mouth.Added(ka);
        return (z - one) / (1.0 + z);
    }

    /// <summary>Impedance over ρc/S at some ka, in which nothing cancels; see <see cref="EndReflection.RelativeImpedance"/>.</summary>
    public ComplexVector RelativeImpedanceAt(RealVector ka)
    {
        if (SomeAt is null)
        {
            return ImpedancesAt(ka);
        }

        var (log, correction) = SomeAt(ka);
        var (sin, cos) = Vector.SinCos(2 * ka * correction);
        var grown = Vector.Exp(-log);
        var shrunk = RealVector.One / grown;
        var inverse = RealVector.One / (cos + 0.5 * (grown + shrunk));
        var straight = new ComplexVector(inverse * Sinh(-log, grown, shrunk), inverse * sin);
        return Mouth is null ? straight : straight + Mouth.Added(ka);
    }

    private ComplexVector ReflectionsAt(RealVector ka) =>
        ComplexVector.Each(i =>
        {
            var end = At(ka[i]);
            return -Complex.FromPolarCoordinates(end.Modulus, -2 * ka[i] * end.EndCorrection);
        });

    private ComplexVector ImpedancesAt(RealVector ka) =>
        ComplexVector.Each(i => At(ka[i]).RelativeImpedance(ka[i]));

    private static RealVector Sinh(RealVector x, RealVector grown, RealVector shrunk)
    {
        // x + x³/3! + …, to rounding below a half.
        var square = x * x;
        var series = RealVector.One;
        for (var n = 15; n > 1; n -= 2)
        {
            series = RealVectors.MultiplyAdd(square * (1.0 / (n * (n - 1))), series, RealVector.One);
        }

        return Vector.ConditionalSelect(
            Vector.LessThan(Vector.Abs(x), Vector.Create(0.5)),
            x * series,
            0.5 * (grown - shrunk)
        );
    }
}
