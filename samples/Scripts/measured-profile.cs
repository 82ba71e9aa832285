#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using System.Globalization;
using AirColumn;
using UnitsNet;

// In place of File.ReadAllText("bore.csv").
var csv = """
    position_mm,diameter_mm
    0,12.0
    50,12.4
    150,13.9
    300,17.0
    420,22.5
    480,31.0
    500,38.0
    """;
var points = csv.Split('\n')
    .Skip(1)
    .Select(line =>
        line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()
    )
    .Select(cells => new ProfilePoint(
        Position: Length.FromMillimeters(cells[0]),
        Diameter: Length.FromMillimeters(cells[1])
    ))
    .ToList();
var bore = Bore.Build().Profile(points, ProfileJoin.Smooth).OpenEnd(wall: Length.FromMillimeters(1));
var column = new Column(bore, Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50)));
foreach (var resonance in column.FirstResonances(4))
{
    Console.WriteLine($"{resonance.Frequency.Hertz:F1} Hz  {resonance.Nearest(Tuning.Concert)}");
}
