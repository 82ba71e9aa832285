using AirColumn.Studies;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace AirColumn.Tests.Studies;

public class StudyItemTests
{
    private static readonly Study Study = StudySample.Study;

    private static readonly Lazy<StudyRow[]> InOrder = new(() =>
        [.. Enumerable.Range(0, (int)Study.Count).Select(i => Study.Answer(i))]
    );

    [Fact]
    public void Every_combination_of_steps_has_every_point()
    {
        Assert.Equal(3 * 2 * 7, Study.Count);
        var values = Enumerable.Range(0, (int)Study.Count).Select(i => Study.Values(i)).ToList();
        var steps = values.Select(v => (Millimetres(v[0]), Millimetres(v[1]))).Distinct().ToList();
        // The last one changes soonest.
        Assert.Equal([(500, 100), (500, 101.6), (550, 100), (550, 101.6), (600, 100), (600, 101.6)], steps);
        Assert.All(
            values.Chunk(7),
            chunk =>
                Assert.Equal(
                    values.Take(7).Select(v => (v[2], v[3], v[4])),
                    chunk.Select(v => (v[2], v[3], v[4]))
                )
        );
        Assert.Equal(7, values.Select(v => v[2]).Distinct().Count());
    }

    // Whatever was computed before, by how many threads, from the same or from another reading of the document: to the last bit.
    [Property(MaxTest = 20)]
    public void An_item_is_a_function_of_the_document_and_its_number(int seed)
    {
        var items = Enumerable.Range(0, (int)Study.Count).Select(i => (long)i).ToArray();
        new Random(seed).Shuffle(items);
        var study = Study.Parse(StudySample.Text);
        var some = items[..(1 + Math.Abs(seed % 12))];
        var answers = Batch.Map(some, study.Answer, new BatchOptions { DegreeOfParallelism = 3 }).ToList();
        Assert.Equal(some.Length, answers.Count);
        Assert.All(answers, answer => AssertSame(InOrder.Value[answer.Question], answer.Answer));
    }

    // Modes share what they compute of a mouth with each other, and must not show it.
    [Fact]
    public void Nor_does_it_depend_on_what_modes_share()
    {
        var text = StudySample.With(json =>
        {
            json["column"]!["wavefronts"] = "multimodal";
            json["answers"] = new System.Text.Json.Nodes.JsonObject { ["resonances"] = 3 };
        });
        var forth = Study.Parse(text);
        var back = Study.Parse(text);
        long[] items = [0, 6, 1, 20, 41];
        var first = items.Select(i => forth.Answer(i)).ToArray();
        var second = items.Reverse().Select(i => back.Answer(i)).Reverse().ToArray();
        for (var i = 0; i < items.Length; i++)
        {
            AssertSame(first[i], second[i]);
        }
    }

    // What a row says is what the library answers of a column that was made by itself.
    [Theory]
    [InlineData(0)]
    [InlineData(17)]
    [InlineData(41)]
    public void A_row_has_what_its_column_answers(int item)
    {
        var values = Study.Values(item);
        var column = Study.Document.ToColumn();
        for (var i = 0; i < values.Length; i++)
        {
            column = Study.Parameters[i].Parameter.With(column, values[i]);
        }

        column = new Column(column.Bore, column.AirProfile, column.Options);
        var row = Study.Answer(item);
        Assert.Equal("", row.Error);
        Assert.Equal("curved", row.Wavefronts);
        Assert.Equal(values, row.Numbers[..5]);
        var found = column.FirstResonances(4);
        Assert.Equal(found[1].Frequency.Hertz, Number(row, "f2_hz"));
        Assert.Equal(
            1200 * Math.Log2(found[3].Frequency.Hertz / found[0].Frequency.Hertz),
            Number(row, "interval4_cents"),
            1e-9 // of a difference of logarithms
        );
        Assert.Equal(found[3].QualityFactor, Number(row, "q4"));
        Assert.Equal(found[0].Magnitude, Number(row, "z1_pa_s_per_m3"));
        var gradients = column.Gradients(found, [.. Study.Parameters.Select(p => p.Parameter)]);
        Assert.Equal(gradients[2].HertzPerUnit[1], Number(row, "f3_hz_per_m_length_of_section_2"));
        Assert.Equal(gradients[3].HertzPerUnit[4], Number(row, "f4_hz_per_k_temperature_of_the_air"));
        Assert.Equal(column.FirstPeakHeight(), Number(row, "first_peak_height"));
        Assert.Equal(column.MeanImpedance(), Number(row, "mean_impedance_pa_s_per_m3"));
        var z = column.ImpedanceAt(Frequency.FromHertz(250));
        Assert.Equal(z.Real, Number(row, "re_z_at2_pa_s_per_m3"), 1e-9 * z.Magnitude);
        Assert.Equal(z.Imaginary, Number(row, "im_z_at2_pa_s_per_m3"), 1e-9 * z.Magnitude);
    }

    // Cumulative probabilities of the values drawn are the points, in MathNet's independent direction of the same function.
    [Fact]
    public void Values_are_distributed_as_the_document_says()
    {
        var normal = new Normal(293.15, 2);
        var lognormal = new LogNormal(Math.Log(0.002), Math.Log(1.2));
        for (var k = 0L; k < 7; k++)
        {
            var values = Study.Values(k);
            Assert.Equal(Study.Points!.At(k, 0), (values[2] - 0.05) / 0.02, 1e-12);
            Assert.Equal(Study.Points!.At(k, 1), lognormal.CumulativeDistribution(values[3]), 1e-12);
            Assert.Equal(Study.Points!.At(k, 2), normal.CumulativeDistribution(values[4]), 1e-12);
        }
    }

    // A hundred thousand of them: mean and variance within five standard errors of those of the uniform distribution.
    // The first N points of Sobol' have each coordinate once among the multiples of 1/N: in the middles of N equal cells, far from the edges where
    // a normal distribution has what never occurs.
    [Theory]
    [InlineData(1)]
    [InlineData(64)]
    [InlineData(4096)]
    public void Points_of_Sobol_without_a_seed_lie_in_the_middle_of_their_cells(int count)
    {
        var points = new StudyPoints(StudyPointKind.Sobol, count, null);
        for (var dimension = 0; dimension < SobolSequence.Dimensions; dimension++)
        {
            var places = Enumerable.Range(0, count).Select(k => points.At(k, dimension)).Order();
            Assert.Equal(Enumerable.Range(0, count).Select(cell => (cell + 0.5) / count), places);
        }
    }

    [Fact]
    public void Random_points_are_uniform_and_change_with_the_seed()
    {
        const int N = 100_000;
        var points = new StudyPoints(StudyPointKind.Random, N, 1);
        var drawn = Enumerable.Range(0, N).Select(i => points.At(i, 5)).ToList();
        Assert.All(drawn, u => Assert.InRange(u, double.Epsilon, 1 - 1e-16));
        var mean = drawn.Average();
        Assert.Equal(0.5, mean, 5 / Math.Sqrt(12.0 * N));
        Assert.Equal(1 / 12.0, drawn.Average(u => (u - mean) * (u - mean)), 5 / Math.Sqrt(180.0 * N));
        Assert.NotEqual(points.At(0, 0), (points with { Seed = 2 }).At(0, 0));
        Assert.NotEqual(points.At(0, 0), points.At(0, 1));
    }

    [Fact]
    public void What_makes_no_column_is_said_in_its_row()
    {
        var study = Study.Parse(
            StudySample.With(json =>
                json["parameters"]![1]!["values"] = new System.Text.Json.Nodes.JsonArray("100 mm", "-3 mm")
            )
        );
        var row = study.Answer(7);
        Assert.Equal("length of section 2: length is -3 mm; allowed is 0.001 mm to 1000000 mm.", row.Error);
        Assert.Equal(-0.003, row.Numbers[1]);
        Assert.All(row.Numbers[5..].ToArray(), number => Assert.Equal(double.NaN, number));
        Assert.Equal("", study.Answer(6).Error);
    }

    // Of a column that ends its answers below: the others stay.
    [Fact]
    public void One_answer_that_cannot_be_leaves_the_others()
    {
        var study = Study.Parse(
            StudySample.With(json =>
                json["answers"]!["impedance"] = new System.Text.Json.Nodes.JsonArray("100 Hz", "90 kHz")
            )
        );
        var row = study.Answer(0);
        Assert.StartsWith("impedance: ", row.Error, StringComparison.Ordinal);
        Assert.Equal(InOrder.Value[0].Numbers[..^4], row.Numbers[..^4]);
        Assert.Equal(double.NaN, row.Numbers[^1]);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(42)]
    public void There_is_no_item_beyond(long item) =>
        Assert.StartsWith(
            $"item is {item}; allowed is 0 to 41.",
            Assert.Throws<ArgumentOutOfRangeException>(() => Study.Values(item)).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void The_hash_is_of_what_the_document_says()
    {
        var spaced = Study.Parse($"\n{StudySample.Text}  ");
        Assert.Equal(Study.Sha256(), spaced.Sha256());
        Assert.Equal(Study.Sha256(), Study.Parse(Study.ToUtf8()).Sha256());
        Assert.NotEqual(
            Study.Sha256(),
            Study.Parse(StudySample.With(json => json["points"]!["seed"] = 4)).Sha256()
        );
    }

    [Fact]
    public void Cancelling_ends_it() =>
        Assert.ThrowsAny<OperationCanceledException>(() => Study.Answer(0, new CancellationToken(true)));

    private static double Millimetres(double metres) => Math.Round(metres * 1000, 9);

    private static double Number(StudyRow row, string field) =>
        row.Numbers[Study.Fields.Select(one => one.Name).ToList().IndexOf(field)];

    private static void AssertSame(StudyRow one, StudyRow other)
    {
        Assert.Equal(
            (one.Item, one.Wavefronts, one.Warnings, one.Error),
            (other.Item, other.Wavefronts, other.Warnings, other.Error)
        );
        Assert.Equal(
            one.Numbers.ToArray().Select(BitConverter.DoubleToInt64Bits),
            other.Numbers.ToArray().Select(BitConverter.DoubleToInt64Bits)
        );
    }
}
