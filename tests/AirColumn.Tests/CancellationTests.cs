using System.Numerics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests;

/// <summary>A call ends when it is cancelled, wherever it is, and leaves nothing behind that would change a later answer.</summary>
public class CancellationTests
{
    // How often a far end is asked at most from one look at the token to the next: once for each frequency of a block.
    private const int Block = 64;

    private static readonly Tuning Tuning = Tuning.Concert;

    // What is called, on a column of two sections and a hole; answers as text, to compare them to the last digit.
    private static readonly Dictionary<string, Func<Column, CancellationToken, string>> Calls = new()
    {
        ["curve"] = (column, token) =>
        {
            var curve = column.Impedance(FrequencyGrid.Linear(20, 1000, 400), token);
            return Text([.. curve.Real, .. curve.Imaginary]);
        },
        ["spans"] = (column, token) =>
        {
            double[] hertz = [.. Enumerable.Range(1, 300).Select(i => 3.0 * i)];
            var (real, imaginary) = (new double[300], new double[300]);
            column.Impedance(hertz, real, imaginary, token);
            return Text([.. real, .. imaginary]);
        },
        ["one frequency"] = (column, token) => $"{column.ImpedanceAt(Frequency.FromHertz(200), token):R}",
        ["reflection"] = (column, token) => $"{column.ReflectionAt(Frequency.FromHertz(200), token):R}",
        ["number of modes"] = (column, token) => $"{column.ModeCount(token)}",
        ["convergence of a curve"] = (column, token) =>
            $"{column.Impedance(FrequencyGrid.Linear(20, 1000, 20), token).ModeConvergence(token):R}",
        ["convergence of resonances"] = (column, token) =>
            $"{column.FirstResonances(2, token).ModeConvergence(token):R}",
        ["first resonances"] = (column, token) => Text(column.FirstResonances(6, token)),
        ["resonances below"] = (column, token) => Text(column.Resonances(Frequency.FromHertz(800), token)),
        ["gradients of resonances"] = (column, token) =>
            string.Join(
                ' ',
                column
                    .Gradients(
                        [.. column.FirstResonances(2, token)],
                        [ColumnParameter.SectionLength(0), ColumnParameter.OutletDiameter(1)],
                        cancellationToken: token
                    )
                    .Select(gradient => Text([gradient.CentsPerUnit(0), gradient.CentsPerUnit(1)]))
            ),
        ["gradient of a curve"] = (column, token) =>
        {
            var gradient = column.ImpedanceGradient(
                FrequencyGrid.Linear(50, 300, 40),
                [ColumnParameter.SectionLength(0)],
                cancellationToken: token
            );
            return Text([.. gradient.Real(0), .. gradient.Imaginary(0)]);
        },
        ["mean impedance"] = (column, token) => $"{column.MeanImpedance(token):R}",
        ["first peak"] = (column, token) => $"{column.FirstPeakHeight(token):R}",
        ["standing wave"] = (column, token) =>
            Text(column.StandingWaveAt(Frequency.FromHertz(200), 30, token).Pressure),
        ["places of a standing wave"] = (column, token) =>
            Text(column.StandingWaveAt(Frequency.FromHertz(200), [Mm(10), Mm(400)], token).Flow),
        ["power"] = (column, token) => $"{column.PowerAt(Frequency.FromHertz(200), token)}",
        ["transfer"] = (column, token) => $"{column.TransferAt(Frequency.FromHertz(200), token)}",
        ["transfer over a grid"] = (column, token) =>
            string.Join(' ', column.Transfer(FrequencyGrid.Linear(50, 300, 5), cancellationToken: token)),
        ["length"] = (column, token) =>
            Text([SectionLength.Solve(column, 0, Frequency.FromHertz(150), token).Length.Meters]),
        ["shape"] = (column, token) =>
            Text([
                .. ShapeSearch
                    .Solve(
                        column,
                        [new(ColumnParameter.SectionLength(0), Mm(300), Mm(700))],
                        [ShapeTarget.Resonance(1, Frequency.FromHertz(150))],
                        new ShapeOptions { Starts = 1, Steps = 4 },
                        cancellationToken: token
                    )
                    .Values.Select(value => value.Value),
            ]),
        ["overblown interval"] = (column, token) =>
            OverblownInterval
                .Solve(
                    column,
                    Frequency.FromHertz(150),
                    1900,
                    [
                        new(ColumnParameter.SectionLength(0), Mm(300), Mm(700)),
                        new(ColumnParameter.OutletDiameter(1), Mm(30), Mm(50)),
                    ],
                    new ShapeOptions { Starts = 1, Steps = 3 },
                    cancellationToken: token
                )
                .Explanation,
        ["sleeve"] = (column, token) =>
            Text([ShortTube.Sleeve(column, Mm(40), Frequency.FromHertz(120), token).Length.Meters]),
        ["trim table"] = (column, token) =>
            Text([
                .. TrimTable
                    .For(column, new TrimQuestion(1, Frequency.FromHertz(160)) { Rows = 3 }, token)
                    .Rows.Select(row => row.Cents),
            ]),
        ["set of tubes"] = (column, token) =>
            Text([
                .. TubeSet
                    .Over(column, 0, Tuning, [Pitch.Parse("C3"), Pitch.Parse("D3")], cancellationToken: token)
                    .Select(tube => tube.Solution.Length.Meters),
            ]),
        ["tapers"] = (column, token) =>
            Text([
                .. TaperStudy
                    .Compare(column, 1, Frequency.FromHertz(150), [Mm(35), Mm(40)], cancellationToken: token)
                    .Select(answer => answer.IntervalCents),
            ]),
        ["budgets"] = (column, token) =>
            Text([
                .. column
                    .Budgets(
                        [.. column.FirstResonances(1, token)],
                        [new Tolerance(ColumnParameter.SectionLength(0), Mm(1))],
                        cancellationToken: token
                    )
                    .Select(budget => budget.StandardDeviationCents),
            ]),
        ["sliding tube"] = (column, token) =>
            string.Join(
                ' ',
                SlidingTube
                    .Of(Beyond(column), 1, Mm(190), Mm(260), Tuning, token)
                    .Positions.Select(position => $"{position.DrawnOut.Meters:R}")
            ),
    };

    // Searches that are made of others, and slow with modes.
    private static readonly HashSet<string> PlaneOnly =
    [
        "trim table",
        "sleeve",
        "tapers",
        "overblown interval",
        "sliding tube",
    ];

    public static TheoryData<string, Wavefronts> AllCalls
    {
        get
        {
            var all = new TheoryData<string, Wavefronts>();
            foreach (var call in Calls.Keys)
            {
                all.Add(call, Wavefronts.Curved);
                if (!PlaneOnly.Contains(call))
                {
                    all.Add(call, Wavefronts.Multimodal);
                }
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(AllCalls))]
    public void What_is_cancelled_beforehand_does_not_begin(string call, Wavefronts wavefronts)
    {
        if (NeedsNothing(call, wavefronts))
        {
            return;
        }

        using var end = new FarEnd();
        var column = end.Column(wavefronts);
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Calls[call](column, source.Token));
        Assert.InRange(end.Asked, 0, Block);
    }

    // The far end is a function of ours, which is asked all the time: it cancels when it is asked for the nth time.
    // With modes a call takes seconds: one of each kind, and all in the long run.
    public static TheoryData<string, Wavefronts> CallsOnTheirWay
    {
        get
        {
            string[] few = ["curve", "first resonances", "length", "standing wave"];
            var calls = new TheoryData<string, Wavefronts>();
            foreach (
                var row in AllCalls.Where(row =>
                    (Wavefronts)row[1] == Wavefronts.Curved || Amount.IsLong || few.Contains(row[0])
                )
            )
            {
                calls.Add((string)row[0], (Wavefronts)row[1]);
            }

            return calls;
        }
    }

    [Theory]
    [MemberData(nameof(CallsOnTheirWay))]
    public void What_is_cancelled_on_its_way_ends_and_leaves_the_column_as_it_was(
        string call,
        Wavefronts wavefronts
    )
    {
        string expected;
        int asked;
        using (var end = new FarEnd())
        {
            expected = Calls[call](end.Column(wavefronts), CancellationToken.None);
            asked = end.Asked;
        }

        var random = new Random(call.Length + (int)wavefronts);
        for (var round = 0; round < Amount.Of(1, 4) && asked > 0; round++)
        {
            using var end = new FarEnd { CancelsAt = random.Next(1, asked + 1) };
            var column = end.Column(wavefronts);
            var ended = "";
            try
            {
                ended = Calls[call](column, end.Token);
            }
            catch (OperationCanceledException)
            {
                // As it should; or it was nearly through.
            }

            Assert.True(end.Token.IsCancellationRequested);
            Assert.InRange(end.Asked - end.CancelsAt!.Value, 0, Block);
            Assert.True(ended is "" || ended == expected);
            end.CancelsAt = null;
            Assert.Equal(expected, Calls[call](column, CancellationToken.None));
        }
    }

    // The same where the ends are smooth and there is nothing to hook into: at any time, from another thread.
    [Fact]
    public Task Whenever_it_is_cancelled_it_ends_or_is_right() => EndsOrIsRight(Wavefronts.Curved);

    [Fact]
    [Trait(Amount.Trait, Amount.Long)]
    public Task Whenever_it_is_cancelled_with_modes_it_ends_or_is_right() =>
        EndsOrIsRight(Wavefronts.Multimodal);

    private static async Task EndsOrIsRight(Wavefronts wavefronts)
    {
        var expected = new Dictionary<string, string>();
        var random = new Random(5);
        foreach (
            var (name, call) in Calls.Where(call =>
                wavefronts == Wavefronts.Curved || !PlaneOnly.Contains(call.Key)
            )
        )
        {
            expected[name] = call(Smooth(wavefronts), CancellationToken.None);
            var column = Smooth(wavefronts);
            using var source = new CancellationTokenSource();
            var spins = 1 << random.Next(4, 22);
            var other = Task.Run(() =>
            {
                Thread.SpinWait(spins);
                source.Cancel();
            });
            try
            {
                Assert.Equal(expected[name], call(column, source.Token));
            }
            catch (OperationCanceledException)
            {
                // As it should.
            }

            await other;
            Assert.Equal(expected[name], call(column, CancellationToken.None));
        }
    }

    // A mouth that is computed for several columns at once belongs to none of them: whoever is cancelled leaves it to the others.
    [Fact]
    public async Task One_that_is_cancelled_does_not_end_others_that_need_the_same()
    {
        var expected = Smooth(Wavefronts.Multimodal).ImpedanceAt(Frequency.FromHertz(200));
        for (var round = 0; round < 4; round++)
        {
            var column = Smooth(Wavefronts.Multimodal);
            using var source = new CancellationTokenSource();
            var cancelled = Task.Run(() => column.ImpedanceAt(Frequency.FromHertz(200), source.Token));
            var other = Task.Run(() => column.ImpedanceAt(Frequency.FromHertz(200)));
            source.Cancel();
            Assert.Equal(expected, await other);
            _ = await Record.ExceptionAsync(() => cancelled);
        }
    }

    [Fact]
    public void Progress_of_lists_goes_up_to_the_end()
    {
        var column = Smooth(Wavefronts.Curved);
        var resonances = column.FirstResonances(3);
        var tolerances = new[]
        {
            new Tolerance(ColumnParameter.SectionLength(0), Mm(1)),
            new Tolerance(ColumnParameter.SectionLength(1), Mm(1)),
        };
        AssertRises(3, told => column.Gradients([.. resonances], null, told));
        AssertRises(2, told => column.Budgets([.. resonances], tolerances, told));
        AssertRises(7, told => column.Transfer(FrequencyGrid.Linear(50, 300, 7), told));
        AssertRises(2, told => TubeSet.Over(column, 0, Tuning, [Pitch.Parse("C3"), Pitch.Parse("D3")], told));
        AssertRises(
            2,
            told => TaperStudy.Compare(column, 1, Frequency.FromHertz(150), [Mm(35), Mm(40)], told)
        );
        AssertRises(null, told => column.ImpedanceGradient(FrequencyGrid.Linear(20, 1000, 300), null, told));

        static void AssertRises(int? count, Action<IProgress<double>> call)
        {
            var told = new Told();
            call(told);
            Assert.NotEmpty(told.Values);
            Assert.Equal(count ?? told.Values.Count, told.Values.Count);
            Assert.Equal(told.Values.Order().Distinct(), told.Values);
            Assert.Equal(1, told.Values[^1]);
        }
    }

    // One mode, and no estimate of what others would add, is known without computing.
    private static bool NeedsNothing(string call, Wavefronts wavefronts) =>
        call == "number of modes" && wavefronts != Wavefronts.Multimodal;

    private static Column Smooth(Wavefronts wavefronts) =>
        new(
            Shape,
            TableAir,
            new ColumnOptions
            {
                Wavefronts = wavefronts,
                Modes = wavefronts == Wavefronts.Multimodal ? 2 : null,
            }
        );

    private static Bore Shape { get; } =
        new(
            [new CylinderSection(Mm(30), Mm(450)), new ConeSection(Mm(30), Mm(40), Mm(200))],
            new OpenEnd(Mm(2)),
            [new ToneHole(Mm(440), Mm(6), Mm(3))]
        );

    // A sliding section must come after the last hole.
    private static Column Beyond(Column column) =>
        column.WithBore(new Bore(column.Bore.Sections, column.Bore.FarEnd));

    private static string Text(ResonanceList resonances) =>
        Text([
            .. resonances.SelectMany(one => new[] { one.Frequency.Hertz, one.Magnitude, one.QualityFactor }),
        ]);

    private static string Text(ReadOnlySpan<Complex> values)
    {
        var all = new double[2 * values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            (all[2 * i], all[2 * i + 1]) = (values[i].Real, values[i].Imaginary);
        }

        return Text(all);
    }

    private static string Text(double[] values) => string.Join(' ', values.Select(value => $"{value:R}"));

    /// <summary>The impedance of an open end, given as a function that counts how often it is asked, and may cancel then.</summary>
    private sealed class FarEnd : IDisposable
    {
        private readonly CancellationTokenSource source = new();
        private int asked;

        public int? CancelsAt { get; set; }

        public int Asked => asked;

        public CancellationToken Token => source.Token;

        public Column Column(Wavefronts wavefronts) =>
            new(
                Shape,
                TableAir,
                new ColumnOptions
                {
                    Wavefronts = wavefronts,
                    Modes = wavefronts == Wavefronts.Multimodal ? 2 : null,
                    Radiation = RadiationModel.Given(Impedance),
                }
            );

        public void Dispose() => source.Dispose();

        private Complex Impedance(Frequency frequency)
        {
            if (++asked == CancelsAt)
            {
                source.Cancel();
            }

            return new Complex(10 + frequency.Hertz, 400 * frequency.Hertz);
        }
    }

    private sealed class Told : IProgress<double>
    {
        public List<double> Values { get; } = [];

        public void Report(double value) => Values.Add(value);
    }
}
