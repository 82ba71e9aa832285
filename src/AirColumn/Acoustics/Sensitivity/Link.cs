using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>What a parameter does to one part of a column: the part as it is a little to either side.</summary>
/// <param name="Parameter">Which parameter.</param>
/// <param name="Self">The part as it is.</param>
/// <param name="Weight">Its weight in the difference.</param>
/// <param name="Weights">The weights of the others.</param>
/// <param name="Parts">The others; null where the part is not there.</param>
internal sealed record Link<T>(int Parameter, T Self, double Weight, double[] Weights, T?[] Parts)
    where T : class
{
    /// <summary>The links of a part that all columns have; none where a parameter does not change it.</summary>
    public static Link<T>[] Of(Variation[] variations, T self, Func<Variation, T[]> parts) =>
        [
            .. variations
                .Select(
                    (variation, n) =>
                        new Link<T>(n, self, variation.Weight, variation.Weights, parts(variation))
                )
                .Where(link => !Array.TrueForAll(link.Parts, part => ReferenceEquals(part, self))),
        ];

    /// <summary>The derivative of something of it.</summary>
    public double Derivative(Func<T, double> value)
    {
        var sum = Weight * value(Self);
        for (var n = 0; n < Parts.Length; n++)
        {
            sum += Parts[n] is { } part ? Weights[n] * value(part) : 0;
        }

        return sum;
    }

    /// <summary>The same of something that depends on frequency.</summary>
    public ComplexVector DerivativeAt(RealVector omega, VectorFunction<T, ComplexVector> value)
    {
        var sum = Weight == 0 ? ComplexVector.Zero : Weight * value(Self, omega);
        for (var n = 0; n < Parts.Length; n++)
        {
            sum += Parts[n] is { } part ? Weights[n] * value(part, omega) : ComplexVector.Zero;
        }

        return sum;
    }
}
