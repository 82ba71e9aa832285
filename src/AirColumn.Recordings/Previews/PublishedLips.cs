using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>Published lip parameters for one-mass models, each for the instrument named by its source.</summary>
/// <remarks>The values were read in second-hand tables, not in the papers themselves.</remarks>
public static class PublishedLips
{
    /// <summary>A trombone and a saxhorn (source: velut2017, table 2): the same as the defaults of <see cref="LipModel"/>.</summary>
    public static LipModel Velut2017 { get; } = Of(0.5, 12, 7, 1 / 0.11);

    /// <summary>Artificial lips on a trombone, soft (source: cullen2000).</summary>
    public static LipModel Cullen2000Soft { get; } = Of(0.63, 18, 10.5, 1 / 0.07);

    /// <summary>Artificial lips on a trombone, medium (source: cullen2000).</summary>
    public static LipModel Cullen2000Medium { get; } = Of(0.53, 12, 6, 1 / 0.11);

    /// <summary>Artificial lips on a trombone, tight (source: cullen2000).</summary>
    public static LipModel Cullen2000Tight { get; } = Of(0.44, 11, 9, 1 / 0.09);

    /// <summary>A trumpet (source: freour2022, table 2).</summary>
    public static LipModel Freour2022 { get; } = Of(0.1, 8, 3, 2);

    /// <summary>A trumpet, identified from measurements (source: freour2022, table 3).</summary>
    public static LipModel Freour2022Identified { get; } = Of(0.078, 12.78, 5.25, 2.46);

    /// <summary>A cylinder of 1.4 m (source: berjamin2017).</summary>
    public static LipModel Berjamin2017 { get; } = Of(0.5, 10, 4, 1.78);

    private static LipModel Of(
        double openingMillimetres,
        double widthMillimetres,
        double quality,
        double massPerArea
    ) =>
        new()
        {
            OpeningAtRest = Length.FromMillimeters(openingMillimetres),
            Width = Length.FromMillimeters(widthMillimetres),
            QualityFactor = quality,
            MassPerArea = AreaDensity.FromKilogramsPerSquareMeter(massPerArea),
        };
}
