using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>Bores whose corners, steps and mouths see each other by radial modes, and some where these are too far apart to.</summary>
internal static class WavefrontFamilies
{
    public static Bore Named(string name) =>
        name.Split(' ') switch
        {
            ["bellows", var wave] => Bellows(Number(wave)),
            ["scatter", var seed] => Scatter((int)Number(seed)),
            ["gap", var length] => Cylinders((40, 500), (60, Number(length)), (40, 500)),
            ["ring", var length] => Cylinders((40, 500), (28, Number(length)), (40, 500)),
            ["rings", var length, var apart] => Row(10, 40, 300, (30, Number(length)), (40, Number(apart))),
            ["thread"] => Row(100, 20, 100, (23, 1.5), (20, 1.5)),
            ["couplings"] => Cylinders((41, 1000), (48, 1), (41, 14), (60, 1), (52, 200)),
            ["wider", var behind] => Cylinders((30, 600), (40, Number(behind))),
            ["narrower", var behind] => Cylinders((40, 600), (30, Number(behind))),
            ["cone", var slope] => Bore.Build()
                .Cone(Mm(20), Mm(20 + 1000 * Number(slope)), Mm(500))
                .OpenEnd(Mm(2)),
            ["stepped", var slope] => Bore.Build()
                .Cone(Mm(20), Mm(20 + 300 * Number(slope)), Mm(150))
                .Cone(Mm(30 + 300 * Number(slope)), Mm(30 + 600 * Number(slope)), Mm(150))
                .OpenEnd(Mm(2)),
            ["chamfer", var slope] => Bore.Build()
                .Cylinder(Mm(40), Mm(500))
                .Cone(Mm(40), Mm(46), Mm(3 / Number(slope)))
                .Cylinder(Mm(46), Mm(500))
                .OpenEnd(Mm(2)),
            ["brass"] => Bore.Build()
                .Cone(Mm(24), Mm(5), Mm(12))
                .Cone(Mm(5), Mm(9.5), Mm(70))
                .Cylinder(Mm(11.5), Mm(700))
                .Horn(HornLaw.Exponential, Mm(11.5), Mm(30), Mm(400))
                .Horn(HornLaw.Exponential, Mm(30), Mm(120), Mm(120))
                .OpenEnd(Mm(1)),
            ["bell"] => Bore.Build().Profile(MeasuredBell, ProfileJoin.Smooth).OpenEnd(Mm(1)),
            ["drone"] => Cylinders((30, 50), (38, 1000), (60, 150)),
            ["taper"] => Bore.Build()
                .Cylinder(Mm(30), Mm(60))
                .Cylinder(Mm(36), Mm(100))
                .Cone(Mm(36), Mm(70), Mm(1200))
                .OpenEnd(Mm(4)),
            _ => throw new ArgumentException($"No bore is called {name}.", nameof(name)),
        };

    /// <summary>Ten points along a horn of brass.</summary>
    public static IReadOnlyList<ProfilePoint> MeasuredBell { get; } =
    [
        .. new (double At, double Diameter)[]
        {
            (0, 11.5),
            (150, 11.7),
            (300, 13),
            (400, 17),
            (480, 24),
            (530, 32),
            (560, 42),
            (580, 55),
            (592, 75),
            (600, 123),
        }.Select(point => new ProfilePoint(Mm(point.At), Mm(point.Diameter))),
    ];

    /// <summary>A bore of up to six sections of all kinds, ordinary and wild ones, from a seed.</summary>
    public static Bore Random(int seed)
    {
        var random = new Random(seed);
        var builder = Bore.Build();
        var diameter = Between(8, 50);
        var count = random.Next(1, 7);
        var length = Between(300, 1800);
        for (var i = 0; i < count; i++)
        {
            var part = length / count * Between(0.05, 1.2);
            diameter *= random.Next(3) == 0 ? Between(0.6, 1.7) : 1;
            var from = diameter;
            switch (random.Next(5))
            {
                case 0 or 1:
                    builder = builder.Cylinder(Mm(from), Mm(part));
                    break;
                case 2:
                    var slope = Between(0.003, 0.25) * (random.Next(4) == 0 ? -1 : 1);
                    diameter = Math.Clamp(from + 2 * part * slope, from / 2.5, 3 * from);
                    builder = builder.Cone(Mm(from), Mm(diameter), Mm(part));
                    break;
                case 3:
                    diameter *= Between(1.05, 3.5);
                    builder = builder.Horn((HornLaw)random.Next(3), Mm(from), Mm(diameter), Mm(part));
                    break;
                default:
                    var points = new List<ProfilePoint>();
                    var pieces = random.Next(3, 12);
                    for (var j = 0; j <= pieces; j++)
                    {
                        points.Add(new ProfilePoint(Mm(part * j / pieces), Mm(diameter)));
                        diameter *= j < pieces ? 0.96 + 0.1 * random.NextDouble() : 1;
                    }

                    builder = builder.Profile(points, (ProfileJoin)random.Next(2));
                    break;
            }
        }

        return random.Next(4) switch
        {
            0 => builder.BaffledEnd(),
            1 => builder.IdealOpenEnd(),
            _ => builder.OpenEnd(Mm(Between(0.5, 5))),
        };

        double Between(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
    }

    private static double Number(string text) =>
        double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static Bore Cylinders(params (double Diameter, double Length)[] parts)
    {
        var builder = Bore.Build();
        foreach (var (diameter, length) in parts)
        {
            builder = builder.Cylinder(Mm(diameter), Mm(length));
        }

        return builder.OpenEnd(Mm(2));
    }

    private static Bore Row(
        int count,
        double diameter,
        double pipe,
        params (double Diameter, double Length)[] each
    ) => Cylinders([(diameter, pipe), .. Enumerable.Range(0, count).SelectMany(_ => each), (diameter, pipe)]);

    // Walls of slope 0.19, up and down, along 600 mm.
    private static Bore Bellows(double wave)
    {
        var wide = 40 + 0.19 * wave;
        var builder = Bore.Build();
        for (var x = 0.0; x < 600 - 1e-6; x += wave)
        {
            builder = builder.Cone(Mm(40), Mm(wide), Mm(wave / 2)).Cone(Mm(wide), Mm(40), Mm(wave / 2));
        }

        return builder.OpenEnd(Mm(2));
    }

    // A taper measured every 10 mm with a standard deviation of 1 mm, joined straight.
    private static Bore Scatter(int seed)
    {
        var random = new Random(seed);
        return Bore.Build()
            .Profile(
                [
                    .. Enumerable
                        .Range(0, 61)
                        .Select(i => new ProfilePoint(
                            Mm(10 * i),
                            Mm(30 + i / 6.0 + Math.Sqrt(12) * (random.NextDouble() - 0.5))
                        )),
                ],
                ProfileJoin.Straight
            )
            .OpenEnd(Mm(3));
    }
}
