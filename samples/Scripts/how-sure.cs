#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var tube = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(25))
        .Cylinder(diameter: Length.FromMillimeters(40.4), length: Length.FromMillimeters(1140))
        .Cone(to: Length.FromMillimeters(60), length: Length.FromMillimeters(60))
        .OpenEnd(wall: Length.FromMillimeters(3)),
    air
);
Tolerance[] tolerances =
[
    new(ColumnParameter.Diameter(0), Length.FromMillimeters(0.3)),
    new(
        ColumnParameter.Together(ColumnParameter.Diameter(1), ColumnParameter.InletDiameter(2)),
        Length.FromMillimeters(0.4)
    ),
    new(ColumnParameter.SectionLength(1), Length.FromMillimeters(1)),
    new(ColumnParameter.OutletDiameter(2), Length.FromMillimeters(2)),
    Tolerance.Temperature(TemperatureDelta.FromKelvins(3)),
    Tolerance.Humidity(Ratio.FromPercent(20)),
];
foreach (var budget in tube.Budgets(tube.FirstResonances(2), tolerances))
{
    Console.WriteLine(
        $"{budget.Resonance.Nearest(Tuning.Concert)}, ±{budget.PlusMinusCents:F1} cents (19 times out of 20)"
    );
    foreach (var contribution in budget.Contributions)
    {
        Console.WriteLine($"  {contribution.Share, 6:P1}  {contribution.Tolerance}");
    }
}
