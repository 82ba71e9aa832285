using AirColumn;
using AirColumn.Plots;
using UnitsNet;

// One picture of each kind, or those named, into a folder; docs/plots.md has two of them.
if (args.Length < 1)
{
    Console.Error.WriteLine("Usage: PlotGallery FOLDER [screen|paper] [svg|png] [NAME ...]");
    return 2;
}

var size = args.Length > 1 && args[1] == "paper" ? PictureSize.Paper : PictureSize.Screen;
var ending = args.Length > 2 ? args[2] : "png";
var names = args.Skip(3).ToHashSet();

var air = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
var horn = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(31), length: Length.FromMillimeters(30))
        .Cylinder(diameter: Length.FromMillimeters(50), length: Length.FromMillimeters(980))
        .Cone(to: Length.FromMillimeters(75), length: Length.FromMillimeters(120))
        .OpenEnd(wall: Length.FromMillimeters(3)),
    air
);
var flute = new Column(
    Bore.Build()
        .Cylinder(diameter: Length.FromMillimeters(19), length: Length.FromMillimeters(547))
        .Hole(
            position: Length.FromMillimeters(252),
            diameter: Length.FromMillimeters(8),
            height: Length.FromMillimeters(2.2)
        )
        .Hole(
            position: Length.FromMillimeters(311),
            diameter: Length.FromMillimeters(9),
            height: Length.FromMillimeters(2.2)
        )
        .Hole(
            position: Length.FromMillimeters(366),
            diameter: Length.FromMillimeters(9),
            height: Length.FromMillimeters(2.2)
        )
        .Hole(
            position: Length.FromMillimeters(441),
            diameter: Length.FromMillimeters(9),
            height: Length.FromMillimeters(2.2)
        )
        .OpenEnd(wall: Length.FromMillimeters(2.2)),
    air,
    new ColumnOptions { BlownEnd = BlownEnd.Open(correction: Length.FromMillimeters(9)) }
);
var resonances = horn.FirstResonances(8);
Tolerance[] tolerances =
[
    new(ColumnParameter.SectionLength(1), Length.FromMillimeters(1)),
    new(
        ColumnParameter.Together(ColumnParameter.Diameter(1), ColumnParameter.InletDiameter(2)),
        Length.FromMillimeters(0.4)
    ),
    new(ColumnParameter.OutletDiameter(2), Length.FromMillimeters(2)),
    Tolerance.Temperature(TemperatureDelta.FromKelvins(3)),
];
var budgets = horn.Budgets(resonances, tolerances);

Directory.CreateDirectory(args[0]);
Save("bore", BorePicture.Of(horn.Bore));
Save("bore-with-holes", BorePicture.Of(flute.Bore));
Save("impedance", ImpedancePicture.Of(horn));
Save("impedance-flute", ImpedancePicture.Of(flute.WithFingering(Fingering.Parse("xx oo"))));
Save("tuning", TuningPicture.Of(resonances));
Save("tuning-and-how-sure", TuningPicture.WithUncertainty(budgets));
Save("standing-wave", StandingWavePicture.Of(horn, resonances[2].Frequency));
Save("budget", BudgetPicture.Of(budgets[0]));
return 0;

void Save(string name, Picture picture)
{
    if (names.Count == 0 || names.Contains(name))
    {
        picture.At(size).Save(Path.Combine(args[0], $"{name}.{ending}"));
    }
}
