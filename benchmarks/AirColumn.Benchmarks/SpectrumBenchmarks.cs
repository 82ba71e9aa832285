using System.Numerics;
using AirColumn.Tests.Acoustics;
using BenchmarkDotNet.Attributes;

namespace AirColumn.Benchmarks;

/// <summary>Input impedance of lossy cones at 4096 frequencies, 20 Hz to 2 kHz.</summary>
[MemoryDiagnoser]
public class SpectrumBenchmarks
{
    private readonly PlainColumn plain = new(343.37, 1.2045, 1.814e-5, 0.0258, 1006, 1.4019);
    private readonly double[] frequencies = Tubes.Frequencies();
    private readonly FrequencyGrid grid = FrequencyGrid.Linear(20, 2000, 4096);
    private readonly double[] real = new double[4096];
    private readonly double[] imaginary = new double[4096];
    private (double Radius, double Length)[] cylinders = [];
    private Column column = null!;
    private Column narrow = null!;
    private int changes;

    /// <summary>How many sections.</summary>
    [Params(1, 10, 50, 200)]
    public int Sections { get; set; }

    [GlobalSetup]
    public void Compile()
    {
        column = Tubes.Column(Sections);
        narrow = Tubes.Column(Sections, 0.05);
        cylinders =
        [
            .. Enumerable
                .Range(0, Sections)
                .Select(i => (0.015 * (1 + (i + 0.5) / Sections), 1.3 / Sections)),
        ];
        Again();
        NarrowBore();
    }

    /// <summary>
    /// As a textbook would program it, with a cylinder of the mean radius for each cone: one evaluation of the losses a section, complex
    /// Bessel functions of a general-purpose library, products of 2×2 matrices. At 64 of the frequencies, counted for all.
    /// </summary>
    [Benchmark(Baseline = true)]
    public Complex Plain()
    {
        var sum = Complex.Zero;
        for (var i = 0; i < frequencies.Length; i += 64)
        {
            sum += plain.ClosedImpedance(frequencies[i], cylinders);
        }

        return sum;
    }

    /// <summary>The span API, once its series are there.</summary>
    [Benchmark]
    public void Again() => column.Impedance(frequencies, real, imaginary);

    /// <summary>Radii of 0.75 to 1.5 mm.</summary>
    [Benchmark]
    public void NarrowBore() => narrow.Impedance(frequencies, real, imaginary);

    /// <summary>The API in quantities.</summary>
    [Benchmark]
    public ImpedanceCurve Quantities() => column.Impedance(grid);

    /// <summary>A new column, and its first curve.</summary>
    [Benchmark]
    public void FirstCurve() => Tubes.Column(Sections).Impedance(frequencies, real, imaginary);

    /// <summary>One joint is made wider, by another micrometre each time, and the curve computed again: the parts elsewhere are shared.</summary>
    [Benchmark]
    public void ChangeAndCurve()
    {
        changes = changes % 1000 + 1;
        var changed = Tubes.WithWiderJoint(column.Bore, Sections / 4, changes);
        column.WithBore(changed).Impedance(frequencies, real, imaginary);
    }

    /// <summary>A new column, its first curve, and the gradient of that with every dimension and the air.</summary>
    [Benchmark]
    public ImpedanceGradient Gradient() =>
        new Column(Tubes.Cones(Sections), Tubes.Room).ImpedanceGradient(grid);
}
