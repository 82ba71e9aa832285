#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var bore = Bore.Build()
    .Cylinder(diameter: Length.FromMillimeters(31), length: Length.FromMillimeters(30))
    .Cylinder(diameter: Length.FromMillimeters(50), length: Length.FromMillimeters(980))
    .Cone(to: Length.FromMillimeters(75), length: Length.FromMillimeters(120))
    .OpenEnd(wall: Length.FromMillimeters(3));
var column = new Column(bore, air); // blown at a closed end
foreach (var resonance in column.Resonances(below: Frequency.FromHertz(600)))
{
    Console.WriteLine(
        $"{resonance.Frequency.Hertz:F2} Hz  {resonance.Nearest(Tuning.Concert)}  Q {resonance.QualityFactor:F0}"
    );
}
