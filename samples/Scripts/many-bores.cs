#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var drawn = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(1000))
        .Cone(to: Length.FromMillimeters(60), length: Length.FromMillimeters(200))
        .OpenEnd(wall: Length.FromMillimeters(3)),
    air
);
Tolerance[] tolerances =
[
    new(ColumnParameter.SectionLength(0), Length.FromMillimeters(2)),
    new(ColumnParameter.Diameter(0), Length.FromMillimeters(0.3)) { IsNormal = true },
    new(ColumnParameter.OutletDiameter(1), Length.FromMillimeters(2)),
];
var first = drawn.FirstResonances(1)[0];
var cents = new double[2000];
foreach (
    var answer in Batch.Map(
        drawn.RandomColumns(tolerances, cents.Length),
        (made, token) => made.FirstResonances(1, token)[0].Frequency
    )
)
{
    cents[answer.Index] = Cents.Between(first.Frequency, answer.Answer);
}

Array.Sort(cents);
Console.WriteLine($"as drawn {first.Frequency.Hertz:F2} Hz");
Console.WriteLine($"95 % of {cents.Length} tubes from {cents[49]:F1} to {cents[1949]:+0.0} cents");
Console.WriteLine($"to first order ±{drawn.Budgets([first], tolerances)[0].PlusMinusCents:F1} cents");
