using BenchmarkDotNet.Attributes;
using UnitsNet;

namespace AirColumn.Benchmarks;

/// <summary>Shapes and uncertainties, against one search of the resonances they are made of.</summary>
[MemoryDiagnoser]
public class DesignBenchmarks
{
    private static readonly Column Flared = new(
        Bore.Build()
            .Cylinder(Length.FromMillimeters(31), Length.FromMillimeters(30))
            .Cone(Length.FromMillimeters(36), Length.FromMillimeters(60), Length.FromMillimeters(900))
            .Cone(Length.FromMillimeters(120), Length.FromMillimeters(300))
            .OpenEnd(Length.FromMillimeters(3)),
        Tubes.Room,
        new ColumnOptions { Wavefronts = Wavefronts.Curved }
    );

    private static readonly ResonanceList Two = Flared.FirstResonances(2);

    /// <summary>From ten random starts, drone and octave; all ten to the end.</summary>
    public static ShapeSolution TenStarts() =>
        ShapeSearch.Solve(
            Flared,
            [
                new(
                    ColumnParameter.SectionLength(1),
                    Length.FromMillimeters(300),
                    Length.FromMillimeters(1500)
                ),
                new(
                    ColumnParameter.JointDiameter(1),
                    Length.FromMillimeters(40),
                    Length.FromMillimeters(100)
                ),
                new(
                    ColumnParameter.OutletDiameter(2),
                    Length.FromMillimeters(60),
                    Length.FromMillimeters(200)
                ),
                new(
                    ColumnParameter.SectionLength(2),
                    Length.FromMillimeters(100),
                    Length.FromMillimeters(700)
                ),
            ],
            [
                ShapeTarget.Resonance(1, Frequency.FromHertz(73.416)),
                ShapeTarget.Interval(1, 2, 1200),
                ShapeTarget.Widening(1, 2),
            ],
            new ShapeOptions
            {
                Starts = 10,
                FromColumn = false,
                AllStarts = true,
            }
        );

    /// <summary>Two resonances of a new column.</summary>
    [Benchmark(Baseline = true)]
    public ResonanceList TwoResonances() =>
        new Column(Flared.Bore, Tubes.Room, Flared.Options).FirstResonances(2);

    /// <summary>Ten designs of a flare.</summary>
    [Benchmark]
    public ShapeSolution Shapes() => TenStarts();

    /// <summary>The budget of two resonances with six tolerances.</summary>
    [Benchmark]
    public IReadOnlyList<ResonanceBudget> Budgets() =>
        Flared.Budgets(
            Two,
            [
                new(ColumnParameter.Diameter(0), Length.FromMillimeters(0.3)),
                new(ColumnParameter.InletDiameter(1), Length.FromMillimeters(0.4)),
                new(ColumnParameter.SectionLength(1), Length.FromMillimeters(1)),
                new(ColumnParameter.OutletDiameter(2), Length.FromMillimeters(2)),
                Tolerance.Temperature(TemperatureDelta.FromKelvins(3)),
                Tolerance.Humidity(Ratio.FromPercent(20)),
            ]
        );
}
