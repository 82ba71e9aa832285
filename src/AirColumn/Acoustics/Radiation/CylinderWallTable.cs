namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// What a small source on a long rigid cylinder of radius r hears of itself beyond the static limit, at kr = 6·(i/20)², i = 1 to 20: the
/// pressure jωρ/r·G for unit flow, summed over the circular modes of the cylinder; to 2e-5.
/// </summary>
/// <remarks>Recomputed by dotnet run -c Release --project benchmarks/AirColumn.Tables -- cylinder-wall</remarks>
internal static class CylinderWallTable
{
    /// <summary>The last kr.</summary>
    public const double HighestKr = 6;

    /// <summary>Re G.</summary>
    public static ReadOnlySpan<double> Inertance =>
        [
            0.00001,
            0.00018,
            0.00103,
            0.00361,
            0.00926,
            0.01798,
            0.02678,
            0.03329,
            0.03995,
            0.04817,
            0.05474,
            0.06063,
            0.06723,
            0.07237,
            0.07799,
            0.08276,
            0.08768,
            0.09200,
            0.09641,
            0.10035,
        ];

    /// <summary>The resistance over that in free space, less 1: 0 there, 1 in a plane.</summary>
    public static ReadOnlySpan<double> Resistance =>
        [
            -0.00044,
            -0.00367,
            -0.00767,
            0.00241,
            0.05566,
            0.17410,
            0.32686,
            0.44451,
            0.51567,
            0.58284,
            0.64727,
            0.69053,
            0.73038,
            0.76355,
            0.78988,
            0.81365,
            0.83269,
            0.84967,
            0.86403,
            0.87638,
        ];
}
