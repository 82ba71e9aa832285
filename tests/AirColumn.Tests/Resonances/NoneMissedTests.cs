using System.Numerics;
using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Resonances;
using AirColumn.Tests.Acoustics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>The resonances found are the local maxima of |Z| that a dense scan sees, no more and no fewer.</summary>
public class NoneMissedTests
{
    // Hz: the sharpest peak of these bores is some tenths of a hertz wide.
    private const double Step = 0.25;

    public static TheoryData<string> ReferenceBores => [.. Bores.Keys];

    private static Dictionary<string, Bore> Bores =>
        new()
        {
            ["field-cylinder"] = Bore.Build().Cylinder(Mm(40.9), Mm(1300)).OpenEnd(Mm(3.7)),
            ["field-cylinder-baffle"] = Bore.Build().Cylinder(Mm(40.9), Mm(1300)).BaffledEnd(),
            ["field-cone"] = Bore.Build().Cone(Mm(30), Mm(90), Mm(1400)).OpenEnd(Mm(5)),
            ["cone_a"] = Bore.Build().Cone(Mm(4), Mm(20), Mm(300)).OpenEnd(),
            ["cone_b"] = Bore.Build().Cone(Mm(30), Mm(90), Mm(1400)).OpenEnd(),
            ["cone_c"] = Bore.Build().Cone(Mm(90), Mm(30), Mm(1400)).OpenEnd(),
            ["cone_d"] = Bore.Build().Cone(Mm(1), Mm(10), Mm(500)).OpenEnd(),
            ["cylinder 1 mm"] = Bore.Build().Cylinder(Mm(2), Mm(300)).OpenEnd(),
            ["cylinder 4 mm"] = Bore.Build().Cylinder(Mm(8), Mm(3000)).OpenEnd(),
            ["cylinder 20 mm"] = Bore.Build().Cylinder(Mm(40), Mm(3000)).ClosedEnd(),
            ["cylinder 40 mm"] = Bore.Build().Cylinder(Mm(80), Mm(1300)).IdealOpenEnd(),
        };

    [Theory]
    [MemberData(nameof(ReferenceBores))]
    public void Reference_bores(string name) =>
        FoundIsWhatAScanSees(new Column(Bores[name], TableAir), 2000, name);

    [Fact]
    public void Random_bores()
    {
        for (var seed = 0; seed < 12; seed++)
        {
            FoundIsWhatAScanSees(
                new Column(RandomBore.From(seed, 4e-3, 0.04, 1), TableAir),
                1200,
                $"seed {seed}"
            );
        }
    }

    private static void FoundIsWhatAScanSees(Column column, double top, string name)
    {
        top = Math.Min(top, column.HighestHertz);
        var found = column.Resonances(Frequency.FromHertz(top)).Select(r => r.Frequency.Hertz).ToList();
        var seen = Scan(column, top);
        Assert.True(
            found.Count == seen.Count
                && found.Zip(seen).All(pair => Math.Abs(pair.First - pair.Second) <= Step),
            $"{name}: found {string.Join(" ", found.Select(f => $"{f:F1}"))}; a scan sees {string.Join(" ", seen.Select(f => $"{f:F1}"))}"
        );
    }

    private static List<double> Scan(Column column, double top)
    {
        var peaks = new List<double>();
        var (before, last) = (0.0, 0.0);
        for (var f = Step; f < top; f += Step)
        {
            var now = Complex.Abs(column.InputImpedance(2 * Math.PI * f));
            if (last > before && last >= now && f > 2 * Step)
            {
                peaks.Add(f - Step);
            }

            (before, last) = (last, now);
        }

        return peaks;
    }
}
