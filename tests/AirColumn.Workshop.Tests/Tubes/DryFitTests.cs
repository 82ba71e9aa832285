using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Tubes;

/// <summary>Tapered sockets hold pipes out until they are cemented.</summary>
public class DryFitTests
{
    private static readonly Length Cut = Mm(1090);

    // ASTM D2466 and D1785, by hand: the socket narrows from entrance to bottom over its depth, and is as wide as the pipe at
    // depth × (entrance - outside) / (entrance - bottom). 1 1/2: 27.79 mm × (1.900 - 1.894) / (1.912 - 1.894) = 9.26 mm are left.
    [Theory]
    [InlineData("1", 33.40, 1.325, 1.310, 0.875)]
    [InlineData("1-1/4", 42.16, 1.670, 1.655, 0.938)]
    [InlineData("1-1/2", 48.26, 1.912, 1.894, 1.094)]
    [InlineData("2", 60.32, 2.387, 2.369, 1.156)]
    [InlineData("3", 88.90, 3.516, 3.492, 1.875)]
    public void A_pipe_stops_where_the_socket_is_as_wide_as_it(
        string size,
        double outside,
        double entrance,
        double bottom,
        double depth
    )
    {
        var expected = 25.4 * depth * (1 - (entrance - outside / 25.4) / (entrance - bottom));
        var stock = Catalogue.Standard.Pipe($"pvc-40 {size}");
        Assert.Equal(expected, Socket(size, 0).StopsShort(stock.Outside).Millimeters, 1e-6);
        Assert.Equal(expected - 1, Socket(size, 1).StopsShort(stock.Outside).Millimeters, 1e-6);
        // Between a third and two thirds of the way in, as ASTM F3328 has it; a little more for the sizes whose pipe is made thin.
        Assert.InRange(1 - expected / (25.4 * depth), 1 / 3.0, 0.71);
        if (size == "1-1/2")
        {
            Assert.Equal(9.3, expected, 0.05);
        }
    }

    [Fact]
    public void Sockets_that_hold_nothing_out_are_home()
    {
        var straight = new FittingSocket(Mm(48.6), Mm(48.6), Mm(28), Mm(1));
        Assert.Equal(0, straight.StopsShort(Mm(48.6)).Millimeters);
        var wide = new FittingSocket(Mm(49), Mm(48.5), Mm(28), Mm(1));
        Assert.Equal(0, wide.StopsShort(Mm(48.26)).Millimeters);
        // Wider than the entrance: not in at all.
        Assert.Equal(27, wide.StopsShort(Mm(50)).Millimeters);
        var pipe = new PipePart("pipe", Mm(40), Mm(48.2), null);
        Assert.Null(new TubeAssembly([pipe, JoinPart.Straight("c", straight, null, Mm(41), Mm(3))]).Dry);
    }

    // The dry tube made by hand: the same parts with the gaps that are then there.
    [Fact]
    public void Pushed_home_the_tube_rises_as_tubes_of_either_length_differ()
    {
        var dry = TubeBuilderTests.Stepped.Dry!;
        var stops = new[] { 9.26 - 1, 25.4 * 1.156 * (1 - (2.387 - 60.32 / 25.4) / 0.018) - 1 };
        Assert.Equal(stops.Sum(), dry.InAll.Millimeters, 0.01);
        var byHand = First(Stepped(1 + stops[0], 1 + stops[1]));
        var tuning = dry.Tuning(Cut, Room, Tuning.Concert.FrequencyOf(Pitch.Parse("D2")))!;
        var rise = Cents.Between(byHand, First(Stepped(1, 1)));
        Assert.Equal(rise, tuning.CentsToHome, 0.02);
        Assert.InRange(rise, 10, 25);
        Assert.Equal(73.416 * Math.Pow(2, -rise / 1200), tuning.Target.Hertz, 2e-3);
    }

    // Monte Carlo: pipes and sockets as wide as their tolerances allow, each by itself, each tube put together anew. 400 draws know a
    // standard deviation to 4 %; the rest is that the computation is linear, and pipes cannot go in farther than home.
    [Fact]
    public void How_sure_that_is_is_what_such_tubes_scatter()
    {
        var random = new Random(7);
        double Off(double plusMinus) => plusMinus * (2 * random.NextDouble() - 1);
        double Stops(double outside, double ofPipe, double entrance, double bottom, double depth)
        {
            var (pipe, socket) = (outside + Off(ofPipe), Off(0.006 * 25.4));
            var wider = pipe - 25.4 * bottom - socket;
            return Math.Clamp(25.4 * depth * wider / (25.4 * (entrance - bottom)), 1, 25.4 * depth);
        }

        var cents = new List<double>();
        var home = First(Stepped(1, 1));
        for (var i = 0; i < 400; i++)
        {
            var tube = Stepped(
                Stops(48.26, 0.15, 1.912, 1.894, 1.094),
                Stops(60.32, 0.15, 2.387, 2.369, 1.156)
            );
            cents.Add(Cents.Between(First(tube), home));
        }

        var mean = cents.Average();
        var scatter = Math.Sqrt(cents.Sum(c => (c - mean) * (c - mean)) / (cents.Count - 1));
        var tuning = TubeBuilderTests.Stepped.Dry!.Tuning(Cut, Room, Frequency.FromHertz(73.42))!;
        Assert.InRange(tuning.StandardDeviationCents / scatter, 0.88, 1.12);
        Assert.Equal(mean, tuning.CentsToHome, 1.5);
        // A rule beats the table.
        var measured = TubeBuilderTests
            .Stepped.Dry!.Measured(Mm(16))
            .Tuning(Cut, Room, Frequency.FromHertz(73.42))!;
        Assert.True(measured.StandardDeviationCents < tuning.StandardDeviationCents / 4);
        Assert.Equal(16, measured.Fit.InAll.Millimeters, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => TubeBuilderTests.Stepped.Dry!.Measured(Mm(100)));
    }

    // What dry takes say together, summed up over both unknowns: what the player adds, and how far the joints are off in all of these takes. A take
    // scatters by 5 cents besides what the recording is unsure.
    [Fact]
    public void Dry_takes_err_together_by_their_joints_and_count_as_sure_as_they_are()
    {
        var stepped = TubeBuilderTests.Stepped;
        var target = Tuning.Concert.FrequencyOf(Pitch.Parse("D2"));
        var heard = First(stepped.Dry!.Tube);
        (double Cents, double Unsure)[] takes = [(8, 0.5), (45, 20)];
        var advice = TrimAdvice.For(
            stepped,
            target,
            Cut,
            Room,
            [
                .. takes.Select(take => new TubeMeasurement(
                    DateTimeOffset.UnixEpoch,
                    Cut,
                    heard * Cents.ToRatio(take.Cents),
                    take.Unsure,
                    Room
                )),
            ],
            new PlayingCorrection(20, 15)
        );
        var ofTube = advice
            .Column.Budgets(
                [advice.Resonance],
                TubeBuilder.Tolerances(advice.Tube, Room, new BuildOptions())
            )[0]
            .StandardDeviationCents;
        var ofJoints = stepped.Dry.Tuning(Cut, Room, target)!.StandardDeviationCents;
        static double Off(double cents, double deviation) => cents * cents / (2 * deviation * deviation);
        var (weights, sum, squares) = (0.0, 0.0, 0.0);
        for (var adds = -80.0; adds < 120; adds += 0.5)
        {
            for (var joints = -60.0; joints < 60; joints += 0.5)
            {
                var weight = Math.Exp(
                    -Off(adds - 20, double.Hypot(15, ofTube))
                        - Off(joints, ofJoints)
                        - takes.Sum(take => Off(take.Cents - adds - joints, double.Hypot(5, take.Unsure)))
                );
                weights += weight;
                sum += weight * adds;
                squares += weight * adds * adds;
            }
        }

        var mean = sum / weights;
        Assert.Equal([8.0, 45.0], advice.DifferencesCents.Select(cents => Math.Round(cents, 4)));
        Assert.Equal(mean, advice.Correction.MeanCents, 0.01);
        Assert.Equal(
            Math.Sqrt(squares / weights - mean * mean),
            advice.Correction.StandardDeviationCents,
            0.01
        );
    }

    // A player who adds 20 cents, in each state of the joints, heard with nothing known before: the drone with the joints home is
    // expected where that player will play it.
    [Theory]
    [InlineData(JointState.Home, null)]
    [InlineData(JointState.Dry, null)]
    [InlineData(JointState.Dry, 20.0)]
    public void What_was_heard_dry_is_corrected_to_home(JointState joints, double? stops)
    {
        var stepped = TubeBuilderTests.Stepped;
        var fit = stops is { } mm ? stepped.Dry!.Measured(Mm(mm)) : stepped.Dry!;
        var heard = First(joints == JointState.Home ? stepped : fit.Tube) * Cents.ToRatio(20);
        var advice = TrimAdvice.For(
            stepped,
            Tuning.Concert.FrequencyOf(Pitch.Parse("D2")),
            Cut,
            Room,
            [
                new TubeMeasurement(DateTimeOffset.UnixEpoch, Cut, heard, 0, Room)
                {
                    Joints = joints,
                    StopsShort = stops is { } given ? Mm(given) : null,
                },
            ],
            new PlayingCorrection(20, 100)
        );
        Assert.Equal(20, advice.DifferencesCents[0], 1e-6);
        var home = First(stepped) * Cents.ToRatio(20);
        Assert.Equal(home.Hertz, advice.Table.Rows[0].Note.Hertz, 1e-3);
        // What is home is not trimmed dry.
        Assert.Equal(
            joints == JointState.Dry,
            advice.DryNoteIn(LengthUnits.Millimetres)?.Contains("Trim dry to", StringComparison.Ordinal)
                ?? false
        );
    }

    // Ten takes of one dry tube do not tell how far its joints stop short.
    [Fact]
    public void Many_dry_takes_leave_the_joints_unsure()
    {
        var stepped = TubeBuilderTests.Stepped;
        var heard = First(stepped.Dry!.Tube) * Cents.ToRatio(20);
        double Sure(JointState joints, int takes) =>
            TrimAdvice
                .For(
                    stepped,
                    Frequency.FromHertz(73.42),
                    Cut,
                    Room,
                    [
                        .. Enumerable.Repeat(
                            new TubeMeasurement(DateTimeOffset.UnixEpoch, Cut, heard, 0, Room)
                            {
                                Joints = joints,
                            },
                            takes
                        ),
                    ],
                    new PlayingCorrection(20, 100)
                )
                .Correction.StandardDeviationCents;

        var joints = stepped.Dry!.Tuning(Cut, Room, Frequency.FromHertz(73.42))!.StandardDeviationCents;
        Assert.InRange(Sure(JointState.Dry, 10), joints * 0.98, Math.Sqrt(joints * joints + 25.0 / 10));
        Assert.True(Sure(JointState.Home, 10) < 2);
    }

    [Fact]
    public void The_history_keeps_how_it_was_heard()
    {
        var one = new TubeMeasurement(DateTimeOffset.UnixEpoch, Cut, Frequency.FromHertz(72), 1, Room);
        var history = MeasurementHistory
            .Empty.With(one)
            .With(one with { Joints = JointState.Home })
            .With(one with { StopsShort = Mm(16.5) });
        var again = MeasurementHistory.Read(history.Write()).Taken;
        Assert.Equal([JointState.Dry, JointState.Home, JointState.Dry], again.Select(taken => taken.Joints));
        Assert.Equal([null, null, 16.5], again.Select(taken => taken.StopsShort?.Millimeters));
        var silent = history.Write().Replace("\"joints\": \"home\",", "", StringComparison.Ordinal);
        Assert.All(
            MeasurementHistory.Read(silent).Taken,
            taken => Assert.Equal(JointState.Dry, taken.Joints)
        );
    }

    [Fact]
    public void The_sheet_says_where_to_stop_while_dry()
    {
        var build = TubeBuilder.Plan(TubeBuilderTests.Stepped, Pitch.Parse("D2"), Tuning.Concert, Room);
        // As it is read: without marks, and with plain spaces.
        var page = System
            .Text.RegularExpressions.Regex.Replace(
                BuildSheet.Html(build, "", LengthUnits.Millimetres),
                "<[^>]*>",
                ""
            )
            .Replace('\u00a0', ' ')
            .Replace("&#160;", " ", StringComparison.Ordinal)
            .Replace("&nbsp;", " ", StringComparison.Ordinal);
        var target = FormattableString.Invariant($"Trim dry to {build.Dry()!.Target.Hertz:0.00} Hz");
        Assert.Contains(target, page, StringComparison.Ordinal);
        Assert.Contains("Dry, it stops about 8.3 mm short of that", page, StringComparison.Ordinal);
        var plain = new TubeAssembly([new PipePart("pipe", Mm(40), Mm(48), null)]);
        Assert.DoesNotContain(
            "Trim dry",
            BuildSheet.Html(TubeBuilder.Plan(plain, Pitch.Parse("D2"), Tuning.Concert, Room), ""),
            StringComparison.Ordinal
        );
    }

    private static FittingSocket Socket(string size, double gap) =>
        FittingSocket.Of(Catalogue.Standard.Socket($"pvc-40 {size}"), Mm(gap));

    private static Frequency First(TubeAssembly tube) =>
        new Column(tube.Assemble(Cut).Bore, Room).FirstResonances(1)[0].Frequency;

    // That of the other tests, with gaps of its own at the stops.
    private static TubeAssembly Stepped(double before, double after) =>
        new(
            [
                new InsertPart("mouthpiece", Mm(30), Mm(40), Mm(25), Mm(12)),
                PipePart.Of("main pipe", Catalogue.Standard.Pipe("pvc-40 1-1/2"), null, null),
                JoinPart.Straight("reducer", Socket("1-1/2", before), Socket("2", after), Mm(41), Mm(14)),
                PipePart.Of("end pipe", Catalogue.Standard.Pipe("pvc-40 2"), Mm(52.2), Mm(150)),
            ],
            Mm(3)
        );
}
