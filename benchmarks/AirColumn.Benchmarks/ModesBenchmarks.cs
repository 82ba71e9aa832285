using AirColumn.Acoustics.Vectors;
using BenchmarkDotNet.Attributes;
using UnitsNet;

namespace AirColumn.Benchmarks;

/// <summary>Four radial modes against plane waves, at 4096 frequencies from 20 Hz to 2 kHz, with losses.</summary>
[MemoryDiagnoser]
public class ModesBenchmarks
{
    private readonly double[] frequencies = Tubes.Frequencies();
    private readonly double[] real = new double[4096];
    private readonly double[] imaginary = new double[4096];
    private static readonly double[] Some = [70, 150, 300, 500, 800, 1100, 1500, 1900];

    private Column plane = null!;
    private Column modes = null!;

    /// <summary>Which bore: 1 a flared end, 2 a bell, 3 a cone.</summary>
    [Params(1, 2, 3)]
    public int Tube { get; set; }

    [GlobalSetup]
    public void Compile()
    {
        var bore = Tube switch
        {
            2 => Bore.Build()
                .Cylinder(Mm(11.5), Mm(1000))
                .Add(new HornSection(Mm(11.5), Mm(123), Mm(450), 0.7))
                .OpenEnd(Mm(1)),
            3 => Bore.Build().Cone(Mm(30), Mm(90), Mm(1400)).OpenEnd(Mm(5)),
            _ => Bore.Build()
                .Cylinder(Mm(40.9), Mm(1200))
                .Horn(HornLaw.Cosine, Mm(40.9), Mm(90), Mm(120))
                .OpenEnd(Mm(3)),
        };
        plane = new Column(bore, Tubes.Air, new ColumnOptions { Wavefronts = Wavefronts.Plane });
        modes = new Column(
            bore,
            Tubes.Air,
            new ColumnOptions { Wavefronts = Wavefronts.Multimodal, Modes = 4 }
        );
        Plane();
        Modes();
    }

    /// <summary>Plane waves, the series there.</summary>
    [Benchmark(Baseline = true)]
    public void Plane() => plane.Impedance(frequencies, real, imaginary);

    /// <summary>Four modes, the state at the blown end known as series.</summary>
    [Benchmark]
    public void Modes() => modes.Impedance(frequencies, real, imaginary);

    /// <summary>A new bore of the same mouth: pieces, series and all.</summary>
    [Benchmark]
    public void NewBore() => modes.With(modes.Parts).Impedance(frequencies, real, imaginary);

    /// <summary>Its first eight resonances.</summary>
    [Benchmark]
    public ResonanceList NewResonances() => modes.With(modes.Parts).FirstResonances(8);

    /// <summary>The same of a column that shares nothing, by the default: fronts chosen, number of modes found, field of the mouth computed.</summary>
    [Benchmark]
    public ResonanceList Automatic() => new Column(modes.Bore, Tubes.Air).FirstResonances(8);

    /// <summary>The same with curved fronts.</summary>
    [Benchmark]
    public ResonanceList Curved() =>
        new Column(
            modes.Bore,
            Tubes.Air,
            new ColumnOptions { Wavefronts = Wavefronts.Curved }
        ).FirstResonances(8);

    /// <summary>Eight frequencies one pass each way, without series.</summary>
    [Benchmark]
    public double EightFrequencies()
    {
        var largest = 0.0;
        for (var i = 0; i < Some.Length; i += RealVectors.Count)
        {
            largest = Math.Max(
                largest,
                modes.Modal()!.InputAt(FrequencyVector.OfHertz(Some.AsSpan(i))).Pressure.Largest()
            );
        }

        return largest;
    }

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
