#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(23), RelativeHumidity.FromPercent(55));

// Pan pipes: stopped at the foot, blown across an open end that the lip covers in part.
var pipe = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(13), length: Length.FromMillimeters(200))
        .ClosedEnd(),
    air,
    new ColumnOptions { BlownEnd = BlownEnd.Open(correction: Length.FromMillimeters(7)) }
);
string[] scale = ["G4", "A4", "B4", "C5", "D5", "E5", "F#5", "G5"];
foreach (
    var tube in TubeSet.Over(pipe, section: 0, Tuning.Concert, [.. scale.Select(note => Pitch.Parse(note))])
)
{
    Console.WriteLine(
        $"{tube.Note, -3} {tube.Solution.Length.Millimeters, 6:F1} mm  {tube.Solution.CentsPerMillimetre:F1} cents per mm"
    );
}
