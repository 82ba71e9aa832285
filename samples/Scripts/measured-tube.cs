#:project ../../src/AirColumn/AirColumn.csproj
#:property InvariantGlobalization=true
using System.Numerics;
using AirColumn;
using UnitsNet;

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var drawn = Made(insert: 25, pipe: 40.4, bell: 60);

// In place of a measurement: the tube as it came out, its bell formed too wide and its mouthpiece not pushed home, with noise of half a percent.
var random = new Random(1);
var real = Made(insert: 27, pipe: 40.4, bell: 63);
var hertz = Enumerable.Range(0, 190).Select(i => 50.0 + 10 * i).ToArray();
var reflectance = hertz.Select(f =>
{
    var z = real.ImpedanceAt(Frequency.FromHertz(f));
    var r = (z - drawn.CharacteristicImpedance) / (z + drawn.CharacteristicImpedance);
    return r + 0.01 * new Complex(random.NextDouble() - 0.5, random.NextDouble() - 0.5);
});
var measured = MeasuredReflectance.OfReflectance(
    hertz,
    [.. reflectance],
    drawn.CharacteristicImpedance,
    standardDeviation: 0.005
);

var fit = BoreFit.Solve(
    drawn,
    measured,
    [
        new(ColumnParameter.SectionLength(0), Length.FromMillimeters(4)),
        new(ColumnParameter.Diameter(1), Length.FromMillimeters(0.4)),
        new(ColumnParameter.SectionLength(1), Length.FromMillimeters(3)),
        new(ColumnParameter.OutletDiameter(2), Length.FromMillimeters(5)),
        Tolerance.Temperature(TemperatureDelta.FromKelvins(1)),
    ]
);
foreach (var value in fit.Values)
{
    Console.WriteLine(
        $"{value.Parameter, -28} {Show(value.Believed), 9} → {Show(value.Value), 9} ± {Show(value.PlusMinus)} {(value.IsOff ? "off" : "")}"
    );

    string Show(double x) =>
        value.Parameter.Unit == "m" ? $"{1000 * x:0.00} mm" : $"{x:0.00} {value.Parameter.Unit}";
}

Column Made(double insert, double pipe, double bell) =>
    new(
        Bore.Build()
            .Cylinder(diameter: Length.FromMillimeters(30), length: Length.FromMillimeters(insert))
            .Cylinder(diameter: Length.FromMillimeters(pipe), length: Length.FromMillimeters(1140))
            .Cone(to: Length.FromMillimeters(bell), length: Length.FromMillimeters(60))
            .OpenEnd(wall: Length.FromMillimeters(3)),
        air
    );
