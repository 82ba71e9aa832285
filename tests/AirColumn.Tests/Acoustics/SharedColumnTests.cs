using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>A column compiles parts of itself when they are first asked for; threads that ask at once must not see that.</summary>
public class SharedColumnTests
{
    private static readonly FrequencyGrid Grid = FrequencyGrid.Linear(40, 1500, 300);

    [Theory]
    [InlineData(Wavefronts.Curved)]
    [InlineData(Wavefronts.Multimodal)]
    [Trait("Speed", "Slow")]
    public void Threads_that_share_a_column_get_what_one_gets(Wavefronts wavefronts)
    {
        var alone = Asked(New(wavefronts), 0);
        var shared = New(wavefronts);
        var answers = new double[8][];
        // Each begins with another question, so that different parts are compiled at the same time.
        var threads = Enumerable
            .Range(0, answers.Length)
            .Select(i => new Thread(() => answers[i] = Asked(shared, i)))
            .ToList();
        threads.ForEach(thread => thread.Start());
        threads.ForEach(thread => thread.Join());
        // One frequency is taken from a band of them if that has been compiled by then, else computed by itself: the last digits differ.
        Assert.All(
            answers,
            answer =>
            {
                Assert.Equal(alone.Length, answer.Length);
                Assert.All(alone.Zip(answer), pair => Near.Relative(pair.First, pair.Second, 1e-12));
            }
        );
    }

    private static Column New(Wavefronts wavefronts) =>
        new(
            Bore.Build().Cylinder(Mm(30), Mm(40)).Cone(Mm(38), Mm(70), Mm(600)).OpenEnd(Mm(3)),
            TableAir,
            new ColumnOptions
            {
                Wavefronts = wavefronts,
                Modes = wavefronts == Wavefronts.Multimodal ? 4 : null,
            }
        );

    private static double[] Asked(Column column, int first)
    {
        Func<double[]>[] questions =
        [
            () => [.. column.FirstResonances(3).SelectMany(r => (double[])[r.Frequency.Hertz, r.Magnitude])],
            () => [.. column.Impedance(Grid).Real],
            () => [column.ImpedanceAt(Frequency.FromHertz(200)).Imaginary, column.HighestFrequency.Hertz],
            () =>
                [
                    .. column
                        .StandingWaveAt(Frequency.FromHertz(200), 20)
                        .Pressure.ToArray()
                        .Select(p => p.Magnitude),
                ],
        ];
        var answers = new double[questions.Length][];
        for (var i = 0; i < questions.Length; i++)
        {
            var which = (first + i) % questions.Length;
            answers[which] = questions[which]();
        }

        return [.. answers.SelectMany(answer => answer)];
    }
}
