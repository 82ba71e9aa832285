#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(18), RelativeHumidity.FromPercent(60));
var tube = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(25))
        .Cylinder(diameter: Length.FromMillimeters(40), length: Length.FromMillimeters(1200))
        .OpenEnd(wall: Length.FromMillimeters(2.5)),
    air
);
var note = Tuning.Concert.FrequencyOf(Pitch.Parse("D#2"));
double[] outlets = [40, 50, 65, 80];
foreach (
    var answer in TaperStudy.Compare(
        tube,
        section: 1,
        drone: note,
        [.. outlets.Select(mm => Length.FromMillimeters(mm))]
    )
)
{
    var (drone, overblown) = (answer.Resonances[0], answer.Resonances[1]);
    Console.WriteLine(
        $"40 to {answer.Outlet.Millimeters:F0} mm: {answer.Solution.Length.Millimeters:F1} mm long, overblown {answer.IntervalCents:F0} cents "
            + $"above the drone, Q {drone.QualityFactor:F0} and {overblown.QualityFactor:F0}"
    );
}
