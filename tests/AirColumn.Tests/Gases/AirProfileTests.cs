using UnitsNet;
using static AirColumn.Tests.Gases.States;

namespace AirColumn.Tests.Gases;

public class AirProfileTests
{
    private static readonly AirState Room = AirAt(20, 50).State!;
    private static readonly AirState Breath = AirState.ExhaledBreath;

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static Bore Tube { get; } =
        Bore.Build().Cylinder(Mm(38), Mm(700)).Cone(Mm(70), Mm(600)).OpenEnd();

    [Fact]
    public void Begins_and_ends_with_the_states_given()
    {
        var linear = AirProfile.Linear(Breath, Room);
        Assert.Equal(Air.At(Breath), linear.At(Mm(0), Mm(1000)));
        Assert.Equal(Air.At(Room), linear.At(Mm(1000), Mm(1000)));
        Near.Relative(27, linear.At(Mm(500), Mm(1000)).State!.Temperature.DegreesCelsius, 1e-12);
        var exponential = AirProfile.Exponential(Breath, Room, Mm(300));
        Assert.Equal(Air.At(Breath), exponential.At(Mm(0), Mm(1000)));
        Near.Relative(
            20 + 14 * Math.Exp(-2),
            exponential.At(Mm(600), Mm(1000)).State!.Temperature.DegreesCelsius,
            1e-12
        );
        var table = AirProfile.Tabulated(
            new(Mm(100), Breath),
            new(Mm(200), AirAt(25, 80).State!),
            new(Mm(900), Room)
        );
        Assert.Equal(Air.At(Breath), table.At(Mm(20), Mm(1000)));
        Near.Relative(29.5, table.At(Mm(150), Mm(1000)).State!.Temperature.DegreesCelsius, 1e-12);
        Assert.Equal(Air.At(Room), table.At(Mm(950), Mm(1000)));
    }

    // Saturated breath mixed with cold room air cannot hold its water: it condenses, and the humidity stays at 100 %.
    [Fact]
    public void Breath_mixed_with_cold_air_stays_saturated_and_no_more()
    {
        var mixed = AirProfile.Linear(Breath, AirAt(5, 90).State!).At(Mm(500), Mm(1000)).State!;
        Near.Relative(100, mixed.Humidity.Percent, 1e-12);
    }

    [Fact]
    public void A_profile_of_one_state_is_that_air()
    {
        var uniform = new Column(Tube, Air.At(Room));
        foreach (
            var profile in new[]
            {
                AirProfile.Uniform(Air.At(Room)),
                AirProfile.Linear(Room, Room),
                AirProfile.Exponential(Room, Room, Mm(100)),
                AirProfile.Tabulated(new(Mm(0), Room), new(Mm(500), Room)),
            }
        )
        {
            var f = Frequency.FromHertz(321);
            Near.Relative(uniform.ImpedanceAt(f), new Column(Tube, profile).ImpedanceAt(f), 1e-10, profile);
        }
    }

    // Slicing is fine enough: the same profile given as a table of forty times as many slices.
    [Fact]
    public void Slices_are_fine_enough_for_a_hundredth_of_a_cent()
    {
        var length = Tube.Length.Meters;
        foreach (
            var profile in new[]
            {
                AirProfile.Linear(Breath, Room),
                AirProfile.Exponential(Breath, Room, Mm(250)),
            }
        )
        {
            var fine = AirProfile.Tabulated([
                .. Enumerable
                    .Range(0, 401)
                    .Select(i => new AirProfilePoint(
                        Length.FromMeters(length * i / 400),
                        profile.At(Length.FromMeters(length * i / 400), Tube.Length).State!
                    )),
            ]);
            var coarse = new Column(Tube, profile).FirstResonances(6);
            foreach (var (a, b) in coarse.Zip(new Column(Tube, fine).FirstResonances(6)))
            {
                Near.Absolute(0, Cents.Between(b.Frequency, a.Frequency), 0.01, profile);
            }
        }
    }

    // Time of travel decides where reflections are weak (Liouville–Green): with the change small, quarter-wave resonances lie
    // at f = (2n − 1)/(4∫dx/c). A tube of 1 m closed and ideally open, c from breath to room linear in T, no losses.
    // Reflection from the gradient itself is of second order in its 2.2 %: under half a cent.
    [Fact]
    public void High_resonances_follow_the_time_of_travel()
    {
        var profile = AirProfile.Linear(Breath, Room);
        var bore = Bore.Build().Cylinder(Mm(20), Mm(1000)).IdealOpenEnd();
        var column = new Column(bore, profile, new ColumnOptions { Losses = WallLosses.None });
        var time = Enumerable
            .Range(0, 2000)
            .Sum(i => 5e-4 / profile.At(Mm((i + 0.5) / 2), Mm(1000)).SpeedOfSound.MetersPerSecond);
        var found = column.FirstResonances(8);
        for (var n = 1; n <= 8; n++)
        {
            var expected = Frequency.FromHertz((2 * n - 1) / (4 * time));
            // The first ones feel the gradient: their fields weigh its two ends unequally.
            Near.Absolute(0, Cents.Between(expected, found[n - 1].Frequency), n == 1 ? 12 : 12.0 / n / n, n);
        }
    }

    [Fact]
    public void Profiles_are_values()
    {
        Assert.Equal(AirProfile.Linear(Breath, Room, Mm(500)), AirProfile.Linear(Breath, Room, Mm(500)));
        Assert.NotEqual(AirProfile.Linear(Breath, Room, Mm(500)), AirProfile.Linear(Breath, Room));
        Assert.Equal(AirProfile.Uniform(Air.At(Room)), (AirProfile)Air.At(Room));
        Assert.Equal(
            AirProfile.Tabulated(new(Mm(0), Breath), new(Mm(9), Room)),
            AirProfile.Tabulated(new(Mm(0), Breath), new(Mm(9), Room))
        );
        Assert.Equal(
            AirProfile.Exponential(Breath, Room, Mm(9)).GetHashCode(),
            AirProfile.Exponential(Breath, Room, Mm(9)).GetHashCode()
        );
    }

    [Fact]
    public void Impossible_profiles_are_refused()
    {
        Assert.Throws<ArgumentException>(() => AirProfile.Tabulated(new AirProfilePoint(Mm(0), Room)));
        Assert.Throws<ArgumentException>(() => AirProfile.Tabulated(new(Mm(5), Room), new(Mm(5), Breath)));
        Assert.Throws<ArgumentOutOfRangeException>(() => AirProfile.Linear(Breath, Room, Mm(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => AirProfile.Exponential(Breath, Room, Mm(-1)));
        Assert.Throws<ArgumentNullException>(() => AirProfile.Uniform(null!));
        Assert.Throws<ArgumentNullException>(() => AirProfile.Tabulated(new(Mm(0), null!), new(Mm(5), Room)));
    }
}
