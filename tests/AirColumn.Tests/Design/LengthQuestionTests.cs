using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

public class LengthQuestionTests
{
    private static readonly Bore Tube = Bore.Build()
        .Cylinder(Mm(31), Mm(30))
        .Cylinder(Mm(44), Mm(700))
        .Cone(Mm(75), Mm(160))
        .OpenEnd(Mm(3));

    // Any section, any resonance of the first four, any target: solved to 1e-6 cent or said not to be.
    [Property(MaxTest = 200)]
    public void A_solved_length_sounds_the_target_and_another_says_why(byte which, byte number, ushort height)
    {
        var target = Frequency.FromHertz(30 * Math.Pow(2, height / 65536.0 * 6));
        var question = new LengthQuestion(which % 3, target) { Resonance = 1 + number % 4 };
        var solution = SectionLength.Solve(new Column(Tube, TableAir), question);
        Assert.Same(question, solution.Question);
        if (!solution.IsSolved)
        {
            Assert.Contains(solution.Status, new[] { SolveStatus.OutOfReach, SolveStatus.NoResonance });
            Assert.Contains("resonance", solution.Explanation, StringComparison.Ordinal);
            Assert.True(double.IsNaN(solution.ResidualCents) || Math.Abs(solution.ResidualCents) > 1e-6);
            return;
        }

        var again = new Column(Tube.WithSectionLength(which % 3, solution.Length), TableAir).FirstResonances(
            question.Resonance
        );
        Near.Absolute(0, Cents.Between(target, again[question.Resonance - 1].Frequency), 1e-6);
        var bracket = Assert.IsType<LengthBracket>(solution.Bracket);
        Assert.InRange(solution.Length, bracket.Shorter, bracket.Longer);
    }

    // The last hole belongs to what comes after the section: it goes along with the far end, in the search and in the slope.
    [Fact]
    public void Holes_can_keep_their_distance_from_the_far_end()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(40), Mm(900))
            .Cylinder(Mm(50), Mm(200))
            .Hole(Mm(300), Mm(8), Mm(4))
            .Hole(Mm(1000), Mm(9), Mm(4))
            .OpenEnd(Mm(4));
        var column = new Column(bore, TableAir);
        var question = new LengthQuestion(0, Frequency.FromHertz(150)) { HolesFromFarEnd = 1 };
        var solution = SectionLength.Solve(column, question);
        Assert.True(solution.IsSolved, solution.Explanation);
        var solved = solution.Column.Bore;
        Near.Relative(0.300, solved.Holes[0].Position.Meters, 1e-12);
        Near.Relative(0.100, (solved.Length - solved.Holes[1].Position).Meters, 1e-12);
        Near.Absolute(
            0,
            Cents.Between(question.Target, solution.Column.FirstResonances(1)[0].Frequency),
            1e-6
        );
        var row = TrimTable
            .For(
                solution.Column,
                new TrimQuestion(0, Frequency.FromHertz(160)) { Step = Mm(1), HolesFromFarEnd = 1 }
            )
            .Rows[1];
        Near.Absolute(
            -solution.CentsPerMillimetre,
            Cents.Between(question.Target, row.Resonance),
            0.01 * Math.Abs(solution.CentsPerMillimetre)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SectionLength.Solve(column, new LengthQuestion(0, question.Target) { HolesFromFarEnd = 3 })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new LengthQuestion(0, question.Target) { HolesFromFarEnd = -1 }
        );
    }

    // A note so high that the section would have to be shorter than what lies between the holes.
    [Fact]
    public void Holes_never_meet()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(40), Mm(900))
            .Hole(Mm(300), Mm(8), Mm(4))
            .Hole(Mm(800), Mm(8), Mm(4))
            .OpenEnd(Mm(4));
        var column = new Column(bore, TableAir, new ColumnOptions { Fingering = Fingering.AllClosed });
        var solution = SectionLength.Solve(
            column,
            new LengthQuestion(0, Frequency.FromHertz(1000)) { HolesFromFarEnd = 1 }
        );
        Assert.Equal(SolveStatus.OutOfReach, solution.Status);
        Near.Absolute(900 - 492, solution.Length.Millimeters, 1e-6);
    }

    [Fact]
    public void Several_sections_are_stretched_in_proportion()
    {
        var target = Frequency.FromHertz(70);
        var solution = SectionLength.Solve(new Column(Tube, TableAir), new LengthQuestion([1, 2], target));
        Assert.True(solution.IsSolved, solution.Explanation);
        var sections = solution.Column.Bore.Sections;
        Near.Relative(700.0 / 160, sections[1].Length / sections[2].Length, 1e-12);
        Near.Relative(solution.Length.Meters, (sections[1].Length + sections[2].Length).Meters, 1e-12);
        Near.Absolute(0, Cents.Between(target, solution.Column.FirstResonances(1)[0].Frequency), 1e-6);
        Assert.StartsWith("With sections 2 and 3 together", solution.Explanation, StringComparison.Ordinal);
        // A millimetre more of both.
        var longer = SectionLength.Solve(
            new Column(Tube, TableAir),
            new LengthQuestion([1, 2], target * Cents.ToRatio(solution.CentsPerMillimetre))
        );
        Near.Absolute(1, (longer.Length - solution.Length).Millimeters, 0.002);
    }

    [Fact]
    public void An_answer_at_the_end_of_what_is_allowed_is_an_answer()
    {
        var column = new Column(Tube, TableAir);
        var first = column.FirstResonances(1)[0].Frequency;
        foreach (var nearly in new[] { 1 - 1e-12, 1, 1 + 1e-12 })
        {
            var question = new LengthQuestion(1, first * nearly);
            Assert.True(SectionLength.Solve(column, question with { Shortest = Mm(700) }).IsSolved);
            Assert.True(SectionLength.Solve(column, question with { Longest = Mm(700) }).IsSolved);
        }
    }

    [Fact]
    public void Bounds_are_kept_and_named()
    {
        var column = new Column(Tube, TableAir);
        var question = new LengthQuestion(1, Frequency.FromHertz(60))
        {
            Shortest = Mm(300),
            Longest = Mm(900),
        };
        var solution = SectionLength.Solve(column, question);
        Assert.Equal(SolveStatus.OutOfReach, solution.Status);
        Near.Absolute(900, solution.Length.Millimeters, 1e-9);
        Assert.Null(solution.Bracket);
        Assert.Contains("Even with section 2 900 mm long", solution.Explanation, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() =>
            SectionLength.Solve(column, question with { Longest = Mm(200) })
        );
        Assert.Throws<ArgumentException>(() => new LengthQuestion([1, 1], Frequency.FromHertz(60)));
        Assert.Throws<ArgumentException>(() => new LengthQuestion([], Frequency.FromHertz(60)));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SectionLength.Solve(column, new LengthQuestion(3, Frequency.FromHertz(60)))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => question with { Resonance = 0 });
    }
}
