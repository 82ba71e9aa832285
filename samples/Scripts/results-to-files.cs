#:project ../../src/AirColumn.Plots/AirColumn.Plots.csproj
#:property InvariantGlobalization=true
using AirColumn;
using AirColumn.Plots;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var tube = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(1000))
        .Cone(to: Length.FromMillimeters(60), length: Length.FromMillimeters(200))
        .OpenEnd(wall: Length.FromMillimeters(3)),
    air
);
var cold = tube.WithAir(Air.At(Temperature.FromDegreesCelsius(0), RelativeHumidity.FromPercent(50)));
var grid = FrequencyGrid.Linear(fromHertz: 20, toHertz: 1000, points: 981);
var folder = Directory.CreateTempSubdirectory("tube").FullName;

using (var csv = new StreamWriter(Path.Combine(folder, "impedance.csv")))
{
    tube.Impedance(grid).WriteCsv(csv);
}

using (var csv = new StreamWriter(Path.Combine(folder, "resonances.csv")))
{
    tube.FirstResonances(8).WriteCsv(csv);
}

BorePicture.Of(tube.Bore).Save(Path.Combine(folder, "bore.svg"));
ImpedancePicture.Of(tube).Save(Path.Combine(folder, "impedance.svg"));
ImpedancePicture
    .Compare(("at 20 °C", tube.Impedance(grid)), ("at 0 °C", cold.Impedance(grid)))
    .Save(Path.Combine(folder, "two-airs.png"));

foreach (var file in Directory.GetFiles(folder).Order())
{
    Console.WriteLine(Path.GetFileName(file));
}

Console.WriteLine(File.ReadLines(Path.Combine(folder, "impedance.csv")).First());
Console.WriteLine(File.ReadLines(Path.Combine(folder, "resonances.csv")).First());
