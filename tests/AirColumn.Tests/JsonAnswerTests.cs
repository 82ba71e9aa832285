using System.Text.Json;
using AirColumn.Documents;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests;

/// <summary>Answers as JSON, by a serializer that knows nothing of them.</summary>
public class JsonAnswerTests
{
    // What a number may be called: with its unit at the end, or a pure number.
    private const string NamesOfNumbers =
        "(Hz|Metres|Millimetre|Cents|cents|PaSPerM3|M3PerPaS|PerSource|PerSourceSquared|PerUnit|Celsius|Percent|Kilopascals|Ppm|"
        + "MetresPerSecond|KgPerM3|PaS|WPerMK|JPerKgK|re|im|heatCapacityRatio|qualityFactor|interpolationError|efficiency|modes|lossFactor|share|value|harmonic|Value|misfit)$";

    private static readonly Column Tube = new(
        Bore.Build().Cylinder(Mm(20), Mm(400)).Cone(Mm(24), Mm(50)).OpenEnd(Mm(2)),
        TableAir
    );

    public static TheoryData<string> Kinds => [.. Answers().Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Numbers_have_their_units_in_their_names(string kind)
    {
        var answer = Answers()[kind];
        using var json = JsonDocument.Parse(JsonSerializer.Serialize(answer, answer.GetType()));
        Assert.True(json.RootElement.EnumerateObject().Any());
        var numbers = Numbers(json.RootElement, "").ToList();
        Assert.NotEmpty(numbers);
        Assert.All(numbers, name => Assert.Matches(NamesOfNumbers, name));
    }

    [Fact]
    public void They_are_the_numbers_of_the_answer()
    {
        var resonances = Tube.FirstResonances(2);
        using var json = JsonDocument.Parse(JsonSerializer.Serialize(new { Answer = resonances }));
        var list = json.RootElement.GetProperty("Answer").GetProperty("resonances");
        Assert.Equal(2, list.GetArrayLength());
        Assert.Equal(resonances[1].Frequency.Hertz, list[1].GetProperty("frequencyHz").GetDouble());
        Assert.Equal(resonances[1].Magnitude, list[1].GetProperty("magnitudePaSPerM3").GetDouble());
        Assert.Equal(resonances[1].QualityFactor, list[1].GetProperty("qualityFactor").GetDouble());

        var curve = Tube.Impedance(FrequencyGrid.Linear(100, 900, 5));
        Assert.Same(Tube, curve.Column);
        using var text = JsonDocument.Parse(JsonSerializer.Serialize(curve));
        Assert.Equal(
            curve.Imaginary.ToArray(),
            text.RootElement.GetProperty("imPaSPerM3").EnumerateArray().Select(z => z.GetDouble())
        );
        Assert.Equal(
            Tube.CharacteristicImpedance,
            text.RootElement.GetProperty("characteristicImpedancePaSPerM3").GetDouble()
        );
    }

    [Fact]
    public void What_is_not_finite_is_null()
    {
        var column = new Column(
            Tube.Bore.WithFarEnd(new IdealOpenEnd()),
            TableAir,
            new ColumnOptions { Losses = WallLosses.None }
        );
        using var json = JsonDocument.Parse(JsonSerializer.Serialize(column.FirstResonances(1)[0]));
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("qualityFactor").ValueKind);
    }

    [Fact]
    public void Answers_are_not_read_back() =>
        Assert.Throws<NotSupportedException>(() => JsonSerializer.Deserialize<Resonance>("{}"));

    private static Dictionary<string, IJsonAnswer> Answers()
    {
        var resonances = Tube.FirstResonances(2);
        var target = resonances[0].Frequency * 1.02;
        var length = ColumnParameter.SectionLength(0);
        return new IJsonAnswer[]
        {
            Tube.Air,
            AirState.ExhaledBreath,
            Tube.Impedance(FrequencyGrid.Linear(100, 900, 5)),
            Tube.TransferMatrixAt(Frequency.FromHertz(500)),
            Tube.StandingWaveAt(Frequency.FromHertz(500), [Length.Zero, Mm(100)]),
            Tube.PowerAt(Frequency.FromHertz(500)),
            resonances,
            resonances[0],
            resonances[0].Nearest(Tuning.Concert),
            Tube.Gradients(resonances, [length])[0],
            resonances.HarmonicityAgainst(resonances[0].Frequency)[0],
            SectionLength.Solve(Tube, new LengthQuestion(0, target)),
            BoreFit.Solve(
                Tube,
                MeasuredReflectance.OfReflectance([100, 200], [0.9, 0.8], Tube.CharacteristicImpedance, 0.1),
                [new Tolerance(length, Mm(1))]
            ),
            Provenance.Of(Tube),
        }.ToDictionary(answer => answer.GetType().Name);
    }

    private static IEnumerable<string> Numbers(JsonElement json, string name) =>
        json.ValueKind switch
        {
            JsonValueKind.Number => [name],
            JsonValueKind.Object => json.EnumerateObject()
                .SelectMany(member => Numbers(member.Value, member.Name)),
            JsonValueKind.Array => json.EnumerateArray().SelectMany(item => Numbers(item, name)),
            _ => [],
        };
}
