using UnitsNet;

namespace AirColumn.Tests.Acoustics;

/// <summary>Random bores with holes and branches put into their sides, and a random fingering.</summary>
internal static class RandomOpenings
{
    public static (Bore Bore, Fingering Fingering) From(int seed, Bore plain, int most = 4)
    {
        var random = new Random(seed);
        var holes = new List<ToneHole>();
        var branches = new List<SideBranch>();
        var length = plain.Length.Meters;
        var count = random.Next(1, most + 1);
        for (var i = 0; i < count; i++)
        {
            // One in each equal stretch, so that none overlaps.
            var stretch = length / count;
            var position = stretch * (i + 0.3 + 0.4 * random.NextDouble());
            var radius =
                Math.Min(plain.RadiusAt(position), 0.25 * stretch) * (0.2 + 0.75 * random.NextDouble());
            var diameter = Length.FromMeters(2 * radius);
            if (random.Next(3) > 0)
            {
                holes.Add(
                    new ToneHole(
                        Length.FromMeters(position),
                        diameter,
                        Length.FromMeters(radius * 4 * random.NextDouble())
                    )
                    {
                        ChimneyWall = random.Next(2) == 0 ? null : Length.FromMeters(0.2 * radius),
                        Pad =
                            random.Next(3) > 0
                                ? null
                                : new HolePad(Length.FromMeters(0.3 * radius), diameter * 1.4),
                    }
                );
            }
            else
            {
                BoreEnd end = random.Next(3) switch
                {
                    0 => new ClosedEnd(),
                    1 => new OpenEnd(Length.FromMillimeters(1)),
                    _ => new IdealOpenEnd(),
                };
                branches.Add(
                    new SideBranch(
                        Length.FromMeters(position),
                        Bore.Build()
                            .Cone(
                                diameter,
                                diameter * (0.5 + random.NextDouble()),
                                Length.FromMeters(length * 0.6 * random.NextDouble() + 1e-3)
                            )
                            .End(end)
                    )
                );
            }
        }

        return (
            new Bore(plain.Sections, plain.FarEnd, holes, branches),
            Fingering.Of([.. holes.Select(_ => random.Next(2) == 0)])
        );
    }
}
