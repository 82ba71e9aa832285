#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var tube = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(25))
        .Cone(
            from: Length.FromMillimeters(34),
            to: Length.FromMillimeters(70),
            length: Length.FromMillimeters(900)
        )
        .Cone(to: Length.FromMillimeters(110), length: Length.FromMillimeters(250))
        .OpenEnd(wall: Length.FromMillimeters(3)),
    air
);
var d2 = Tuning.Concert.FrequencyOf(Pitch.Parse("D2"));
foreach (
    var (name, cents) in new[]
    {
        ("octave", Cents.Octave),
        ("tenth", Cents.MajorTenth),
        ("twelfth", Cents.Twelfth),
    }
)
{
    var shape = OverblownInterval.WithFlare(tube, pipe: 1, drone: d2, cents);
    Console.WriteLine($"{name, -7}  {shape.Explanation}");
    foreach (var chosen in shape.Values)
    {
        Console.WriteLine($"         {chosen.Variable.Parameter} {chosen.Value * 1000:F1} mm");
    }
}
