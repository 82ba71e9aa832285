using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

public class SectionLengthTests
{
    // Quarter wave, L = c/4f, exact for an ideal open end without losses; 344 m/s and C2 = 65.406 Hz give 1.315 m
    // (common practice).
    [Fact]
    public void Ideal_tube_without_losses_follows_the_quarter_wave_rule()
    {
        var air = Air.FromConstants(
            Speed.FromMetersPerSecond(344),
            Density.FromKilogramsPerCubicMeter(1.2),
            DynamicViscosity.FromPascalSeconds(1.8e-5),
            ThermalConductivity.FromWattsPerMeterKelvin(0.026),
            SpecificEntropy.FromJoulesPerKilogramKelvin(1006),
            1.4
        );
        var c2 = Tuning.Concert.FrequencyOf(Pitch.Parse("C2"));
        var column = new Column(Bore.Build().Cylinder(Mm(40), Mm(500)).IdealOpenEnd(), air, Lossless);
        var solution = SectionLength.Solve(column, 0, c2);

        Assert.True(solution.IsSolved, solution.Explanation);
        Near.Relative(344 / (4 * c2.Hertz), solution.Length.Meters, 1e-9);
        Near.Absolute(1.315, solution.Length.Meters, 0.0005);
        // d(1200·log2 f)/dL = −1200/(L·ln 2).
        Near.Relative(-1200 / (solution.Length.Millimeters * Math.Log(2)), solution.CentsPerMillimetre, 1e-6);
    }

    [Property(MaxTest = 60)]
    public void Solved_column_sounds_the_target_when_asked_again(byte pitch, byte width, byte mouth)
    {
        var target = Tuning.Concert.FrequencyOf(Pitch.FromNumber(30 + pitch % 30));
        var bore = Bore.Build()
            .Cylinder(Mm(20 + mouth % 20), Mm(25))
            .Cylinder(Mm(25 + width % 40), Mm(800))
            .OpenEnd(Mm(3));
        var solution = SectionLength.Solve(new Column(bore, TableAir), 1, target);

        Assert.True(solution.IsSolved, solution.Explanation);
        var again = new Column(bore.WithSectionLength(1, solution.Length), TableAir).FirstResonances(1);
        Near.Absolute(0, Cents.Between(target, again[0].Frequency), 1e-6);
    }

    // From lengths so short that the first resonance lies above the cut-on, and to notes near it.
    [Theory]
    [InlineData(1, 65.4)]
    [InlineData(3, 65.4)]
    [InlineData(300, 4800)]
    [InlineData(5, 4500)]
    [InlineData(90_000, 65.4)]
    public void Solves_from_any_length_to_begin_with(double millimetres, double hertz)
    {
        var column = new Column(Bore.Build().Cylinder(Mm(40), Mm(millimetres)).OpenEnd(), TableAir);
        var solution = SectionLength.Solve(column, 0, Frequency.FromHertz(hertz));
        Assert.True(solution.IsSolved, solution.Explanation);
        Near.Relative(hertz, solution.Column.FirstResonances(1)[0].Frequency.Hertz, 1e-9);
    }

    [Fact]
    public void Shrinks_a_profile_with_a_short_piece_no_further_than_it_can()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(40), Mm(1000))
            .Profile(new(Mm(0), Mm(40)), new(Mm(1), Mm(41)), new(Mm(900), Mm(60)))
            .OpenEnd();
        var solution = SectionLength.Solve(new Column(bore, TableAir), 1, Frequency.FromHertz(500));
        Assert.Equal(SolveStatus.OutOfReach, solution.Status);
    }

    [Fact]
    public void Says_so_when_the_rest_of_the_bore_is_already_too_long()
    {
        var bore = Bore.Build().Cylinder(Mm(40), Mm(1000)).Cylinder(Mm(40), Mm(100)).OpenEnd();
        var solution = SectionLength.Solve(new Column(bore, TableAir), 1, Frequency.FromHertz(200));

        Assert.Equal(SolveStatus.OutOfReach, solution.Status);
        Assert.True(solution.ResidualCents < 0);
        Assert.Contains(
            "below 200 Hz; shorten another section",
            solution.Explanation,
            StringComparison.Ordinal
        );
        Assert.True(double.IsNaN(solution.CentsPerMillimetre));
    }

    [Fact]
    public void Says_so_when_even_the_longest_section_is_too_short()
    {
        var bore = Bore.Build().Cylinder(Mm(40), Mm(1000)).OpenEnd();
        var solution = SectionLength.Solve(new Column(bore, TableAir), 0, Frequency.FromHertz(0.5));

        Assert.Equal(SolveStatus.OutOfReach, solution.Status);
        Assert.Contains(
            "above 0.5 Hz; lengthen another section",
            solution.Explanation,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(-1, 65)]
    [InlineData(1, 65)]
    [InlineData(0, 0)]
    [InlineData(0, -65)]
    [InlineData(0, 20000)]
    public void Refuses_a_section_or_a_target_that_cannot_be(int section, double hertz)
    {
        var column = new Column(Bore.Build().Cylinder(Mm(40), Mm(1000)).OpenEnd(), TableAir);
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            SectionLength.Solve(column, section, Frequency.FromHertz(hertz))
        );
        Assert.Contains(section == 0 ? "Hz" : "the only index is 0", error.Message, StringComparison.Ordinal);
    }

    // Holes keep their distance from the blown end, so the tube cannot be cut above the last of them.
    [Fact]
    public void A_tube_with_holes_is_not_cut_through_them()
    {
        var bore = Bore.Build().Cylinder(Mm(15), Mm(400)).Hole(Mm(200), Mm(6), Mm(3)).OpenEnd();
        var column = new Column(bore, TableAir).WithFingering(Fingering.AllClosed);
        var lower = SectionLength.Solve(column, 0, Frequency.FromHertz(180));
        Assert.True(lower.IsSolved, lower.Explanation);
        Assert.Equal(bore.Holes[0], lower.Column.Bore.Holes[0]);
        Assert.Equal(Fingering.AllClosed, lower.Column.Options.Fingering);

        var higher = SectionLength.Solve(column, 0, Frequency.FromHertz(700));
        Assert.Equal(SolveStatus.OutOfReach, higher.Status);
        Near.Relative(203, higher.Length.Millimeters, 1e-6);
    }

    // Lengths around where automatic fronts turn from curved ones to modes: the answer has what a column of that length takes by itself, and
    // meets the target with it.
    [Theory]
    [InlineData(150)]
    [InlineData(200)]
    [InlineData(260)]
    [InlineData(420)]
    public void Wave_fronts_stay_the_same_through_a_search(double hertz)
    {
        var bell = new Column(
            Bore.Build().Cylinder(Mm(40), Mm(500)).Cone(Mm(40), Mm(60), Mm(60)).OpenEnd(Mm(3)),
            TableAir
        );
        var solution = SectionLength.Solve(bell, 0, Frequency.FromHertz(hertz));
        Assert.True(solution.IsSolved, solution.Explanation);
        Assert.Equal(Wavefronts.Automatic, solution.Column.Options.Wavefronts);
        var anew = new Column(solution.Column.Bore, TableAir);
        Assert.Equal(anew.Wavefronts, solution.Column.Wavefronts);
        Near.Absolute(
            0,
            Cents.Between(Frequency.FromHertz(hertz), anew.FirstResonances(1)[0].Frequency),
            1e-5,
            hertz
        );
    }
}
