using BenchmarkDotNet.Attributes;
using UnitsNet;

namespace AirColumn.Benchmarks;

/// <summary>A cylinder with a row of open tone holes, a new column each time: each hole by itself, or all heard outside by each other.</summary>
[MemoryDiagnoser]
public class HoleBenchmarks
{
    private static readonly ColumnOptions Unheard = new() { MutualRadiation = false };

    private readonly double[] frequencies = Tubes.Frequencies();
    private readonly double[] real = new double[4096];
    private readonly double[] imaginary = new double[4096];
    private Bore bore = null!;

    /// <summary>How many holes.</summary>
    [Params(6, 16, 40)]
    public int Holes { get; set; }

    [GlobalSetup]
    public void Drill() =>
        bore = new Bore(
            [new CylinderSection(Length.FromMillimeters(15), Length.FromMillimeters(600))],
            new OpenEnd(Length.FromMillimeters(3)),
            Enumerable
                .Range(0, Holes)
                .Select(i => new ToneHole(
                    Length.FromMillimeters(350 + 220.0 * i / Holes),
                    Length.FromMillimeters(Math.Min(8, 120.0 / Holes)),
                    Length.FromMillimeters(3)
                ))
        );

    /// <summary>The first curve of 4096 impedances, each hole by itself.</summary>
    [Benchmark(Baseline = true)]
    public void UnheardCurve() =>
        new Column(bore, Tubes.Air, Unheard).Impedance(frequencies, real, imaginary);

    /// <summary>The same with mutual radiation.</summary>
    [Benchmark]
    public void HeardCurve() => new Column(bore, Tubes.Air).Impedance(frequencies, real, imaginary);

    /// <summary>The first five resonances, each hole by itself.</summary>
    [Benchmark]
    public ResonanceList UnheardResonances() => new Column(bore, Tubes.Air, Unheard).FirstResonances(5);

    /// <summary>The same with mutual radiation.</summary>
    [Benchmark]
    public ResonanceList HeardResonances() => new Column(bore, Tubes.Air).FirstResonances(5);
}
