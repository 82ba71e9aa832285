using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>Columns of all kinds of parts, whose gradients are compared with differences.</summary>
internal static class GradientColumns
{
    private static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(21),
        RelativeHumidity.FromPercent(45)
    );

    public static Column Named(string name) =>
        name switch
        {
            "stepped tube" => new(
                Bore.Build()
                    .Cylinder(Mm(31), Mm(30))
                    .Cylinder(Mm(50), Mm(980))
                    .Cone(Mm(62), Mm(75), Mm(120))
                    .OpenEnd(Mm(3)),
                Room,
                new ColumnOptions { RelativeTolerance = 1e-13 }
            ),
            "flute" => new(
                new Bore(
                    [new CylinderSection(Mm(19), Mm(400)), new ConeSection(Mm(19), Mm(15), Mm(200))],
                    new OpenEnd(Mm(3)),
                    [
                        new ToneHole(Mm(300), Mm(8), Mm(4)),
                        new ToneHole(Mm(350), Mm(7), Mm(4)) { ChimneyWall = Mm(1) },
                        new ToneHole(Mm(450), Mm(6), Mm(4)) { Pad = new HolePad(Mm(2), Mm(9)) },
                    ]
                ),
                Room,
                new ColumnOptions
                {
                    RelativeTolerance = 1e-13,
                    BlownEnd = BlownEnd.Open(Mm(8)),
                    Fingering = Fingering.Parse("oxo"),
                }
            ),
            "horn in breath" => new(
                new Bore(
                    [
                        new CylinderSection(Mm(25), Mm(100)),
                        new BendSection(Mm(25), Mm(60), Angle.FromDegrees(90)),
                        new HornSection(HornLaw.Exponential, Mm(25), Mm(40), Mm(150)),
                        new HornSection(Mm(40), Mm(120), Mm(300), 0.7),
                        new ProfileSection(
                            [new(Mm(0), Mm(120)), new(Mm(50), Mm(130)), new(Mm(120), Mm(145))],
                            ProfileJoin.Smooth
                        ),
                    ],
                    new BaffledEnd(),
                    null,
                    [new SideBranch(Mm(60), Bore.Build().Cylinder(Mm(6), Mm(40)).ClosedEnd())]
                ),
                // Not saturated, where what condenses makes a corner; nor across 30 °C, where models of the air meet, nor where the profile is about to need another part.
                AirProfile.Linear(
                    new AirState(Temperature.FromDegreesCelsius(29.4), RelativeHumidity.FromPercent(80)),
                    Room.State!
                ),
                new ColumnOptions { RelativeTolerance = 1e-13, Wavefronts = Wavefronts.Curved }
            ),
            "couplings" => new(
                Bore.Build()
                    .Cylinder(Mm(41), Mm(500))
                    .Cylinder(Mm(48), Mm(1.3))
                    .Cylinder(Mm(41.2), Mm(14))
                    .Cylinder(Mm(60), Mm(9))
                    .Cone(Mm(52), Mm(54), Mm(200))
                    .OpenEnd(Mm(2)),
                Room,
                new ColumnOptions { RelativeTolerance = 1e-13, Wavefronts = Wavefronts.Curved }
            ),
            "capillary" => new(
                Bore.Build().Cone(Mm(1.2), Mm(1.6), Mm(300)).Cylinder(Mm(1), Mm(100)).OpenEnd(Mm(1)),
                Room,
                new ColumnOptions { RelativeTolerance = 1e-13, BlownEnd = BlownEnd.FreeOpen(Mm(1)) }
            ),
            "large-tube losses" => new(
                Bore.Build().Cone(Mm(30), Mm(60), Mm(900)).IdealOpenEnd(),
                Room,
                new ColumnOptions
                {
                    RelativeTolerance = 1e-13,
                    Losses = WallLosses.LargeTube,
                    Wavefronts = Wavefronts.Sloped,
                }
            ),
            // Longer than what one parameter reaches, with steps and joints in the middle.
            "row" => new(
                Bore.Build()
                    .Cone(Mm(24), Mm(27), Mm(150))
                    .Cone(Mm(30), Mm(34), Mm(120))
                    .Cone(Mm(41), Mm(200))
                    .Cylinder(Mm(38), Mm(90))
                    .Cone(Mm(44), Mm(40), Mm(160))
                    .Cone(Mm(52), Mm(110))
                    .Cone(Mm(55), Mm(66), Mm(140))
                    .OpenEnd(Mm(3)),
                Room,
                new ColumnOptions { RelativeTolerance = 1e-13 }
            ),
            "no losses" => new(
                Bore.Build().Cone(Mm(30), Mm(60), Mm(900)).Cylinder(Mm(40), Mm(100)).IdealOpenEnd(),
                Room,
                new ColumnOptions { RelativeTolerance = 1e-13, Losses = WallLosses.None }
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no such column"),
        };

    public static TheoryData<string> Names =>
        [
            "stepped tube",
            "couplings",
            "flute",
            "horn in breath",
            "capillary",
            "large-tube losses",
            "row",
            "no losses",
        ];

    /// <summary>
    /// Everything, but where the walls of two sections meet, both together: apart they would make a step, whose mass is not smooth where it
    /// begins.
    /// </summary>
    public static IReadOnlyList<ColumnParameter> Parameters(Column column)
    {
        var sections = column.Bore.Sections;
        var meets = Enumerable
            .Range(0, sections.Count - 1)
            .Where(i => !Bore.IsStep(sections[i], sections[i + 1]))
            .ToList();
        return
        [
            .. ColumnParameter
                .AllOf(column)
                .Where(p =>
                    !meets.Exists(i =>
                        p == ColumnParameter.OutletDiameter(i)
                        || p == ColumnParameter.InletDiameter(i + 1)
                        || p == ColumnParameter.Diameter(i)
                        || p == ColumnParameter.Diameter(i + 1)
                        || p == ColumnParameter.PointDiameter(i + 1, 0)
                    )
                ),
            // Of a cylinder the other end would go along.
            .. meets
                .Where(i => sections[i] is ConeSection && sections[i + 1] is ConeSection)
                .Select(ColumnParameter.JointDiameter),
            .. column.Options.Losses == WallLosses.None ? [] : new[] { ColumnParameter.Losses },
        ];
    }

    /// <summary>The derivative of something of a column, by a difference of fourth order.</summary>
    public static double[] Difference(
        Column column,
        ColumnParameter parameter,
        double step,
        Func<Column, double[]> value
    )
    {
        var at = parameter.Of(column);
        var (low, far, high, farther) = (Values(-1), Values(-2), Values(1), Values(2));
        return [.. low.Select((_, i) => (8 * (high[i] - low[i]) - (farther[i] - far[i])) / (12 * step))];

        double[] Values(int steps) => value(parameter.With(column, at + steps * step));
    }
}
