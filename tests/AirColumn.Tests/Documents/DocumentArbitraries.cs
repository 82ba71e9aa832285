using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Documents;
using AirColumn.Gases;
using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace AirColumn.Tests.Documents;

/// <summary>Documents of every kind, with dimensions of any number of digits.</summary>
public static class DocumentArbitraries
{
    private static Gen<double> Unit => Gen.Choose(0, int.MaxValue - 1).Select(i => i / (double)int.MaxValue);

    private static Gen<Air> States =>
        from temperature in Between(-20, 45)
        from humidity in Between(0, 100)
        from pressure in Between(80, 110)
        from carbonDioxide in Between(0, 0.1)
        select Air.At(
            Temperature.FromDegreesCelsius(temperature),
            RelativeHumidity.FromPercent(humidity),
            Pressure.FromKilopascals(pressure),
            Ratio.FromDecimalFractions(carbonDioxide)
        );

    private static Gen<Air> Constants =>
        from speed in Between(200, 1000)
        from density in Between(0.1, 10)
        from viscosity in Between(1e-6, 1e-4)
        from conductivity in Between(0.01, 0.2)
        from capacity in Between(500, 5000)
        from ratio in Between(1.01, 1.99)
        select Air.FromConstants(
            Speed.FromMetersPerSecond(speed),
            Density.FromKilogramsPerCubicMeter(density),
            DynamicViscosity.FromPascalSeconds(viscosity),
            ThermalConductivity.FromWattsPerMeterKelvin(conductivity),
            SpecificEntropy.FromJoulesPerKilogramKelvin(capacity),
            ratio
        );

    private static Gen<Length> Diameters =>
        Between(0.02, 9000).Select(value => Length.FromMillimeters(value));

    private static Gen<Length> Inches => Between(0.01, 300).Select(value => Length.FromInches(value));

    private static Gen<Section> Cylinders =>
        from diameter in Diameters
        from length in Inches
        select (Section)new CylinderSection(diameter, length);

    private static Gen<Section> Cones =>
        from inlet in Inches
        from outlet in Diameters
        from length in Diameters
        select (Section)new ConeSection(inlet, outlet, length);

    private static Gen<Section> Horns =>
        from law in Gen.Elements(Enum.GetValues<HornLaw>())
        from inlet in Between(1, 40)
        from outlet in Between(41, 90)
        from length in Inches
        from exponent in Between(0.2, 3)
        let narrow = Length.FromMillimeters(inlet)
        let wide = Length.FromMillimeters(outlet)
        select (Section)(
            law == HornLaw.Bessel
                ? new HornSection(wide, narrow, length, exponent)
                : new HornSection(law, narrow, wide, length)
        );

    // Positions as people measure them: in whole tenths of a millimetre.
    private static Gen<Section> Profiles =>
        from count in Gen.Choose(2, 12)
        from steps in Gen.Choose(1, 5000).ArrayOf(count)
        from diameters in Diameters.ArrayOf(count)
        from wall in Gen.Elements(Enum.GetValues<ProfileJoin>())
        select (Section)
            new ProfileSection(
                [
                    .. diameters.Select(
                        (diameter, i) =>
                            new ProfilePoint(Length.FromMillimeters(steps.Take(i).Sum() / 10.0), diameter)
                    ),
                ],
                wall
            );

    private static Gen<BoreEnd> FarEnds =>
        Gen.OneOf(
            Between(0, 10).Select(wall => (BoreEnd)new OpenEnd(Length.FromMillimeters(wall))),
            Gen.Elements<BoreEnd>(new BaffledEnd(), new ClosedEnd(), new IdealOpenEnd())
        );

    private static Gen<BlownEnd> BlownEnds =>
        Gen.OneOf(
            Gen.Constant(BlownEnd.Closed),
            Between(0, 900).Select(correction => BlownEnd.Open(Length.FromMillimeters(correction)))
        );

    public static Arbitrary<ColumnDocument> Documents()
    {
        var documents =
            from name in Gen.Elements<string?>(null, "", "stepped tube", "Größe 𝄞 \"2\" \\ \n\0 <tube>")
            from air in Gen.OneOf(States, Constants)
            from sections in Gen.OneOf(Cylinders, Cones, Horns, Profiles).NonEmptyListOf()
            from farEnd in FarEnds
            from losses in Gen.Elements(Enum.GetValues<WallLosses>())
            from wavefronts in Gen.Elements(Enum.GetValues<Wavefronts>())
            from modes in Gen.Choose(0, ColumnOptions.MostModes)
            from blownEnd in BlownEnds
            select new ColumnDocument(
                new Bore(sections, farEnd),
                air,
                new ColumnOptions
                {
                    Losses = losses,
                    Wavefronts = wavefronts,
                    Modes = modes > 0 ? modes : null,
                    BlownEnd = blownEnd,
                },
                name
            );
        return documents.ToArbitrary();
    }

    private static Gen<double> Between(double min, double max) => Unit.Select(t => min + t * (max - min));
}
