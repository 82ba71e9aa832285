#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var bore = Bore.Build()
    .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(1000))
    .OpenEnd(wall: Length.FromMillimeters(3));
var room = new Column(bore, Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50)));
var atHome = room.FirstResonances(1)[0].Frequency;
foreach (var (celsius, percent) in new[] { (5, 50), (20, 50), (35, 50), (35, 95) })
{
    var air = Air.At(Temperature.FromDegreesCelsius(celsius), RelativeHumidity.FromPercent(percent));
    var first = room.WithAir(air).FirstResonances(1)[0];
    Console.WriteLine(
        $"{celsius, 2} °C, {percent} %: {air.SpeedOfSound.MetersPerSecond:F1} m/s, {first.Frequency.Hertz:F2} Hz, "
            + $"{Cents.Between(atHome, first.Frequency):+0.0;-0.0;0.0} cents"
    );
}
