#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var start = new Column(
    Bore.Build()
        .Cone(from: Mm(12), to: Mm(30), length: Mm(500))
        .Cone(to: Mm(60), length: Mm(400))
        .Cone(to: Mm(100), length: Mm(200))
        .Cone(to: Mm(160), length: Mm(80))
        .OpenEnd(wall: Mm(1)),
    air,
    new ColumnOptions { Wavefronts = Wavefronts.Curved }
);
var d3 = Tuning.Concert.FrequencyOf(Pitch.Parse("D3"));
var found = ShapeSearch.Solve(
    start,
    [
        new(ColumnParameter.SectionLength(0), Mm(100), Mm(1500)),
        new(ColumnParameter.JointDiameter(0), Mm(13), Mm(60)),
        new(ColumnParameter.JointDiameter(1), Mm(20), Mm(120)),
        new(ColumnParameter.JointDiameter(2), Mm(40), Mm(150)),
        new(ColumnParameter.OutletDiameter(3), Mm(60), Mm(300)),
        new(ColumnParameter.SectionLength(2), Mm(50), Mm(600)),
    ],
    [
        .. Enumerable.Range(1, 4).Select(n => ShapeTarget.Resonance(n, n * d3)),
        ShapeTarget.Widening(first: 0, last: 3),
    ]
);
Console.WriteLine(found.Explanation);
foreach (var value in found.Values)
{
    Console.WriteLine(value);
}

// The same bore with the wave fronts that the engine chooses by itself.
var check = new Column(found.Column.Bore, air);
foreach (var each in check.FirstResonances(4).HarmonicityAgainst(d3))
{
    Console.WriteLine(each);
}

static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);
