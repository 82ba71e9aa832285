using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Tests.Tubes;
using AirColumn.Workshop.Tubes;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Measurements;

/// <summary>What the advice says to do, done: the tube made anew by hand, or what is known of it worked out in another way.</summary>
public class RemadeAdviceTests
{
    private static readonly Frequency Target = Tuning.Concert.FrequencyOf(Pitch.Parse("D2"));

    // Three ways back to the note from a tube that was cut too far, each with its own bore; half a cent may lie between the ways in which the waves
    // of a bell are computed.
    [Draws(quick: 3, inLong: 40, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void A_tube_cut_too_far_comes_back_to_the_note(RandomTube tube)
    {
        var exact = Plan(tube.Parts(), "D2").Exact!.Cut.Millimeters;
        var cut = exact - 45;
        var advice = TrimAdvice.For(tube.Parts(), Target, Mm(cut), Room, []);
        var lengthening = advice.Lengthening!;
        var player = PlayingCorrection.LipsInRoomAir.MeanCents;
        void Sounds(Bore bore) =>
            Assert.Equal(0, Cents.Between(Target, tube.First(bore)) + player, tube.HasBell ? 0.5 : 0.02);

        // A new pipe in place of the open one, cut to this length, sockets and all.
        Sounds(tube.Bore(lengthening.Pipe!.Value.Millimeters));
        var bore = tube.Bore(cut);
        var last = bore.Sections[^1];
        Sounds(
            new Bore(
                [.. bore.Sections, new CylinderSection(last.OutletDiameter, lengthening.Beyond!.Value)],
                bore.FarEnd
            )
        );
        if (lengthening.RingInside is { } ring)
        {
            Assert.Equal(20, lengthening.RingLength.Millimeters);
            var kept = last.Length - lengthening.RingLength;
            var there =
                last.InletDiameter + (last.OutletDiameter - last.InletDiameter) * (kept / last.Length);
            Section before = tube.HasBell
                ? new ConeSection(last.InletDiameter, there, kept)
                : new CylinderSection(last.InletDiameter, kept);
            Sounds(
                new Bore(
                    [.. bore.Sections.SkipLast(1), before, new CylinderSection(ring, lengthening.RingLength)],
                    bore.FarEnd
                )
            );
        }
    }

    // What is known after some takes: prior times likelihoods, summed up over a fine scale of cents.
    [Draws(quick: 4, inLong: 40, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void What_is_learned_is_what_is_likely(RandomTube tube, byte[] takes)
    {
        var cut = Plan(tube.Parts(), "D2").FirstCut!.Cut.Millimeters + 20;
        var resonance = tube.First(cut);
        var heard = takes
            .Take(6)
            .Select(take => (Cents: take % 50 - 5 + take / 255.0, Unsure: 0.2 + take % 7))
            .ToList();
        var advice = TrimAdvice.For(
            tube.Parts(),
            Target,
            Mm(cut),
            Room,
            [
                .. heard.Select(take => new TubeMeasurement(
                    DateTimeOffset.UnixEpoch,
                    Mm(cut),
                    resonance * Math.Pow(2, take.Cents / 1200),
                    take.Unsure,
                    Room
                )
                {
                    Joints = JointState.Home,
                }),
            ]
        );
        var budget = advice.Column.Budgets(
            [advice.Resonance],
            TubeBuilder.Tolerances(advice.Tube, Room, new())
        )[0];
        // 21.5 ± 12 cents, wider by what the tube is unsure; a take scatters by 5 cents, a day by 3.
        double Likely(double cents, double mean, double sd) =>
            -(cents - mean) * (cents - mean) / (2 * sd * sd);
        var grid = Enumerable.Range(-4000, 12001).Select(i => i / 50.0).ToArray();
        var prior = heard.Count == 0 ? 12 : double.Hypot(12, budget.StandardDeviationCents);
        var logs = grid.Select(cents =>
                Likely(cents, 21.5, prior)
                + heard.Sum(take => Likely(cents, take.Cents, double.Hypot(5, take.Unsure)))
            )
            .ToArray();
        var weights = logs.Select(log => Math.Exp(log - logs.Max())).ToArray();
        var mean = grid.Zip(weights, (cents, w) => cents * w).Sum() / weights.Sum();
        var sigma = Math.Sqrt(
            grid.Zip(weights, (cents, w) => (cents - mean) * (cents - mean) * w).Sum() / weights.Sum()
        );
        Assert.Equal(heard.Count, advice.DifferencesCents.Count);
        Assert.All(
            heard.Zip(advice.DifferencesCents),
            pair => Assert.Equal(pair.First.Cents, pair.Second, 0.01)
        );
        Assert.Equal(mean, advice.Correction.MeanCents, 0.02);
        Assert.Equal(sigma, advice.Correction.StandardDeviationCents, 0.02);
        var next = heard.Count == 0 ? sigma : Math.Sqrt(sigma * sigma + 25 + 9);
        Assert.Equal(next, advice.NextTake.StandardDeviationCents, 0.02);
        var row = advice.Table.Rows[0];
        Assert.Equal(Cents.Between(Target, resonance) + mean, row.Cents, 0.03);
        // Nothing heard yet: the tube is as unsure as its sizes. Else that is in what was heard.
        var all = heard.Count == 0 ? double.Hypot(sigma, budget.StandardDeviationCents) : next;
        Assert.Equal(1.96 * all, row.PlusMinusCents, 0.05 * 1.96 * all);
        Assert.Equal(tube.Hidden, advice.Hidden.Millimeters, 1e-6);
        if (advice.Table.SafeCut is { } safe)
        {
            var alike = tube with { Fronts = advice.Column.Wavefronts };
            Assert.InRange(safe.Cents + safe.PlusMinusCents, -0.1, 0);
            Assert.Equal(
                Cents.Between(Target, alike.First(advice.SafePipe!.Value.Millimeters)) + mean,
                safe.Cents,
                0.03
            );
        }
    }
}
