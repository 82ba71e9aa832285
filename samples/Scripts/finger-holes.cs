#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(22), RelativeHumidity.FromPercent(50));
var tube = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(19), length: Length.FromMillimeters(500))
        .OpenEnd(wall: Length.FromMillimeters(2.2)),
    air,
    new ColumnOptions { BlownEnd = BlownEnd.Open(correction: Length.FromMillimeters(9)) }
);
double[] diameters = [8, 9, 9, 7, 9, 9];
var flute = FingerHoles.MajorScaleOn(
    tube,
    Tuning.Concert,
    Pitch.Parse("D4"),
    [.. diameters.Select(mm => Length.FromMillimeters(mm))]
);
Console.WriteLine(flute.Explanation);
Console.WriteLine($"tube {flute.Column.Bore.Length.Millimeters:F1} mm");
foreach (var hole in flute.Column.Bore.Holes)
{
    Console.WriteLine($"hole of {hole.Diameter.Millimeters:F0} mm at {hole.Position.Millimeters:F1} mm");
}

foreach (
    var fingering in new[] { "xxx xxx", "xxx xxo", "xxx xoo", "xxx ooo", "xxo ooo", "xoo ooo", "ooo ooo" }
)
{
    var resonance = flute.Column.WithFingering(Fingering.Parse(fingering)).FirstResonances(1)[0];
    Console.WriteLine($"{fingering}  {resonance.Nearest(Tuning.Concert)}");
}
