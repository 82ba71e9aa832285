using BenchmarkDotNet.Attributes;
using UnitsNet;

namespace AirColumn.Benchmarks;

/// <summary>Ten resonances, a length for a note and single frequencies, a new column each time.</summary>
[MemoryDiagnoser]
public class ResonanceBenchmarks
{
    private readonly double[] frequencies = Tubes.Frequencies();
    private readonly double[] real = new double[4096];
    private readonly double[] imaginary = new double[4096];
    private readonly Bore cones = Tubes.Cones(10);
    private readonly Column column = Tubes.Column(10);
    private readonly Column roomColumn = new(Tubes.Cones(10), Tubes.Room);
    private readonly ResonanceList ten = new Column(Tubes.Cones(10), Tubes.Room).FirstResonances(10);
    private readonly Column stepped = new(
        Bore.Build()
            .Cylinder(Length.FromMillimeters(31), Length.FromMillimeters(30))
            .Cylinder(Length.FromMillimeters(50), Length.FromMillimeters(980))
            .Cone(Length.FromMillimeters(75), Length.FromMillimeters(120))
            .OpenEnd(Length.FromMillimeters(3)),
        Tubes.Air
    );

    /// <summary>4096 impedances of ten cones, compiled before.</summary>
    [Benchmark(Baseline = true)]
    public void Impedances() => column.Impedance(frequencies, real, imaginary);

    /// <summary>The first ten of ten cones, from the bore on.</summary>
    [Benchmark]
    public ResonanceList TenResonances() => new Column(cones, Tubes.Air).FirstResonances(10);

    /// <summary>Gradients of the first ten of ten cones with all 35 dimensions and quantities of the air; the resonances are known.</summary>
    [Benchmark]
    public IReadOnlyList<ResonanceGradient> TenGradients() => roomColumn.Gradients(ten);

    /// <summary>The length of the middle of a stepped tube for a note.</summary>
    [Benchmark]
    public LengthSolution LengthForANote() => SectionLength.Solve(stepped, 1, Frequency.FromHertz(73.4));

    /// <summary>One impedance of a column that has answered there before.</summary>
    [Benchmark]
    public System.Numerics.Complex OneFrequency() => column.ImpedanceAt(Frequency.FromHertz(440));

    /// <summary>One impedance of a new column.</summary>
    [Benchmark]
    public System.Numerics.Complex OneFrequencyFirst() =>
        new Column(cones, Tubes.Air).ImpedanceAt(Frequency.FromHertz(440));
}
