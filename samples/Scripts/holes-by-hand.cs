#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

// Blown at a closed end, as a reed or lips close it. Each hole: distance of its axis from the blown end, and its diameter.
(double Position, double Diameter)[] holes = [(210, 7), (245, 7.5), (280, 8), (320, 7), (350, 8), (395, 9)];
var pipe = Bore.Build().Cylinder(diameter: Length.FromMillimeters(15), length: Length.FromMillimeters(480));
foreach (var (position, diameter) in holes)
{
    pipe = pipe.Hole(
        position: Length.FromMillimeters(position),
        diameter: Length.FromMillimeters(diameter),
        height: Length.FromMillimeters(5)
    );
}

var column = new Column(
    pipe.OpenEnd(wall: Length.FromMillimeters(5)),
    Air.At(Temperature.FromDegreesCelsius(25), RelativeHumidity.FromPercent(80))
);
foreach (var text in new[] { "xxx xxx", "xxx xxo", "xxx xoo", "xxx ooo", "xxo ooo", "xxo xxo" })
{
    var found = column.WithFingering(Fingering.Parse(text)).FirstResonances(2);
    var interval = Cents.Between(found[0].Frequency, found[1].Frequency);
    Console.WriteLine($"{text}  {found[0].Nearest(Tuning.Concert)}, overblown {interval:F0} cents higher");
}
