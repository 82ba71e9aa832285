using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

public class PlayingTests
{
    private static readonly Column Tube = new(
        Bore.Build().Cylinder(Mm(30), Mm(25)).Cylinder(Mm(40.4), Mm(1190)).OpenEnd(Mm(3)),
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
    );

    private static readonly Frequency D2 = Tuning.Concert.FrequencyOf(Pitch.Parse("D2"));

    // Two normal distributions multiplied: precisions add (any textbook of statistics).
    [Fact]
    public void A_recording_and_the_prior_weigh_by_their_precisions()
    {
        var after = new PlayingCorrection(20, 10).After([14], 5);
        Near.Relative((20.0 / 100 + 14.0 / 25) / (1.0 / 100 + 1.0 / 25), after.MeanCents, 1e-12);
        Near.Relative(Math.Sqrt(1 / (1.0 / 100 + 1.0 / 25)), after.StandardDeviationCents, 1e-12);
    }

    [Property(MaxTest = 100)]
    public void One_by_one_or_all_at_once_recordings_say_the_same(sbyte a, sbyte b, sbyte c)
    {
        var prior = PlayingCorrection.LipsInRoomAir;
        var together = prior.After([a, b, c], 4);
        var single = prior.After([c], 4).After([a], 4).After([b], 4);
        Near.Absolute(together.MeanCents, single.MeanCents, 1e-10);
        Near.Relative(together.StandardDeviationCents, single.StandardDeviationCents, 1e-12);
        Assert.True(together.StandardDeviationCents < prior.StandardDeviationCents);
        Assert.Equal(prior, prior.After([], 4));
        Assert.Equal(PlayingCorrection.None, PlayingCorrection.None.After([a], 4));
    }

    [Fact]
    public void A_played_note_is_the_resonance_with_the_correction_and_both_ranges()
    {
        var resonance = Tube.FirstResonances(1)[0];
        var sure = PlayingCorrection.LipsInRoomAir.Of(resonance);
        Near.Absolute(21.5, Cents.Between(resonance.Frequency, sure.Frequency), 1e-9);
        Near.Relative(1.959964 * 12, sure.PlusMinusCents, 1e-6);
        Assert.Equal(0, sure.ResonancePlusMinusCents);

        Tolerance[] normal =
        [
            Tolerance.Temperature(TemperatureDelta.FromKelvins(3)) with
            {
                IsNormal = true,
            },
        ];
        var budget = Tube.Budgets([resonance], normal)[0];
        var unsure = PlayingCorrection.LipsInRoomAir.Of(budget);
        var sigma = Math.Sqrt(144 + Math.Pow(budget.StandardDeviationCents, 2));
        Near.Relative(sigma, unsure.StandardDeviationCents, 1e-12);
        Near.Relative(1.959964 * sigma, unsure.PlusMinusCents, 1e-6);
        Near.Relative(budget.PlusMinusCents, unsure.ResonancePlusMinusCents, 1e-12);
        Near.Absolute(unsure.PlusMinusCents, Cents.Between(unsure.Frequency, unsure.To), 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlayingCorrection(0, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlayingCorrection(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            PlayingCorrection.LipsInBreath.After([double.NaN], 1)
        );
    }

    // Common practice, from which the prior is taken: warm breath explains about half of 11 to 32 cents.
    [Fact]
    public void Breath_in_the_tube_raises_it_by_about_half_of_what_is_observed()
    {
        var room = Tube.Air.State!;
        var breath = Tube.WithAir(AirProfile.Exponential(AirState.ExhaledBreath, room, Metres(0.6)));
        var raised = Cents.Between(
            Tube.FirstResonances(1)[0].Frequency,
            breath.FirstResonances(1)[0].Frequency
        );
        Assert.InRange(raised, 4, 18);
    }

    [Fact]
    public void Each_row_of_a_trim_table_is_what_the_cut_tube_does()
    {
        var question = new TrimQuestion(1, D2) { Step = Length.FromInches(1.0 / 16) };
        var table = TrimTable.For(Tube, question);
        Assert.InRange(table.Rows.Count, 10, 60);
        for (var i = 0; i < table.Rows.Count; i++)
        {
            var row = table.Rows[i];
            Near.Absolute(i * 25.4 / 16, row.Cut.Millimeters, 1e-9);
            Near.Absolute(1190, (row.Cut + row.Length).Millimeters, 1e-9);
            var cut = Tube.WithBore(Tube.Bore.WithSectionLength(1, row.Length)).FirstResonances(1)[0];
            Near.Relative(cut.Frequency.Hertz, row.Resonance.Hertz, 1e-9);
            Near.Absolute(Cents.Between(D2, row.Note), row.Cents, 1e-9);
        }
    }

    [Fact]
    public void It_ends_with_the_first_row_that_is_sharp()
    {
        var table = TrimTable.For(Tube, new TrimQuestion(1, D2) { Step = Mm(4) });
        Assert.True(table.Rows[^1].Cents > 0 && table.Rows[^2].Cents <= 0);
        Assert.Equal(5, TrimTable.For(Tube, new TrimQuestion(1, D2) { Rows = 5 }).Rows.Count);
        // Without any doubt the safe cut is the whole cut.
        var exact = SectionLength.Solve(Tube, 1, D2);
        Near.Absolute(exact.Length.Millimeters, table.SafeCut!.Value.Length.Millimeters, 1e-3);
    }

    [Fact]
    public void The_safe_cut_keeps_all_of_the_range_below_the_target()
    {
        var question = new TrimQuestion(1, D2)
        {
            Correction = PlayingCorrection.LipsInRoomAir,
            Tolerances =
            [
                new(ColumnParameter.Diameter(1), Mm(0.4)),
                Tolerance.Temperature(TemperatureDelta.FromKelvins(3)),
            ],
        };
        var longer = Tube.WithBore(Tube.Bore.WithSectionLength(1, Mm(1260)));
        var table = TrimTable.For(longer, question);
        var safe = Assert.IsType<TrimRow>(table.SafeCut);
        var upper = safe.Cents + safe.PlusMinusCents;
        Assert.InRange(upper, -1e-3, 0);
        // A millimetre more, and the range reaches above.
        var more = TrimTable.For(
            longer.WithBore(longer.Bore.WithSectionLength(1, safe.Length - Mm(1))),
            question
        );
        Assert.Null(more.SafeCut);
        Assert.Contains("may be sharp already", more.Explanation, StringComparison.Ordinal);
        Assert.Contains("Cut off no more than ", table.Explanation, StringComparison.Ordinal);
    }

    // Not through a hole, nor where the tube is silent, nor for a note that it never reaches.
    [Fact]
    public void A_tube_is_never_cut_where_it_must_not_be()
    {
        var air = Tube.Air;
        var flute = new Column(
            Bore.Build().Cylinder(Mm(19), Mm(500)).Hole(Mm(470), Mm(6), Mm(3)).OpenEnd(Mm(2)),
            air,
            new ColumnOptions { Fingering = Fingering.AllClosed }
        );
        var shorter = flute
            .WithBore(flute.Bore.WithSectionLength(0, Mm(480)))
            .FirstResonances(1)[0]
            .Frequency;
        var table = TrimTable.For(flute, new TrimQuestion(0, shorter));
        Near.Absolute(480, table.SafeCut!.Value.Length.Millimeters, 1e-3);
        var beyond = TrimTable.For(flute, new TrimQuestion(0, Frequency.FromHertz(400)));
        Assert.Null(beyond.SafeCut);
        Near.Absolute(27, beyond.Rows.Max(row => row.Cut.Millimeters), 1e-9);
        Assert.Contains("stays below the target", beyond.Explanation, StringComparison.Ordinal);

        var pipe = new Column(Bore.Build().Cylinder(Mm(40), Mm(1200)).OpenEnd(Mm(3)), air);
        foreach (var hertz in new[] { 2000.0, 4400, 4500, 4600, 4900 })
        {
            var high = TrimTable.For(pipe, new TrimQuestion(0, Frequency.FromHertz(hertz)));
            Assert.True(high.SafeCut is null || Math.Abs(high.SafeCut.Value.Cents) < 0.01, high.Explanation);
        }

        Assert.Null(TrimTable.For(Tube, new TrimQuestion(1, Frequency.FromHertz(3000))).SafeCut);
    }

    // Without what an open end adds, a pipe cut to nearly nothing resonates above all that is computed. The last cut that reaches the note is found
    // all the same: against all lengths, a millimetre apart.
    [Fact]
    public void A_pipe_that_falls_silent_is_cut_as_far_as_it_sounds()
    {
        var pipe = new Column(Bore.Build().Cylinder(Mm(40), Mm(1200)).IdealOpenEnd(), Tube.Air);
        double?[] notes =
        [
            .. Enumerable
                .Range(1, 60)
                .Select(millimetres =>
                    pipe.WithBore(pipe.Bore.WithSectionLength(0, Mm(millimetres))).FirstResonances(1)
                        is [var resonance]
                        ? (double?)resonance.Frequency.Hertz
                        : null
                ),
        ];
        Assert.Null(notes[0]);
        foreach (var hertz in (double[])[1500, 2000, 3000, 4000, 4900])
        {
            var longest = 1 + Array.FindLastIndex(notes, note => note >= hertz);
            var safe = TrimTable.For(pipe, new TrimQuestion(0, Frequency.FromHertz(hertz))).SafeCut;
            Assert.InRange(safe!.Value.Length.Millimeters, longest, longest + 1);
            Near.Absolute(0, safe.Value.Cents, 1e-3);
        }
    }

    [Fact]
    public void A_question_is_checked()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new TrimQuestion(-1, D2));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TrimQuestion(0, Frequency.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TrimQuestion(0, D2) { Step = Mm(0) });
        Assert.Throws<ArgumentOutOfRangeException>(() => TrimTable.For(Tube, new TrimQuestion(2, D2)));
    }
}
