using System.Numerics;

namespace AirColumn.Tests.Acoustics;

/// <summary>
/// Openings that hear each other, against finite elements in three dimensions, without losses: two-holes-field.csv and
/// hole-near-end-field.csv (made by the scripts in benchmarks/AirColumn.Accuracy/FieldSolutions). Nothing of what they hear was fitted to them.
/// </summary>
public class TwoHolesFieldTests
{
    // The error of a single hole is among it: 1 % of its shunt counts for up to 5.5 cents.
    [Theory]
    [InlineData(0, 0.031, 0.4)]
    [InlineData(0.031, 0.11, 1.5)]
    [InlineData(0.11, 0.21, 4.5)]
    [InlineData(0.21, 0.36, 11)]
    public void A_pair_reflects_as_the_field_does(double aboveKa, double toKa, double cents)
    {
        foreach (var (row, even, odd) in Pairs(aboveKa, toKa))
        {
            var ours = TwoHolesOfColumn.Pair(row, true, even);
            Near.Absolute(0, TwoHolesOfColumn.Cents(even, ours.Even), cents, row["spacing_over_a"]);
            Near.Absolute(0, TwoHolesOfColumn.Cents(odd, ours.Odd), cents, row["spacing_over_a"]);
            // What is sent away: half of it comes from hearing each other.
            Near.Absolute(1 - even.Magnitude, 1 - ours.Even.Magnitude, 0.001, row["spacing_over_a"]);
        }
    }

    [Fact]
    public void Without_it_low_notes_of_holes_in_phase_are_ten_times_as_far_off()
    {
        foreach (var (row, even, _) in Pairs(0, 0.11))
        {
            var with = TwoHolesOfColumn.Cents(even, TwoHolesOfColumn.Pair(row, true, even).Even);
            var without = TwoHolesOfColumn.Cents(even, TwoHolesOfColumn.Pair(row, false, even).Even);
            Assert.True(
                Math.Abs(with) < 0.1 * Math.Abs(without),
                $"{row["spacing_over_a"]}: {with}, {without} cents"
            );
        }
    }

    [Fact]
    public void A_hole_near_the_open_end_reflects_as_the_field_does()
    {
        foreach (var row in ReferenceTable.Read("hole-near-end-field.csv").Rows)
        {
            var field = new Complex(row["r_re"], row["r_im"]);
            var ours = TwoHolesOfColumn.NearEnd(row, true);
            Near.Absolute(0, TwoHolesOfColumn.Cents(field, ours), row["ka"] < 0.21 ? 0.4 : 8, row["ka"]);
            Near.Absolute(
                1 - field.Magnitude,
                1 - ours.Magnitude,
                row["ka"] < 0.21 ? 0.0005 : 0.01,
                row["ka"]
            );
        }
    }

    private static IEnumerable<(ReferenceTable.Row Row, Complex Even, Complex Odd)> Pairs(
        double above,
        double to
    ) => TwoHolesOfColumn.Pairs().Where(pair => pair.Row["ka"] > above && pair.Row["ka"] <= to);
}
