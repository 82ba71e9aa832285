using UnitsNet;

namespace AirColumn.Tests.Acoustics;

/// <summary>The air of the tables in Reference: the constants in their header lines.</summary>
internal static class ReferenceAir
{
    public static Air TableAir { get; } =
        Air.FromConstants(
            Speed.FromMetersPerSecond(343.37),
            Density.FromKilogramsPerCubicMeter(1.2045),
            DynamicViscosity.FromPascalSeconds(1.814e-5),
            ThermalConductivity.FromWattsPerMeterKelvin(0.0258),
            SpecificEntropy.FromJoulesPerKilogramKelvin(1006),
            1.4019
        );

    public static Length Metres(double value) => Length.FromMeters(value);

    public static Length Mm(double value) => Length.FromMillimeters(value);

    /// <summary>One-dimensional waves however steep the wall, where these are what is tested.</summary>
    public static ColumnOptions OneDimensional { get; } = new() { Wavefronts = Wavefronts.Curved };

    public static ColumnOptions Lossless { get; } = OneDimensional with { Losses = WallLosses.None };

    public static Column Column(Section section, BoreEnd end, ColumnOptions? options = null) =>
        new(new Bore([section], end), TableAir, options ?? OneDimensional);
}
