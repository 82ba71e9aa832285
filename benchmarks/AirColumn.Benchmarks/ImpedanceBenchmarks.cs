using System.Numerics;
using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Gases;
using AirColumn.Tests.Acoustics;
using BenchmarkDotNet.Attributes;
using UnitsNet;

namespace AirColumn.Benchmarks;

/// <summary>Impedance at 256 frequencies of a bore of equal cylinders, against the plain version in the same run.</summary>
[MemoryDiagnoser]
public class ImpedanceBenchmarks
{
    private readonly PlainColumn plain = new(343.37, 1.2045, 1.814e-5, 0.0258, 1006, 1.4019);
    private readonly double[] frequencies = FrequencyGrid.Linear(20, 2000, 256).Hertz.ToArray();
    private readonly double[] real = new double[256];
    private readonly double[] imaginary = new double[256];
    private (double Radius, double Length)[] cylinders = [];
    private Column column = null!;
    private Column cones = null!;

    /// <summary>How many sections.</summary>
    [Params(1, 10)]
    public int Sections { get; set; }

    [GlobalSetup]
    public void Compile()
    {
        var air = Air.FromConstants(
            Speed.FromMetersPerSecond(343.37),
            Density.FromKilogramsPerCubicMeter(1.2045),
            DynamicViscosity.FromPascalSeconds(1.814e-5),
            ThermalConductivity.FromWattsPerMeterKelvin(0.0258),
            SpecificEntropy.FromJoulesPerKilogramKelvin(1006),
            1.4019
        );
        var length = Length.FromMeters(1.3 / Sections);
        cylinders = [.. Enumerable.Repeat((0.02, length.Meters), Sections)];
        column = new Column(
            new Bore(
                Enumerable.Repeat(new CylinderSection(Length.FromMillimeters(40), length), Sections),
                new ClosedEnd()
            ),
            air
        );
        cones = new Column(
            new Bore(
                Enumerable
                    .Range(0, Sections)
                    .Select(i => new ConeSection(Diameter(i), Diameter(i + 1), length)),
                new ClosedEnd()
            ),
            air
        );

        Length Diameter(int i) => Length.FromMillimeters(30 + 30.0 * i / Sections);
    }

    [Benchmark(Baseline = true)]
    public Complex Plain()
    {
        var sum = Complex.Zero;
        foreach (var frequency in frequencies)
        {
            sum += plain.ClosedImpedance(frequency, cylinders);
        }

        return sum;
    }

    [Benchmark]
    public void Cylinders() => column.Impedance(frequencies, real, imaginary);

    [Benchmark]
    public void Cones() => cones.Impedance(frequencies, real, imaginary);
}
