using UnitsNet;

namespace AirColumn.Benchmarks;

/// <summary>The columns that are timed: cones in a row, 30 mm widening to 60 mm over 1.3 m, with a rim of 3 mm.</summary>
internal static class Tubes
{
    public static Air Air { get; } =
        Air.FromConstants(
            Speed.FromMetersPerSecond(343.37),
            Density.FromKilogramsPerCubicMeter(1.2045),
            DynamicViscosity.FromPascalSeconds(1.814e-5),
            ThermalConductivity.FromWattsPerMeterKelvin(0.0258),
            SpecificEntropy.FromJoulesPerKilogramKelvin(1006),
            1.4019
        );

    /// <summary>Air whose temperature is known, so that there is a derivative with it.</summary>
    public static Air Room { get; } =
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));

    public static Bore Cones(int sections, double scale = 1)
    {
        var length = Length.FromMeters(1.3 / sections);
        return new Bore(
            Enumerable.Range(0, sections).Select(i => new ConeSection(Diameter(i), Diameter(i + 1), length)),
            new OpenEnd(Length.FromMillimeters(3))
        );

        Length Diameter(int i) => Length.FromMillimeters(scale * (30 + 30.0 * i / sections));
    }

    /// <summary>The same with the end of one cone, and the beginning of the next, wider by some micrometres.</summary>
    public static Bore WithWiderJoint(Bore bore, int section, int micrometres)
    {
        var sections = bore.Sections.ToArray();
        var here = (ConeSection)sections[section];
        var joint = here.OutletDiameter + Length.FromMicrometers(micrometres);
        sections[section] = new ConeSection(here.InletDiameter, joint, here.Length);
        if (section + 1 < sections.Length)
        {
            var next = (ConeSection)sections[section + 1];
            sections[section + 1] = new ConeSection(joint, next.OutletDiameter, next.Length);
        }

        return new Bore(sections, bore.FarEnd);
    }

    public static Column Column(int sections, double scale = 1) => new(Cones(sections, scale), Air);

    public static double[] Frequencies(int count = 4096) =>
        FrequencyGrid.Linear(20, 2000, count).Hertz.ToArray();
}
