using System.Numerics;
using System.Runtime.InteropServices;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Spectra;

/// <summary>Frequencies in rising order: where a range ends is found by halving, not by asking each of thousands.</summary>
internal static class RisingFrequencies
{
    /// <summary>Whether none is smaller than the one before it.</summary>
    public static bool Are(ReadOnlySpan<double> hertz)
    {
        ref var first = ref MemoryMarshal.GetReference(hertz);
        var i = 0;
        for (; i < hertz.Length - RealVectors.Count; i += RealVectors.Count)
        {
            var (these, next) = (
                Vector.LoadUnsafe(ref first, (nuint)i),
                Vector.LoadUnsafe(ref first, (nuint)i + 1)
            );
            if (!Vector.GreaterThanOrEqualAll(next, these))
            {
                return false;
            }
        }

        for (; i < hertz.Length - 1; i++)
        {
            if (!(hertz[i + 1] >= hertz[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>How many are below a limit.</summary>
    public static int CountBelow(double limit, ReadOnlySpan<double> hertz)
    {
        var (below, others) = (0, hertz.Length);
        while (below < others)
        {
            var middle = (below + others) / 2;
            (below, others) = hertz[middle] < limit ? (middle + 1, others) : (below, middle);
        }

        return below;
    }
}
