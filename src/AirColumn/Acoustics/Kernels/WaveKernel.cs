using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>The kernel of the widest vectors this machine has.</summary>
internal static class WaveKernel
{
    /// <summary>Input impedances at frequencies that all lie in one block.</summary>
    public static void Run(
        WaveBlock block,
        ReadOnlySpan<double> hertz,
        Span<double> real,
        Span<double> imaginary
    )
    {
        if (Vector512.IsHardwareAccelerated)
        {
            WaveKernel512.Run(block, hertz, real, imaginary);
        }
        else if (Vector256.IsHardwareAccelerated)
        {
            WaveKernel256.Run(block, hertz, real, imaginary);
        }
        else if (Vector128.IsHardwareAccelerated)
        {
            WaveKernel128.Run(block, hertz, real, imaginary);
        }
        else
        {
            WaveKernelScalar.Run(block, hertz, real, imaginary);
        }
    }
}
