using System.Numerics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class RadiationModelTests
{
    public static TheoryData<string, string, double, double, double> Published =>
        new()
        {
            // Model, table of exact values, highest ka, and how far the model's documentation says it is off in |R| and l/a.
            { "Dalmont2001", "radiation-unflanged.csv", 1.5, 0.0055, 0.008 },
            { "Dalmont2001", "radiation-flanged.csv", 3, 0.01, 0.011 },
            { "Norris1989", "radiation-unflanged.csv", 3, 0.0055, 0.013 },
            { "Norris1989", "radiation-flanged.csv", 3, 0.01, 0.011 },
            { "Silva2009", "radiation-unflanged.csv", 3, 0.061, 0.034 },
            { "Silva2009", "radiation-flanged.csv", 3, 0.061, 0.034 },
            { "Causse1984", "radiation-unflanged.csv", 1.5, 0.003, 0.003 },
        };

    // The exact values of levine1948 and zorumski1973. Causse's is within 0.1 % only below ka = 0.5.
    [Theory]
    [MemberData(nameof(Published))]
    public void Published_fits_are_as_near_to_the_exact_values_as_is_said(
        string name,
        string table,
        double highest,
        double modulus,
        double correction
    )
    {
        var end = table == "radiation-flanged.csv" ? (BoreEnd)new BaffledEnd() : new OpenEnd(Mm(0));
        var model = Named(name).Of(end, 0.02);
        Assert.Equal(highest, model.HighestKa);
        var rows = ReferenceTable.Read(table).Rows.Where(row => row["ka"] <= highest).ToList();
        Assert.True(rows.Count > 20);
        foreach (var row in rows)
        {
            var reflection = model.At(row["ka"]);
            Near.Absolute(row["absR"], reflection.Modulus, modulus, row);
            Near.Absolute(row["l_over_a"], reflection.EndCorrection, correction, row);
        }
    }

    // radiation-wall-thickness.csv at kb up to 0.5: field solutions.
    [Fact]
    public void Published_rim_formula_holds_at_low_frequency()
    {
        foreach (var row in ReferenceTable.Read("radiation-wall-thickness.csv").Rows)
        {
            var model = RadiationModel.Dalmont2001.Of(new OpenEnd(Mm(20 * (row["b_over_a"] - 1))), 0.02);
            if (row["ka"] <= model.HighestKa)
            {
                Near.Absolute(row["l_over_a"], model.At(row["ka"]).EndCorrection, 0.012, row);
                Near.Absolute(row["absR"], model.At(row["ka"]).Modulus, 0.005, row);
            }
        }
    }

    [Fact]
    public void A_tube_with_a_published_fit_sounds_nearly_as_with_the_exact_end()
    {
        var bore = Bore.Build().Cylinder(Mm(40), Mm(1000)).OpenEnd();
        var exact = new Column(bore, TableAir).FirstResonances(4);
        foreach (var name in new[] { "Dalmont2001", "Norris1989", "Silva2009", "Causse1984" })
        {
            var options = new ColumnOptions { Radiation = Named(name) };
            var found = new Column(bore, TableAir, options).FirstResonances(4);
            for (var i = 0; i < 4; i++)
            {
                // 0.013 of 20 mm in 1 m is 0.45 cent.
                Near.Absolute(0, Cents.Between(exact[i].Frequency, found[i].Frequency), 0.5, name);
            }
        }
    }

    [Fact]
    public void A_model_without_a_formula_for_an_end_refuses_it()
    {
        var bore = Bore.Build().Cylinder(Mm(40), Mm(1000)).OpenEnd(Mm(3));
        var error = Assert.Throws<ArgumentException>(() =>
            new Column(bore, TableAir, new ColumnOptions { Radiation = RadiationModel.Silva2009 })
        );
        Assert.Contains("Silva and others 2009", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() =>
            Column(
                new CylinderSection(Mm(40), Mm(1000)),
                new BaffledEnd(),
                new ColumnOptions { Radiation = RadiationModel.Causse1984 }
            )
        );
        Assert.Throws<ArgumentNullException>(() => new ColumnOptions { Radiation = null! });
    }

    [Fact]
    public void A_model_answers_up_to_where_it_holds()
    {
        var options = new ColumnOptions { Radiation = RadiationModel.Causse1984 };
        var column = Column(new CylinderSection(Mm(40), Mm(300)), new OpenEnd(Mm(0)), options);
        Near.Relative(1.5 * 343.37 / (2 * Math.PI * 0.02), column.HighestFrequency.Hertz, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => column.ImpedanceAt(Frequency.FromHertz(4200)));
    }

    // The exact end given as an impedance is the exact end: same curve, same resonances.
    [Fact]
    public void An_impedance_given_is_used_as_it_is()
    {
        var tube = new CylinderSection(Mm(40), Mm(600));
        var exact = Column(tube, new BaffledEnd());
        var z0 = exact.CharacteristicImpedance;
        Complex Load(Frequency f)
        {
            var ka = 2 * Math.PI * f.Hertz * 0.02 / 343.37;
            return z0 * Radiation(ka);
        }

        var options = new ColumnOptions { Radiation = RadiationModel.Given(Load, exact.HighestFrequency) };
        var given = Column(tube, new ClosedEnd(), options);
        Near.Relative(
            exact.ImpedanceAt(Frequency.FromHertz(777)),
            given.ImpedanceAt(Frequency.FromHertz(777)),
            1e-12
        );
        foreach (var (a, b) in exact.FirstResonances(6).Zip(given.FirstResonances(6)))
        {
            Near.Relative(a.Frequency.Hertz, b.Frequency.Hertz, 1e-9);
            Near.Relative(a.QualityFactor, b.QualityFactor, 1e-6);
        }

        static Complex Radiation(double ka) =>
            AirColumn.Acoustics.Radiation.ThinEnd.Baffled.At(ka).RelativeImpedance(ka);
    }

    // A tube that ends in its own characteristic impedance has no echo.
    [Fact]
    public void A_matched_load_makes_a_lossless_tube_endless()
    {
        var z0 = 1.2045 * 343.37 / (Math.PI * 4e-4);
        var options = new ColumnOptions
        {
            Losses = WallLosses.None,
            Radiation = RadiationModel.Given(_ => z0),
        };
        var column = Column(new CylinderSection(Mm(40), Mm(600)), new OpenEnd(Mm(0)), options);
        Near.Relative(z0, column.ImpedanceAt(Frequency.FromHertz(321)), 1e-12);
    }

    [Theory]
    [InlineData(-1e5, 0)]
    [InlineData(double.NaN, 0)]
    [InlineData(0, double.PositiveInfinity)]
    public void An_impossible_impedance_is_named(double real, double imaginary)
    {
        var options = new ColumnOptions
        {
            Radiation = RadiationModel.Given(_ => new Complex(real, imaginary)),
        };
        var column = Column(new CylinderSection(Mm(40), Mm(600)), new OpenEnd(Mm(0)), options);
        var error = Assert.Throws<InvalidOperationException>(() =>
            column.ImpedanceAt(Frequency.FromHertz(321))
        );
        Assert.Contains("321 Hz", error.Message, StringComparison.Ordinal);
    }

    private static RadiationModel Named(string name) =>
        (RadiationModel)typeof(RadiationModel).GetProperty(name)!.GetValue(null)!;
}
