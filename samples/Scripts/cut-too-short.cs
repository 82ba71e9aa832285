#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var cut = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(25))
        .Cylinder(diameter: Length.FromMillimeters(38), length: Length.FromMillimeters(1090))
        .OpenEnd(wall: Length.FromMillimeters(2)),
    air
);
var d2 = Tuning.Concert.FrequencyOf(Pitch.Parse("D2"));
Console.WriteLine($"As cut: {cut.FirstResonances(1)[0].Nearest(Tuning.Concert)}");

var joined = ShortTube.Sleeve(cut, insideDiameter: Length.FromMillimeters(38), d2);
Console.WriteLine($"More of the same pipe: {joined.Length.Millimeters:F1} mm");
var over = ShortTube.Sleeve(cut, insideDiameter: Length.FromMillimeters(42.5), d2);
Console.WriteLine($"A sleeve over the end: to reach {over.Length.Millimeters:F1} mm beyond it");
var ring = ShortTube.NarrowEnd(cut, ringLength: Length.FromMillimeters(20), d2);
Console.WriteLine($"A ring of 20 mm in the end: {ring.Values[0].Value * 1000:F1} mm inside");
