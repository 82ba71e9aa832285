global using RealVector = System.Numerics.Vector<double>;
using System.Numerics;
using System.Runtime.CompilerServices;

namespace AirColumn.Acoustics.Vectors;

/// <summary>
/// Real numbers side by side, one for each of some frequencies: as many as the machine's registers hold (2 to 8), from one text.
/// </summary>
/// <remarks>
/// <see cref="Vector{T}"/> takes the width that the runtime finds, with or without hardware for it. Products are added by
/// <see cref="MultiplyAdd"/>, one instruction where there is one, and a product and a sum elsewhere: an exact fused operation in
/// software would be twenty times slower.
/// </remarks>
internal static class RealVectors
{
    /// <summary>How many numbers lie side by side.</summary>
    public static int Count => Vector<double>.Count;

    /// <summary>a·b + c, rounded once or twice as the machine has it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static RealVector MultiplyAdd(RealVector a, RealVector b, RealVector c) =>
        Vector.MultiplyAddEstimate(a, b, c);

    /// <summary>The largest of the numbers.</summary>
    public static double Largest(RealVector each)
    {
        var largest = each[0];
        for (var i = 1; i < Count; i++)
        {
            largest = Math.Max(largest, each[i]);
        }

        return largest;
    }

    /// <summary>The smallest of the numbers.</summary>
    public static double Smallest(RealVector each)
    {
        var smallest = each[0];
        for (var i = 1; i < Count; i++)
        {
            smallest = Math.Min(smallest, each[i]);
        }

        return smallest;
    }

    /// <summary>From a function of the place in the vector.</summary>
    public static RealVector Each(Func<int, double> value)
    {
        Span<double> values = stackalloc double[Count];
        for (var i = 0; i < Count; i++)
        {
            values[i] = value(i);
        }

        return Vector.Create<double>(values);
    }
}
