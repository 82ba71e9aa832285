using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>The bores of interior-field.csv and baffled-horns.csv.</summary>
internal static class FieldTubes
{
    public static Bore Named(string name) =>
        name switch
        {
            "step" => Bore.Build().Cylinder(Mm(41), Mm(600)).Cylinder(Mm(60), Mm(600)).IdealOpenEnd(),
            "insert" => Bore.Build().Cylinder(Mm(16), Mm(15)).Cylinder(Mm(40), Mm(1200)).IdealOpenEnd(),
            "drone" => Bore.Build()
                .Cylinder(Mm(30), Mm(25))
                .Cylinder(Mm(38), Mm(1240))
                .Cylinder(Mm(60), Mm(90))
                .IdealOpenEnd(),
            "cone" => Bore.Build().Cone(Mm(20), Mm(100), Mm(1000)).BaffledEnd(),
            "steep_cone" => Bore.Build().Cone(Mm(10), Mm(310), Mm(500)).BaffledEnd(),
            "flare" => Bore.Build()
                .Cylinder(Mm(12), Mm(1000))
                .Horn(HornLaw.Exponential, Mm(12), Mm(110), Mm(400))
                .BaffledEnd(),
            "bell" => Bore.Build()
                .Cylinder(Mm(11.5), Mm(1000))
                .Add(new HornSection(Mm(11.5), Mm(123), Mm(450), 0.7))
                .BaffledEnd(),
            "wavy_gentle" => Wavy(2.2, 100),
            "wavy_strong" => Wavy(4, 100),
            "wavy_short" => Wavy(3, 50),
            _ => throw new ArgumentException($"No bore is called {name}.", nameof(name)),
        };

    // 48 points a wave: joined smoothly they follow the sine to a few millionths of the radius.
    private static Bore Wavy(double amplitude, double wave)
    {
        var count = (int)(48 * 1200 / wave);
        ProfilePoint[] points =
        [
            .. Enumerable
                .Range(0, count + 1)
                .Select(i => 1200.0 * i / count)
                .Select(x => new ProfilePoint(
                    Mm(x),
                    Mm(40 + 2 * amplitude * Math.Sin(2 * Math.PI * x / wave))
                )),
        ];
        return Bore.Build().Profile(points, ProfileJoin.Smooth).IdealOpenEnd();
    }
}
