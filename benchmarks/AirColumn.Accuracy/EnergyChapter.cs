using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Accuracy;

/// <summary>Conservation: what goes in comes out or stays at the wall.</summary>
internal static class EnergyChapter
{
    private static readonly (string Name, Bore Bore)[] Bores =
    [
        (
            "drone tube with a mouth insert",
            Bore.Build()
                .Cylinder(Mm(30), Mm(25))
                .Cylinder(Mm(38), Mm(1240))
                .Cone(Mm(70), Mm(90))
                .OpenEnd(Mm(3))
        ),
        ("cone, 12 to 40 mm", Bore.Build().Cone(Mm(12), Mm(40), Mm(700)).OpenEnd()),
        (
            "tube with an exponential bell",
            Bore.Build()
                .Cylinder(Mm(12), Mm(900))
                .Horn(HornLaw.Exponential, Mm(12), Mm(110), Mm(400))
                .BaffledEnd()
        ),
    ];

    public static Chapter Make() =>
        new(
            "Energy",
            "The power sent in is compared with the power radiated plus the power lost to friction and heat at the wall. Each of these "
                + "powers is computed independently: those lost to friction and heat, by quadrature of the field inside.",
            [
                .. Bores.Select(bore => new Quantity(
                    $"Power balance of a {bore.Name}, relative",
                    "conservation of energy",
                    "20 Hz to 2 kHz",
                    "",
                    [
                        .. Enumerable
                            .Range(0, 40)
                            .Select(i =>
                                new Column(bore.Bore, TableAir)
                                    .PowerAt(Frequency.FromHertz(20 * Math.Pow(100, i / 39.0)))
                                    .Imbalance
                            ),
                    ],
                    1e-10
                )),
            ],
            []
        );
}
