using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Design;
using AirColumn.Gases;
using AirColumn.Resonances;
using BenchmarkDotNet.Attributes;
using UnitsNet;

namespace AirColumn.Benchmarks;

/// <summary>First eight resonances and one length, against 256 impedances of the same column.</summary>
[MemoryDiagnoser]
public class ResonanceBenchmarks
{
    private readonly double[] frequencies = FrequencyGrid.Linear(20, 2000, 256).Hertz.ToArray();
    private readonly double[] real = new double[256];
    private readonly double[] imaginary = new double[256];
    private readonly Column column = new(
        Bore.Build()
            .Cylinder(Length.FromMillimeters(31), Length.FromMillimeters(30))
            .Cylinder(Length.FromMillimeters(50), Length.FromMillimeters(980))
            .Cone(Length.FromMillimeters(75), Length.FromMillimeters(120))
            .OpenEnd(Length.FromMillimeters(3)),
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
    );

    [Benchmark(Baseline = true)]
    public void Impedances() => column.Impedance(frequencies, real, imaginary);

    [Benchmark]
    public ResonanceList EightResonances() => column.FirstResonances(8);

    [Benchmark]
    public LengthSolution LengthForANote() => SectionLength.Solve(column, 1, Frequency.FromHertz(73.4));
}
