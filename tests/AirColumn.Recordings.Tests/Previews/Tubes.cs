using System.Globalization;
using AirColumn.Recordings.Previews;
using UnitsNet;

namespace AirColumn.Recordings.Tests.Previews;

/// <summary>Columns that several tests play, and notes that are rendered once.</summary>
internal static class Tubes
{
    private static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(20),
        RelativeHumidity.FromPercent(50)
    );

    private static readonly Dictionary<string, Lazy<Column>> Columns = new()
    {
        ["straight"] = Of(b => b.Cylinder(Mm(40), Mm(1300)).OpenEnd(Mm(2))),
        ["cone"] = Of(b => b.Cone(Mm(30), Mm(90), Mm(1300)).OpenEnd(Mm(2))),
        ["bell"] = Of(b => b.Cylinder(Mm(35), Mm(1000)).Cone(Mm(110), Mm(400)).OpenEnd(Mm(2))),
        ["mouthpiece"] = Of(b => b.Cylinder(Mm(24), Mm(30)).Cone(Mm(50), Mm(80), Mm(1300)).OpenEnd(Mm(2))),
    };

    private static readonly Dictionary<(string, int), Lazy<PreviewSound>> Notes = Columns
        .Keys.SelectMany(name => new[] { (name, 1), (name, 2) })
        .ToDictionary(
            key => key,
            key => new Lazy<PreviewSound>(() =>
                DronePreview.Of(Column(key.name), new PreviewOptions { Register = key.Item2 })
            )
        );

    public static Column Column(string name) => Columns[name].Value;

    public static PreviewSound Note(string name, int register) => Notes[(name, register)].Value;

    public static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    public static double Hertz(Column column, int register) =>
        AirColumn.ColumnResonances.FirstResonances(column, register)[register - 1].Frequency.Hertz;

    public static double Cents(double from, double to) => 1200 * Math.Log2(to / from);

    /// <summary>Fails, NaN included, unless |error| ≤ allowed.</summary>
    public static void Within(double allowed, double error, object? context = null) =>
        Assert.True(
            Math.Abs(error) <= allowed,
            string.Create(CultureInfo.InvariantCulture, $"off by {error:G4}, allowed {allowed:G4} {context}")
        );

    private static Lazy<Column> Of(Func<BoreBuilder, Bore> shape) =>
        new(() => new(shape(Bore.Build()), Room));
}
