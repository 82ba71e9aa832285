using UnitsNet;

namespace AirColumn.Tests.Acoustics;

/// <summary>Bores of one to five sections of all kinds, from a seed.</summary>
internal static class RandomBore
{
    public static Bore From(int seed, double smallest = 0.5e-3, double largest = 0.1, double longest = 2)
    {
        var random = new Random(seed);
        var builder = Bore.Build();
        var sections = random.Next(1, 6);
        for (var i = 0; i < sections; i++)
        {
            builder = random.Next(4) switch
            {
                0 => builder.Cylinder(Diameter(), Axial()),
                1 => builder.Cone(Diameter(), Diameter(), Axial()),
                2 => builder.Horn((HornLaw)(random.Next(2) * 4), Diameter(), Diameter(), Axial()),
                _ => builder.Profile(
                    [
                        new ProfilePoint(Length.Zero, Diameter()),
                        new ProfilePoint(Axial(), Diameter()),
                        new ProfilePoint(Length.FromMeters(longest + 0.5), Diameter()),
                    ],
                    (ProfileJoin)random.Next(2)
                ),
            };
        }

        return random.Next(5) switch
        {
            0 => builder.OpenEnd(),
            1 => builder.OpenEnd(Length.FromMillimeters(1 + random.Next(5))),
            2 => builder.BaffledEnd(),
            3 => builder.ClosedEnd(),
            _ => builder.IdealOpenEnd(),
        };

        Length Diameter() => Length.FromMeters(2 * Logarithmic(smallest, largest));
        Length Axial() => Length.FromMeters(Logarithmic(1e-3, longest));
        double Logarithmic(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
    }
}
