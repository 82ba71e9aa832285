using AirColumn.Documents;
using AirColumn.Tests.Acoustics;
using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace AirColumn.Tests.Documents;

/// <summary>Documents of every kind, with dimensions of any number of digits.</summary>
public static class DocumentArbitraries
{
    private static Gen<double> Unit => Gen.Choose(0, int.MaxValue - 1).Select(i => i / (double)int.MaxValue);

    private static Gen<AirState> States =>
        from temperature in Between(-20, 45)
        from humidity in Between(0, 100)
        from pressure in Between(80, 110)
        from carbonDioxide in Between(0, 0.1)
        select new AirState(
            Temperature.FromDegreesCelsius(temperature),
            RelativeHumidity.FromPercent(humidity),
            Pressure.FromKilopascals(pressure),
            Ratio.FromDecimalFractions(carbonDioxide)
        );

    private static Gen<AirProfile> Airs =>
        Gen.OneOf(
            States.Select(state => AirProfile.Uniform(Air.At(state))),
            from state in States
            from model in Gen.Elements(AirModel.Iec61094, AirModel.GasMixture)
            select AirProfile.Uniform(Air.At(state, model)),
            Constants.Select(AirProfile.Uniform),
            from states in States.Two()
            from over in Gen.OneOf(Gen.Constant<Length?>(null), Diameters.Select(length => (Length?)length))
            select AirProfile.Linear(states.Item1, states.Item2, over),
            from states in States.Two()
            from decay in Inches
            select AirProfile.Exponential(states.Item1, states.Item2, decay),
            from first in Between(0, 1)
            from states in States.Three()
            select AirProfile.Tabulated(
                new AirProfilePoint(Length.FromInches(first), states.Item1),
                new AirProfilePoint(Length.FromInches(first + 7 / 3.0), states.Item2),
                new AirProfilePoint(Length.FromMeters(1), states.Item3)
            )
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

    private static Gen<Section> Bends =>
        from diameter in Between(1, 90)
        from radius in Between(91, 3000)
        from angle in Between(0.1, 400)
        select (Section)
            new BendSection(
                Length.FromMillimeters(diameter),
                Length.FromMillimeters(radius),
                Angle.FromDegrees(angle)
            );

    private static Gen<Section> Profiles =>
        from count in Gen.Choose(2, 12)
        from steps in Between(0.01, 7).ArrayOf(count)
        from diameters in Diameters.ArrayOf(count)
        from wall in Gen.Elements(Enum.GetValues<ProfileJoin>())
        select (Section)
            new ProfileSection(
                [
                    .. diameters.Select(
                        (diameter, i) => new ProfilePoint(Length.FromInches(steps.Take(i).Sum()), diameter)
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
            Between(0, 900).Select(correction => BlownEnd.Open(Length.FromMillimeters(correction))),
            Between(0, 9).Select(wall => BlownEnd.FreeOpen(Length.FromMillimeters(wall)))
        );

    private static Gen<Bore> Plain =>
        from sections in Gen.OneOf(Cylinders, Cones, Horns, Profiles, Bends).NonEmptyListOf()
        from farEnd in FarEnds
        select new Bore(sections, farEnd);

    // Holes, and branches with branches, in a bore that is long enough for them.
    private static Gen<Bore> Opened =>
        from seed in Gen.Choose(0, int.MaxValue - 1)
        let room = new CylinderSection(Length.FromMillimeters(17), Length.FromMillimeters(300))
        let random = RandomBore.From(seed)
        let bore = RandomOpenings.From(seed, new Bore([.. random.Sections, room], random.FarEnd)).Bore
        let branch = new SideBranch(
            Length.FromMillimeters(0.3),
            Bore.Build()
                .Cylinder(Length.FromMillimeters(0.1), Length.FromMillimeters(20))
                .Branch(
                    Length.FromInches(0.4),
                    Bore.Build().Cylinder(Length.FromMillimeters(0.1), Length.FromMillimeters(1)).ClosedEnd(),
                    "inner"
                )
                .OpenEnd()
        )
        select new Bore(
            bore.Sections,
            bore.FarEnd,
            bore.Holes.Select((hole, i) => i == 0 ? hole with { Name = "first \n" } : hole),
            bore.Branches.Prepend(branch)
        );

    private static Gen<Fingering> FingeringsOf(Bore bore) =>
        Gen.OneOf(
            Gen.Elements(Fingering.AllOpen, Fingering.AllClosed),
            Gen.Elements(true, false).ArrayOf(bore.Holes.Count).Select(open => Fingering.Of(open))
        );

    private static Gen<RadiationModel> RadiationOf(Bore bore) =>
        Gen.Elements(
            bore.FarEnd switch
            {
                OpenEnd { WallMetres: > 0 } => [RadiationModel.Exact, RadiationModel.Dalmont2001],
                OpenEnd => [RadiationModel.Norris1989, RadiationModel.Silva2009, RadiationModel.Causse1984],
                BaffledEnd => [RadiationModel.Norris1989, RadiationModel.Silva2009, RadiationModel.Exact],
                _ => new[] { RadiationModel.Exact, RadiationModel.Causse1984 },
            }
        );

    public static Arbitrary<ColumnDocument> Documents()
    {
        var documents =
            from name in Gen.Elements<string?>(null, "", "stepped tube", "Größe 𝄞 \"2\" \\ \n\0 <tube>")
            from air in Airs
            from bore in Gen.OneOf(Plain, Opened)
            from losses in Gen.Elements(Enum.GetValues<WallLosses>())
            from lossFactor in Gen.Elements(1.0, 1.15, 0.1, 10)
            from mutual in Gen.Elements(true, false)
            from wavefronts in Gen.Elements(Enum.GetValues<Wavefronts>())
            from modes in Gen.Choose(0, ColumnOptions.MostModes)
            from radiation in RadiationOf(bore)
            from tolerance in Between(-12.9, -3.1)
            from blownEnd in BlownEnds
            from fingering in FingeringsOf(bore)
            from fingerings in FingeringsOf(bore).ListOf()
            select new ColumnDocument(
                bore,
                air,
                new ColumnOptions
                {
                    Losses = losses,
                    LossFactor = lossFactor,
                    MutualRadiation = mutual,
                    Wavefronts = wavefronts,
                    Modes = modes > 0 ? modes : null,
                    Radiation = radiation,
                    RelativeTolerance = Math.Pow(10, tolerance),
                    BlownEnd = blownEnd,
                    Fingering = fingering,
                },
                name,
                fingerings.Select((one, i) => new NamedFingering($"{i}. 𝄞", one))
            );
        return documents.ToArbitrary();
    }

    private static Gen<double> Between(double min, double max) => Unit.Select(t => min + t * (max - min));
}
