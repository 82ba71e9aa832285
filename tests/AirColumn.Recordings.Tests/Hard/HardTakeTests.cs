using UnitsNet;

namespace AirColumn.Recordings.Tests.Hard;

/// <summary>Takes that are hard to read: what is measured is right, or it says that it may be wrong.</summary>
public class HardTakeTests
{
    private const int Takes = 20;

    // Farther off it is another note.
    private const double Wrong = 60;

    private static readonly HardKind[] Kinds =
    [
        HardKind.Doubled,
        HardKind.Fifth,
        HardKind.Hum,
        HardKind.Background,
        HardKind.Rumble,
        HardKind.Growl,
        HardKind.TwoNotes,
        HardKind.Wandering,
        HardKind.Breaths,
        HardKind.Everything,
    ];

    // The trouble grows with the number: of twenty one with little and one with much of it.
    private static readonly int[] Numbers = Amount.Of([5, 16], Enumerable.Range(0, Takes).ToArray());

    private static readonly Lazy<IReadOnlyList<Reading>> All = new(() =>
        [.. Kinds.SelectMany(kind => Numbers.Select(number => Read(kind, number)))]
    );

    [Fact]
    [Trait("Speed", "Slow")]
    public void Of_a_hundred_at_most_one_is_wrong_without_a_word()
    {
        var silent = All.Value.Where(one => one.Cents is { } off && Math.Abs(off) >= Wrong && !one.IsWarned);
        Assert.True(100 * silent.Count() <= All.Value.Count, string.Join(", ", silent));
    }

    // What a player does with a clean tube, however unsteady, is no reason to refuse it.
    [Theory]
    [Trait("Speed", "Slow")]
    [InlineData(nameof(HardKind.Wandering), 20)]
    [InlineData(nameof(HardKind.Breaths), 20)]
    [InlineData(nameof(HardKind.Everything), 20)]
    [InlineData(nameof(HardKind.Background), 20)]
    [InlineData(nameof(HardKind.Rumble), 20)]
    [InlineData(nameof(HardKind.Fifth), 20)]
    [InlineData(nameof(HardKind.Growl), 15)]
    public void What_is_played_is_read(string kind, int least)
    {
        var read = All.Value.Where(one => one.Kind.ToString() == kind);
        var right = read.Count(one => one.Cents is > -10 and < 10);
        Assert.True(right >= least * Numbers.Length / Takes, $"{right} of {Numbers.Length}");
    }

    // Of the takes of each kind that are not doubted: the root mean square of error over stated uncertainty. Growls and two notes at once are
    // nearly all doubted.
    [Theory]
    [Trait(Amount.Trait, Amount.Long)]
    [InlineData(nameof(HardKind.Doubled))]
    [InlineData(nameof(HardKind.Fifth))]
    [InlineData(nameof(HardKind.Hum))]
    [InlineData(nameof(HardKind.Background))]
    [InlineData(nameof(HardKind.Rumble))]
    [InlineData(nameof(HardKind.Wandering))]
    [InlineData(nameof(HardKind.Breaths))]
    [InlineData(nameof(HardKind.Everything))]
    public void The_stated_uncertainty_is_that_of_the_errors(string kind)
    {
        var ratios = All
            .Value.Where(one => one.Kind.ToString() == kind && !one.IsWarned && one.Cents is not null)
            .Select(one => one.Cents!.Value / one.Stated)
            .ToList();
        var ratio = Math.Sqrt(ratios.Average(r => r * r));
        Assert.True(ratio is > 1 / 1.5 and < 1.5, $"{kind}: {ratio:0.00} of {ratios.Count}");
    }

    // A tube whose first resonances are known says which octave it is.
    [Theory]
    [InlineData(nameof(HardKind.Doubled))]
    [InlineData(nameof(HardKind.Fifth))]
    public void Resonances_of_the_tube_settle_the_octave(string kind)
    {
        for (var number = 1; number < Takes; number += Amount.Of(6, 3))
        {
            var take = HardTake.Make(Enum.Parse<HardKind>(kind), number);
            // A drone lies some cents above its resonance; the next ones of a tube closed by lips are near three and five times the first.
            var resonances = ((double[])[1, 2.95, 4.9]).Select(n =>
                Frequency.FromHertz(0.985 * n * take.Hertz)
            );
            var heard = Take.Of(take.Recorded(), new TakeOptions { Resonances = [.. resonances] }).Drone!;
            Assert.Equal(0, Cents.Between(Frequency.FromHertz(take.Hertz), heard.Fundamental), 0.5);
            Assert.Empty(heard.Alternatives);
        }
    }

    [Fact]
    public void Without_them_the_doubt_is_said()
    {
        var take = HardTake.Make(HardKind.Doubled, 19);
        var heard = Take.Of(take.Recorded());
        var notes = heard.Drone!.Alternatives.Append(heard.Drone.Fundamental).Select(note => note.Hertz);
        Assert.Contains(notes, hertz => Math.Abs(hertz / take.Hertz - 1) < 1e-4);
        Assert.Contains(notes, hertz => Math.Abs(2 * hertz / take.Hertz - 1) < 1e-4);
        Assert.Contains("The octave is in doubt", Assert.Single(heard.Warnings), StringComparison.Ordinal);
    }

    [Fact]
    public void A_looped_tone_is_not_a_twelfth_too_low()
    {
        for (var number = 0; number < Takes; number += 4)
        {
            var read = Read(HardKind.Looped, number);
            Assert.InRange(read.Cents!.Value, -0.1, 0.1);
        }
    }

    [Fact]
    public void What_is_played_clean_raises_no_doubt()
    {
        for (var number = 0; number < Takes; number += Amount.Of(5, 2))
        {
            var take = HardTake.Make(HardKind.Plain, number);
            var heard = Take.Of(take.Recorded()).Drone!;
            Assert.Equal(0, Cents.Between(Frequency.FromHertz(take.Hertz), heard.Fundamental), 0.02);
            Assert.Empty(heard.Alternatives);
            Assert.Empty(heard.Warnings);
        }
    }

    private static Reading Read(HardKind kind, int number)
    {
        var take = HardTake.Make(kind, number);
        var heard = Take.Of(take.Recorded());
        return heard.Drone is { } drone
            ? new Reading(
                kind,
                number,
                1200
                    * Math.Log2(
                        drone.Fundamental.Hertz
                            / take.MeanHertz(drone.Pitch[0].Time.Seconds, drone.Pitch[^1].Time.Seconds)
                    ),
                drone.StandardUncertaintyCents,
                heard.Warnings.Count > 0
            )
            : new Reading(kind, number, null, 0, false);
    }

    /// <summary>What was made of one take.</summary>
    /// <param name="Kind">Its kind.</param>
    /// <param name="Number">Which of its kind.</param>
    /// <param name="Cents">Of the mean that is measured from the mean of the true pitch over the same time; null if it is refused.</param>
    /// <param name="Stated">The stated standard uncertainty, cents.</param>
    /// <param name="IsWarned">Whether it says that something is wrong.</param>
    private sealed record Reading(HardKind Kind, int Number, double? Cents, double Stated, bool IsWarned);
}
