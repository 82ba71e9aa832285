using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Gases;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics.Kernels;

/// <summary>A column that differs from another in one place shares the series of stretches elsewhere, and answers as one that shares nothing.</summary>
public class SharedSeriesTests
{
    private const int Sections = 30;

    private static readonly double[] Hertz = [.. FrequencyGrid.Linear(20, 2000, 600).Hertz];

    private static readonly Air WarmAir = Air.At(
        Temperature.FromDegreesCelsius(30),
        RelativeHumidity.FromPercent(50)
    );

    public static TheoryData<string> Changes =>
        ["inlet", "middle", "outlet", "far end", "air", "losses", "blown end"];

    [Theory]
    [MemberData(nameof(Changes))]
    public void What_is_shared_is_what_would_be_computed(string change)
    {
        var before = new Column(Tube(-1), TableAir, OneDimensional);
        _ = Curve(before);
        var (after, anew) = change switch
        {
            "inlet" => Pair(before, Tube(0, before.Bore)),
            "middle" => Pair(before, Tube(Sections / 2, before.Bore)),
            "outlet" => Pair(before, Tube(Sections - 1, before.Bore)),
            "far end" => Pair(before, new Bore(before.Bore.Sections, new OpenEnd(Mm(5)))),
            "air" => (before.WithAir(WarmAir), new Column(before.Bore, WarmAir, OneDimensional)),
            "losses" => With(before, OneDimensional with { Losses = WallLosses.LargeTube }),
            _ => With(before, OneDimensional with { BlownEnd = BlownEnd.FreeOpen() }),
        };
        Assert.Equal(Curve(anew), Curve(after));
    }

    [Fact]
    public void Only_a_stretch_with_a_change_in_it_is_computed_anew()
    {
        var before = new Column(Tube(-1), TableAir, OneDimensional);
        _ = Curve(before);
        var store = before.Compiled.Series;
        var all = store.Count;
        Assert.True(all >= 6, $"{all}");
        _ = Curve(before.WithBore(new Bore(before.Bore.Sections, new OpenEnd(Mm(5)))));
        Assert.Equal(all, store.Count);
        // Two stretches of the three at most.
        _ = Curve(before.WithBore(Tube(0, before.Bore)));
        Assert.InRange(store.Count, all + 1, all + 2 * all / 3);
    }

    private static (Column After, Column Anew) Pair(Column before, Bore bore) =>
        (before.WithBore(bore), new Column(bore, TableAir, OneDimensional));

    private static (Column After, Column Anew) With(Column before, ColumnOptions options) =>
        (before.With(before.Parts with { Options = options }), new Column(before.Bore, TableAir, options));

    // Of one list of cones, but for one that is wider at its end.
    private static Bore Tube(int wider, Bore? like = null) =>
        new(
            Enumerable
                .Range(0, Sections)
                .Select(i =>
                    i == wider || like is null
                        ? new ConeSection(
                            Mm(Diameter(i)),
                            Mm(Diameter(i + 1) + (i == wider ? 0.5 : 0)),
                            Mm(1200.0 / Sections)
                        )
                        : like.Sections[i]
                ),
            new OpenEnd(Mm(3))
        );

    private static double Diameter(int i) => 20 + 25.0 * i / Sections;

    private static (double, double)[] Curve(Column column)
    {
        var (real, imaginary) = (new double[Hertz.Length], new double[Hertz.Length]);
        column.Impedance(Hertz, real, imaginary);
        return [.. real.Zip(imaginary)];
    }
}
