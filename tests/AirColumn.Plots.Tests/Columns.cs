using UnitsNet;

namespace AirColumn.Plots.Tests;

/// <summary>Columns to draw.</summary>
internal static class Columns
{
    public static Air Air { get; } =
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));

    public static Column Horn { get; } =
        new(
            Bore.Build()
                .Cylinder(diameter: Mm(31), length: Mm(30))
                .Cylinder(diameter: Mm(50), length: Mm(980))
                .Cone(to: Mm(75), length: Mm(120))
                .OpenEnd(wall: Mm(3)),
            Air
        );

    public static Column Flute { get; } =
        new(
            Bore.Build()
                .Cylinder(diameter: Mm(19), length: Mm(547))
                .Hole(position: Mm(311), diameter: Mm(9), height: Mm(2.2))
                .Hole(position: Mm(366), diameter: Mm(9), height: Mm(2.2))
                .OpenEnd(wall: Mm(2.2)),
            Air,
            new ColumnOptions { BlownEnd = BlownEnd.Open(Mm(9)) }
        );

    /// <summary>Without losses, so that its peaks have no end.</summary>
    public static Column Ideal { get; } =
        new(
            Bore.Build().Cylinder(Mm(40), Mm(1000)).IdealOpenEnd(),
            Air,
            new ColumnOptions { Losses = WallLosses.None }
        );

    /// <summary>Two parameters that are spread evenly, and an answer of which the second has a quarter.</summary>
    public static IReadOnlyList<StudyQuantity> Study { get; } =
    [
        new("length, mm", Enumerable.Range(0, 400).Select(i => 500.0 + i % 20)),
        new("diameter, mm", Enumerable.Range(0, 400).Select(i => i == 7 ? double.NaN : 30.0 + i / 20)),
        new("pitch, cents", Enumerable.Range(0, 400).Select(i => Math.Sqrt(3) * (i % 20) - i / 20)),
    ];

    public static IReadOnlyList<ResonanceBudget> Budgets { get; } =
        Horn.Budgets(
            Horn.FirstResonances(3),
            [
                new Tolerance(ColumnParameter.SectionLength(1), Mm(1)),
                Tolerance.Temperature(TemperatureDelta.FromKelvins(3)),
            ]
        );

    /// <summary>One picture of each kind.</summary>
    public static IReadOnlyDictionary<string, Picture> Pictures { get; } =
        new Dictionary<string, Picture>
        {
            ["bore"] = BorePicture.Of(Horn.Bore),
            ["holes"] = BorePicture.Of(Flute.Bore),
            ["impedance"] = ImpedancePicture.Of(Horn),
            ["flute"] = ImpedancePicture.Of(Flute),
            ["curve"] = ImpedancePicture.OfCurve(Horn.Impedance(FrequencyGrid.Logarithmic(20, 2000, 300))),
            ["ideal"] = ImpedancePicture.Of(Ideal),
            ["short"] = BorePicture.Of(Tube(300, 60).Bore),
            ["branch"] = BorePicture.Of(
                Bore.Build()
                    .Cylinder(Mm(20), Mm(300))
                    .Branch(Mm(100), Bore.Build().Cylinder(Mm(8), Mm(10)).ClosedEnd())
                    .ClosedEnd()
            ),
            ["tuning"] = TuningPicture.Of(Horn.FirstResonances(5)),
            ["sure"] = TuningPicture.WithUncertainty(Budgets),
            ["wave"] = StandingWavePicture.Of(Horn, Frequency.FromHertz(236)),
            ["budget"] = BudgetPicture.Of(Budgets[0]),
            ["shares"] = StudyPicture.Shares(Study[2], [Study[0], Study[1]]),
            ["map"] = StudyPicture.Map(Study[0], Study[1], Study[2]),
            ["front"] = StudyPicture.Front(Study[1], Study[2]),
        };

    public static Length Mm(double mm) => Length.FromMillimeters(mm);

    public static Column Tube(double diameter, double length) =>
        new(Bore.Build().Cylinder(Mm(diameter), Mm(length)).OpenEnd(), Air);
}
