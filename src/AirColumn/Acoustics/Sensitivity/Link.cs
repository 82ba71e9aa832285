using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>What a parameter does to one part of a column: the part as it is a little to either side.</summary>
/// <param name="Parameter">Which parameter.</param>
/// <param name="Self">The part as it is.</param>
/// <param name="Weight">Its weight in the difference.</param>
/// <param name="Variants">The others with theirs; null where the part is not there.</param>
internal sealed record Link<T>(int Parameter, T Self, double Weight, (double Weight, T? Part)[] Variants)
    where T : class
{
    /// <summary>The link of a part that the parameter changes; null if it does not.</summary>
    public static Link<T>? Of(int parameter, Variation variation, T self, Func<Variant, T?> part)
    {
        (double Weight, T? Part)[] variants =
        [
            .. variation.Variants.Select(variant => (variant.Weight, part(variant))),
        ];
        return Array.TrueForAll(variants, variant => ReferenceEquals(variant.Part, self))
            ? null
            : new Link<T>(parameter, self, variation.Weight, variants);
    }

    /// <summary>The derivative of something of it.</summary>
    public double Derivative(Func<T, double> value)
    {
        var sum = Weight * value(Self);
        foreach (var (weight, part) in Variants)
        {
            sum += part is null ? 0 : weight * value(part);
        }

        return sum;
    }

    /// <summary>The derivative of something of it at eight frequencies.</summary>
    public ComplexLanes Derivative(Vector512<double> omega, Func<T, double, Complex> value)
    {
        Span<Complex> sums = stackalloc Complex[ComplexLanes.Count];
        for (var i = 0; i < ComplexLanes.Count; i++)
        {
            var sum = Weight == 0 ? 0 : Weight * value(Self, omega.GetElement(i));
            foreach (var (weight, part) in Variants)
            {
                sum += part is null ? 0 : weight * value(part, omega.GetElement(i));
            }

            sums[i] = sum;
        }

        return ComplexLanes.Of(sums);
    }
}
