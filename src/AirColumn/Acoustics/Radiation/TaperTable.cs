namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// What <see cref="TaperedMouth"/> adds for each unit of slope, by Hadamard's formula over the field of a straight pipe's mouth; to 1e-6.
/// </summary>
/// <remarks>Recomputed by dotnet run -c Release --project benchmarks/AirColumn.Tables -- tapers</remarks>
internal static class TaperTable
{
    /// <summary>The ka of the course are 0 and multiples of this.</summary>
    public const double Step = 0.25;

    /// <summary>−∫…·s² ds in a baffle at low frequency.</summary>
    public const double Curvature = -0.015886;

    /// <summary>Re κ in a baffle.</summary>
    public static ReadOnlySpan<double> Real =>
        [
            0.077974,
            0.078596,
            0.080059,
            0.081491,
            0.082271,
            0.082494,
            0.082795,
            0.083743,
            0.085432,
            0.087561,
            0.089798,
            0.092131,
            0.095121,
            0.100439,
            0.113769,
        ];

    /// <summary>Im κ in a baffle.</summary>
    public static ReadOnlySpan<double> Imaginary =>
        [
            0.000000,
            -0.000167,
            -0.001178,
            -0.003230,
            -0.005781,
            -0.008082,
            -0.009833,
            -0.011360,
            -0.013247,
            -0.015877,
            -0.019252,
            -0.023140,
            -0.027377,
            -0.032360,
            -0.041278,
        ];

    /// <summary>b/a; 1 is a thin edge.</summary>
    public static ReadOnlySpan<double> OuterOverInner => [1, 1.005, 1.01, 1.02, 1.05, 1.1, 1.2, 1.5, 2, 3];

    /// <summary>κ of these rims at low frequency.</summary>
    public static ReadOnlySpan<double> RimSlope =>
        [0.102340, 0.099341, 0.097662, 0.095305, 0.091112, 0.087393, 0.083766, 0.080178, 0.078756, 0.078183];
}
