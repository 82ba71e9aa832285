#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var tubes = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(34), length: Length.FromMillimeters(800))
        .Cylinder(diameter: Length.FromMillimeters(42), length: Length.FromMillimeters(300))
        .OpenEnd(wall: Length.FromMillimeters(2)),
    air
);
var slide = SlidingTube.Of(
    tubes,
    section: 1,
    pushedIn: Length.FromMillimeters(60),
    drawnOut: Length.FromMillimeters(720),
    Tuning.Concert
);
Console.WriteLine($"{Tuning.Concert.Nearest(slide.Lowest)} to {Tuning.Concert.Nearest(slide.Highest)}");
foreach (var position in slide.Positions)
{
    Console.WriteLine($"{position.Note, -3} drawn out {position.DrawnOut.Millimeters, 5:F1} mm");
}
