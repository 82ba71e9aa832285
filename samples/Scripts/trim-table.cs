#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var tube = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(25))
        .Cylinder(diameter: Length.FromMillimeters(40.4), length: Length.FromMillimeters(1190))
        .OpenEnd(wall: Length.FromMillimeters(3)),
    air
);
var target = Tuning.Concert.FrequencyOf(Pitch.Parse("D2"));

// Two takes on a finished tube of this kind: the drone sounded 16 and 19 cents above its resonance.
var correction = PlayingCorrection.LipsInRoomAir.After([16, 19], standardDeviationCents: 5);
Console.WriteLine($"What the player adds: {correction}");
var trim = TrimTable.For(
    tube,
    new TrimQuestion(section: 1, target)
    {
        Step = Length.FromInches(1.0 / 4),
        Correction = correction,
        Tolerances =
        [
            new(ColumnParameter.Diameter(1), Length.FromMillimeters(0.4)),
            new(ColumnParameter.SectionLength(1), Length.FromMillimeters(1)),
            Tolerance.Temperature(TemperatureDelta.FromKelvins(3)),
        ],
    }
);
foreach (var row in trim.Rows)
{
    Console.WriteLine(
        $"cut {row.Cut.Millimeters, 5:F1} mm: {row.Note.Hertz:F2} Hz, {row.Cents:+0.0;-0.0} cents, ±{row.PlusMinusCents:F1}"
    );
}

Console.WriteLine(trim.Explanation);
