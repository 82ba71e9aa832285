using AirColumn.Acoustics.Radiation;
using AirColumn.Tables;

namespace AirColumn.Tests.Acoustics;

public class RadiationTests
{
    // radiation-unflanged.csv: the integrals of levine1948 to 16 digits, at other ka than the nodes of the interpolation.
    // Asked for is 1e-6.
    [Fact]
    public void Thin_free_edge_agrees_with_Levine_and_Schwinger() =>
        Agrees("radiation-unflanged.csv", ThinEnd.Unflanged, 1e-8);

    // radiation-flanged.csv: mode matching to about 1e-12 (norris1989), another method than that of our table, and at other ka.
    // 4e-8 is what the interpolation leaves between ka = 0 and the first node.
    [Fact]
    public void Baffled_end_agrees_with_mode_matching() =>
        Agrees("radiation-flanged.csv", ThinEnd.Baffled, 5e-8);

    // radiation-wall-thickness.csv: field solutions; each row gives its own error.
    [Fact]
    public void Rim_of_finite_width_agrees_with_field_solutions()
    {
        foreach (var row in ReferenceTable.Read("radiation-wall-thickness.csv").Rows)
        {
            var end = new RimmedEnd(row["b_over_a"]).At(row["ka"]);
            Near.Absolute(row["absR"], end.Modulus, row["err"] + 1e-8, row);
            Near.Absolute(row["l_over_a"], end.EndCorrection, row["err"] / row["ka"] + 1e-8, row);
        }
    }

    // A thin wall must lead continuously to no wall, and a very thick one towards the baffle.
    [Fact]
    public void Rim_tends_to_the_thin_edge()
    {
        foreach (var ka in new[] { 0.01, 0.1, 0.5, 1, 2 })
        {
            var thin = ThinEnd.Unflanged.At(ka);
            var rim = new RimmedEnd(1 + 1e-9).At(ka);
            Near.Absolute(thin.EndCorrection, rim.EndCorrection, 1e-5);
            Near.Absolute(thin.Modulus, rim.Modulus, 1e-8);
        }
    }

    [Theory]
    [InlineData(0.6127010359298052)] // levine1948's integral, evaluated to 20 digits
    public void Low_frequency_limit_of_the_thin_edge(double limit) =>
        Near.Absolute(limit, ThinEnd.Unflanged.At(1e-12).EndCorrection, 1e-12);

    [Fact]
    public void Relative_impedance_agrees_with_the_tabulated_one()
    {
        foreach (var row in ReferenceTable.Read("radiation-unflanged.csv").Rows)
        {
            var z = ThinEnd.Unflanged.At(row["ka"]).RelativeImpedance(row["ka"]);
            Near.Relative(row["Zr_over_Zc_im"], z.Imaginary, 1e-7, row);
            // The resistance apart: at low ka it is a millionth of the reactance. The table's own has 16 digits of R.
            Near.Relative(row["Zr_over_Zc_re"], z.Real, 2e-5, row);
        }
    }

    // Between the tabulated values, where the interpolation is on its own. The quadrature is checked against radiation-unflanged.csv.
    [Fact]
    public void Thin_free_edge_agrees_with_the_integrals_between_tabulated_values()
    {
        foreach (var ka in new[] { 0.1, 1, 2.5, 3.8 })
        {
            var row = ReferenceTable.Read("radiation-unflanged.csv").Rows.Single(r => r["ka"] == ka);
            Near.Absolute(row["absR"], Math.Exp(UnflangedEnd.LogReflection(ka)), 1e-12, ka);
            Near.Absolute(row["l_over_a"], UnflangedEnd.EndCorrection(ka), 2e-12, ka);
        }

        for (var ka = 0.037; ka < 3.8; ka += 0.0713)
        {
            var end = ThinEnd.Unflanged.At(ka);
            Near.Absolute(Math.Exp(UnflangedEnd.LogReflection(ka)), end.Modulus, 2e-8, ka);
            Near.Absolute(UnflangedEnd.EndCorrection(ka), end.EndCorrection, 2e-8, ka);
        }
    }

    // radiation-rims-between.csv: field solutions for rims that are not in the table. How far the interpolation is off grows with the
    // gap between the tabulated rims; it is said in docs/physics.md.
    [Theory]
    [InlineData(1.07, 5e-5)]
    [InlineData(1.25, 1e-4)]
    [InlineData(1.4, 5e-5)]
    [InlineData(1.7, 2.5e-4)]
    [InlineData(2.5, 5e-5)]
    public void Rims_between_the_tabulated_ones_agree_with_field_solutions(double rim, double allowed)
    {
        var rows = ReferenceTable
            .Read("radiation-rims-between.csv")
            .Rows.Where(row => row["b_over_a"] == rim)
            .ToList();
        Assert.Equal(4, rows.Count);
        foreach (var row in rows)
        {
            var end = new RimmedEnd(rim).At(row["ka"]);
            Near.Absolute(row["absR"], end.Modulus, allowed, row);
            Near.Absolute(row["l_over_a"], end.EndCorrection, allowed, row);
        }
    }

    // Between the tabulated rims: the published low-frequency fit of dalmont2001,
    // l/a = l_b + (a/b)(l_f − l_b) + 0.057(a/b)[1 − (a/b)⁵], from which the tabulated field solutions themselves lie up to
    // 0.0045 away.
    [Theory]
    [InlineData(1.01)]
    [InlineData(1.07)]
    [InlineData(1.25)]
    [InlineData(1.4)]
    [InlineData(1.7)]
    [InlineData(2.5)]
    public void Rims_between_the_tabulated_ones_follow_the_published_fit(double outerOverInner)
    {
        const double Ka = 0.02;
        var v = 1 / outerOverInner;
        var (free, baffled) = (ThinEnd.Unflanged.EndCorrection(Ka), ThinEnd.Baffled.EndCorrection(Ka));
        var fit = baffled + v * (free - baffled) + 0.057 * v * (1 - Math.Pow(v, 5));
        Near.Absolute(fit, new RimmedEnd(outerOverInner).At(Ka).EndCorrection, 0.005);
    }

    // Far below ka = 1 a free end radiates into all directions, a baffled one into half of them: r = (ka)²/4 and (ka)²/2
    // (levine1948; morse1948).
    [Theory]
    [InlineData(1e-3)]
    [InlineData(1e-6)]
    [InlineData(1e-9)]
    public void Resistance_at_low_frequency(double ka)
    {
        Near.Relative(ka * ka / 4, ThinEnd.Unflanged.At(ka).RelativeImpedance(ka).Real, 1e-5);
        Near.Relative(ka * ka / 4, new RimmedEnd(1.2).At(ka).RelativeImpedance(ka).Real, 1e-2);
        Near.Relative(ka * ka / 2, ThinEnd.Baffled.At(ka).RelativeImpedance(ka).Real, 1e-5);
    }

    private static void Agrees(string table, ThinEnd end, double tolerance)
    {
        foreach (var row in ReferenceTable.Read(table).Rows)
        {
            var actual = end.At(row["ka"]);
            Near.Absolute(row["absR"], actual.Modulus, tolerance, row);
            Near.Absolute(row["l_over_a"], actual.EndCorrection, tolerance, row);
        }
    }
}
