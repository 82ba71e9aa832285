using AirColumn.Documents;
using BenchmarkDotNet.Attributes;

namespace AirColumn.Benchmarks;

/// <summary>200 bores on all cores against one after the other; reading a document.</summary>
[MemoryDiagnoser]
public class BatchBenchmarks
{
    private readonly Bore[] bores =
    [
        .. Enumerable.Range(0, 200).Select(i => Tubes.Cones(10, 0.8 + 0.002 * i)),
    ];

    private readonly string document = new ColumnDocument(
        Tubes.Cones(10),
        AirColumn.Air.At(
            UnitsNet.Temperature.FromDegreesCelsius(20),
            UnitsNet.RelativeHumidity.FromPercent(50)
        )
    ).ToJson();

    /// <summary>Eight resonances of each, in a loop.</summary>
    [Benchmark(Baseline = true)]
    public double OneByOne() => bores.Sum(Second);

    /// <summary>The same, on all cores.</summary>
    [Benchmark]
    public double AllCores() => Batch.Map(bores, (bore, _) => Second(bore)).Sum(second => second.Answer);

    /// <summary>A document of ten cones, to a column.</summary>
    [Benchmark]
    public Column Document() => ColumnDocument.Parse(document).ToColumn();

    private static double Second(Bore bore) =>
        new Column(bore, Tubes.Air).FirstResonances(8)[1].Frequency.Hertz;
}
