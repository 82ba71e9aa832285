using UnitsNet;
using static AirColumn.Tests.Gases.States;

namespace AirColumn.Tests.Gases;

/// <summary>Where profiles are cut, what lies between their states, and how they are told apart.</summary>
public class AirProfilePartsTests
{
    private static readonly AirState Room = AirAt(20, 50).State!;
    private static readonly AirState Breath = AirState.ExhaledBreath;
    private static readonly AirState Hall = AirAt(24, 30, 90, 0.002).State!;

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static AirProfile[] Different =>
        [
            AirProfile.Uniform(Air.At(Room)),
            AirProfile.Uniform(Air.At(Breath)),
            AirProfile.Linear(Breath, Room),
            AirProfile.Linear(Room, Breath),
            AirProfile.Linear(Breath, Hall),
            AirProfile.Linear(Breath, Room, Mm(300)),
            AirProfile.Exponential(Breath, Room, Mm(300)),
            AirProfile.Exponential(Breath, Room, Mm(301)),
            AirProfile.Exponential(Breath, Hall, Mm(300)),
            AirProfile.Tabulated(new(Mm(0), Breath), new(Mm(300), Room)),
            AirProfile.Tabulated(new(Mm(0), Breath), new(Mm(301), Room)),
            AirProfile.Tabulated(new(Mm(0), Breath), new(Mm(100), Hall), new(Mm(300), Room)),
        ];

    [Fact]
    public void Only_a_profile_of_the_same_kind_and_values_is_equal()
    {
        var (some, again) = (Different, Different);
        for (var i = 0; i < some.Length; i++)
        {
            for (var j = 0; j < some.Length; j++)
            {
                Assert.True(i == j == some[i].Equals(again[j]), $"{i} and {j}");
                Assert.True(i == j == some[i].Equals((object)again[j]), $"{i} and {j}");
                // Not required of a hash, but a dictionary is slow without it. Two agree by chance once in 2³².
                if (some[i].GetType() == again[j].GetType())
                {
                    Assert.True(
                        i == j == (some[i].GetHashCode() == again[j].GetHashCode()),
                        $"hashes of {i} and {j}"
                    );
                }
            }

            Assert.False(some[i].Equals(null));
        }

        Assert.Equal(some[0], AirProfile.FromAir(Air.At(Room)));
    }

    [Fact]
    public void Says_what_it_is()
    {
        Assert.Equal(Air.At(Room).ToString(), AirProfile.Uniform(Air.At(Room)).ToString());
        Assert.Equal($"from {Breath} steadily to {Room}", AirProfile.Linear(Breath, Room).ToString());
        Assert.Equal(
            $"from {Breath} towards {Room}, 1/e in 250.5 mm",
            AirProfile.Exponential(Breath, Room, Mm(250.5)).ToString()
        );
        Assert.Equal(
            $"from {Breath} to {Room} by 3 points",
            AirProfile.Tabulated(new(Mm(0), Breath), new(Mm(9), Hall), new(Mm(20), Room)).ToString()
        );
    }

    // What is mixed is gas: pressure and the amounts of carbon dioxide and water go in proportion, humidity follows.
    [Fact]
    public void Between_two_states_pressure_and_both_gases_go_in_proportion()
    {
        var there = AirProfile.Linear(Hall, Room, Mm(400)).At(Mm(100), Mm(1000)).State!;
        Near.Relative(23, there.Temperature.DegreesCelsius, 1e-12);
        Near.Relative(90 + 11.325 / 4, there.Pressure.Kilopascals, 1e-12);
        Near.Relative(0.0016, there.CarbonDioxide.DecimalFractions, 1e-12);
        Near.Relative(0.75 * Hall.WaterVapour + 0.25 * Room.WaterVapour, there.WaterVapour, 1e-12);
    }

    [Fact]
    public void Before_the_beginning_and_beyond_the_end_nothing_changes()
    {
        foreach (
            var profile in new[]
            {
                AirProfile.Linear(Breath, Room, Mm(400)),
                AirProfile.Tabulated(new(Mm(50), Breath), new(Mm(400), Room)),
            }
        )
        {
            Assert.Equal(Air.At(Breath), profile.At(Mm(-10), Mm(1000)));
            Assert.Equal(Air.At(Room), profile.At(Mm(400), Mm(1000)));
            Assert.Equal(Air.At(Room), profile.At(Mm(990), Mm(1000)));
        }

        Assert.Equal(Air.At(Breath), AirProfile.Exponential(Breath, Room, Mm(9)).At(Mm(-10), Mm(1000)));
        Assert.Equal(
            "boreLength",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => AirProfile.Linear(Breath, Room).At(Mm(1), Mm(0)))
                .ParamName
        );
    }

    // A slice changes the speed of sound by a two-thousandth at most, and there are no more slices than that takes.
    // The speed is not quite linear between the states: a tenth more in single slices.
    [Fact]
    public void A_steady_change_is_cut_into_slices_as_thin_as_is_said_and_no_thinner()
    {
        var change = Math.Abs(Math.Log(Air.At(Breath).SpeedOfSound / Air.At(Room).SpeedOfSound));
        var profile = AirProfile.Linear(Breath, Room, Mm(400));
        var places = profile.Divisions(1).ToList();
        Assert.Equal((int)Math.Ceiling(change / 5e-4), places.Count);
        Near.Relative(0.4, places[^1], 1e-12);
        AssertThin(profile, places.Prepend(0).ToList());

        // One less where the bore ends with the change.
        Assert.Equal(places.Count - 1, AirProfile.Linear(Breath, Room).Divisions(0.4).Count());
        Assert.Equal(places.Count - 1, profile.Divisions(0.4).Count());
        Assert.Empty(profile.Divisions(places[0]));
    }

    [Fact]
    public void A_table_is_cut_at_its_points_and_between_them()
    {
        var late = AirProfile.Tabulated(new(Mm(50), Breath), new(Mm(100), Hall), new(Mm(400), Room));
        var places = late.Divisions(1).ToList();
        Assert.Equal(0.05, places[0]);
        Near.Relative(0.4, places[^1], 1e-12);
        Assert.Single(places, x => Math.Abs(x - 0.1) < 1e-12);
        AssertThin(late, places);

        var early = AirProfile.Tabulated(new(Mm(0), Breath), new(Mm(400), Room));
        Assert.Equal(AirProfile.Linear(Breath, Room).Divisions(0.4), early.Divisions(0.4));
        Assert.All(late.Divisions(0.2), x => Assert.InRange(x, 0.05, 0.199999));
        Assert.Equal([0.0, 0.4], Ends(AirProfile.Tabulated(new(Mm(0), Room), new(Mm(400), Room))));

        static double[] Ends(AirProfile profile) => [0, .. profile.Divisions(1)];
    }

    // A ten-thousandth of the change is left at ln(10⁴) decays; a slice is an eighth of a decay at most.
    [Fact]
    public void A_decay_is_followed_to_a_ten_thousandth_in_slices_of_an_eighth_at_most()
    {
        const double Decay = 0.05;
        var profile = AirProfile.Exponential(Breath, Room, Length.FromMeters(Decay));
        var places = profile.Divisions(10).ToList();
        Assert.InRange(places[^1] / Decay, Math.Log(1e4), Math.Log(1e4) + 1.0 / 8);
        var before = 0.0;
        foreach (var place in places)
        {
            Assert.InRange(place - before, 1e-9, Decay / 8 * (1 + 1e-9));
            before = place;
        }

        AssertThin(profile, places.Prepend(0).ToList());
        Assert.Equal(places.Where(x => x < 0.1), profile.Divisions(0.1));
        // At first the change, not the decay, is what makes slices thin: half of it takes half of all its slices.
        var parts = Math.Ceiling(
            Math.Abs(Math.Log(Air.At(Breath).SpeedOfSound / Air.At(Room).SpeedOfSound)) / 5e-4
        );
        Assert.InRange(places.Count(x => x <= Decay * Math.Log(2)) / (parts / 2), 0.9, 1.1);
    }

    [Fact]
    public void One_air_throughout_is_not_cut() => Assert.Empty(Different[0].Divisions(1));

    [Fact]
    public void Only_air_throughout_is_uniform_and_only_air_by_constants_has_no_state()
    {
        Assert.Equal([true, true], Different.Take(2).Select(profile => profile.IsUniform));
        Assert.All(Different.Skip(2), profile => Assert.False(profile.IsUniform));
        Assert.All(Different, profile => Assert.True(profile.HasState));
        Assert.False(AirProfile.Uniform(Constants).HasState);
    }

    [Fact]
    public void A_change_is_made_to_all_states_of_a_profile()
    {
        Assert.Equal(AirProfile.Uniform(Air.At(Hall)), AirProfile.Uniform(Air.At(Room)).With(Swap));
        Assert.Equal(
            AirProfile.Linear(Breath, Hall, Mm(7)),
            AirProfile.Linear(Breath, Room, Mm(7)).With(Swap)
        );
        Assert.Equal(
            AirProfile.Exponential(Hall, Breath, Mm(7)),
            AirProfile.Exponential(Room, Breath, Mm(7)).With(Swap)
        );
        Assert.Equal(
            AirProfile.Tabulated(new(Mm(0), Hall), new(Mm(7), Breath), new(Mm(9), Hall)),
            AirProfile.Tabulated(new(Mm(0), Room), new(Mm(7), Breath), new(Mm(9), Room)).With(Swap)
        );

        static AirState Swap(AirState state) => state == Room ? Hall : state;
    }

    // Air whose model was chosen by its state is chosen anew; a model asked for by name stays.
    [Fact]
    public void Changed_air_keeps_the_way_its_model_was_chosen()
    {
        Assert.Equal(AirModel.GasMixture, Air.At(Room).With(_ => Breath).Model);
        Assert.Equal(AirModel.Iec61094, Air.At(Breath).With(_ => Room).Model);
        Assert.Equal(AirModel.GasMixture, Air.At(Room, AirModel.GasMixture).With(_ => Hall).Model);
        Assert.Equal(AirModel.Iec61094, Air.At(Breath, AirModel.Iec61094).With(_ => Breath).Model);
        var error = Assert.Throws<InvalidOperationException>(() => Constants.With(_ => Room));
        Assert.Contains("given by constants", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_missing_or_out_of_order_is_refused_by_name()
    {
        Assert.Equal(
            "from",
            Assert.Throws<ArgumentNullException>(() => AirProfile.Linear(null!, Room)).ParamName
        );
        Assert.Equal(
            "to",
            Assert.Throws<ArgumentNullException>(() => AirProfile.Linear(Room, null!)).ParamName
        );
        Assert.Equal(
            "from",
            Assert.Throws<ArgumentNullException>(() => AirProfile.Exponential(null!, Room, Mm(9))).ParamName
        );
        Assert.Equal(
            "towards",
            Assert.Throws<ArgumentNullException>(() => AirProfile.Exponential(Room, null!, Mm(9))).ParamName
        );
        Assert.Equal(
            "points",
            Assert.Throws<ArgumentNullException>(() => AirProfile.Tabulated(null!)).ParamName
        );
        Assert.Throws<ArgumentNullException>(() => Air.At(null!, AirModel.GasMixture));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            AirProfile.Tabulated(new(Mm(-1), Room), new(Mm(5), Breath))
        );
        Assert.StartsWith(
            "An air profile has 1 points; it needs at least 2.",
            Assert
                .Throws<ArgumentException>(() => AirProfile.Tabulated(new AirProfilePoint(Mm(0), Room)))
                .Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Air profile point 3 is at 4 mm, point 2 at 5 mm; distances must increase.",
            Assert
                .Throws<ArgumentException>(() =>
                    AirProfile.Tabulated(new(Mm(0), Room), new(Mm(5), Breath), new(Mm(4), Room))
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    private static Air Constants =>
        Air.FromConstants(
            Speed.FromMetersPerSecond(343),
            Density.FromKilogramsPerCubicMeter(1.2),
            DynamicViscosity.FromPascalSeconds(1.8e-5),
            ThermalConductivity.FromWattsPerMeterKelvin(0.026),
            SpecificEntropy.FromJoulesPerKilogramKelvin(1000),
            1.4
        );

    private static void AssertThin(AirProfile profile, List<double> places)
    {
        foreach (var (from, to) in places.Zip(places.Skip(1)))
        {
            Assert.True(to > from);
            var change =
                profile.At(to, 1).Constants.SpeedOfSound / profile.At(from, 1).Constants.SpeedOfSound;
            Assert.InRange(Math.Abs(Math.Log(change)), 0, 1.1 * 5e-4);
        }
    }
}
