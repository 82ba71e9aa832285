using System.Numerics;
using AirColumn.Acoustics.Multimodal;
using AirColumn.Acoustics.Radiation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Tests.Acoustics.Multimodal;

/// <summary>
/// The field of a mouth by itself, before the plane mode is corrected by the tables of plane-wave theory: of a straight pipe it has to find
/// what those hold.
/// </summary>
public class MouthFieldTests
{
    // radiation-flanged.csv, exact mode matching: R = −|R|·exp(−2j·ka·l/a).
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(6)]
    public void Baffle(int modes)
    {
        foreach (var row in ReferenceTable.Read("radiation-flanged.csv").Rows)
        {
            Compare(row, new MouthField(double.PositiveInfinity), modes, 3e-4);
        }
    }

    // radiation-wall-thickness.csv, finite elements.
    [Theory]
    [InlineData(1, 1.02)]
    [InlineData(4, 1.05)]
    [InlineData(4, 1.2)]
    [InlineData(4, 2.0)]
    [InlineData(6, 3.0)]
    public void Rim(int modes, double outer)
    {
        var field = new MouthField(outer);
        var rows = ReferenceTable
            .Read("radiation-wall-thickness.csv")
            .Rows.Where(row => row["b_over_a"] == outer)
            .ToList();
        Assert.NotEmpty(rows);
        foreach (var row in rows)
        {
            Compare(row, field, modes, 6e-4);
        }
    }

    // levine1948: l/a = 0.612701 at ka = 0 (radiation-unflanged.csv). The rim's share falls as the 2/3 power of its width, and as the width
    // itself, some 0.3 of it; the latter is left.
    [Fact]
    public void Thin_edge()
    {
        var (thin, thinner) = (Correction(1.01), Correction(1.005));
        var ratio = Math.Pow(2, 2.0 / 3);
        Near.Absolute(0.612701, (ratio * thinner - thin) / (ratio - 1), 3e-3);

        static double Correction(double outer)
        {
            var x = new MouthField(outer).At(new RadialBasis(1), Vector.Create(0.05))[0].At(0);
            return Math.PI * x.Real;
        }
    }

    // Where all pipes are straight, how many modes are carried does not matter.
    [Fact]
    public void Carried_or_not_modes_of_a_straight_pipe_meet_the_same_end()
    {
        var field = new MouthField(1.1);
        var one = PlaneImpedance(field, 1, 1.3);
        foreach (var modes in new[] { 2, 3, 5, 8, 12 })
        {
            Near.Relative(one, PlaneImpedance(field, modes, 1.3), 1e-9, modes);
        }
    }

    // A pipe whose outside is a cone's, the other way round from a flare: less room behind, so more mass.
    [Fact]
    public void Room_behind_the_mouth_takes_mass_away()
    {
        var tapering = OuterProfile.Of(
            Bore.Build()
                .Cone(ReferenceAir.Mm(40), ReferenceAir.Mm(90), ReferenceAir.Mm(120))
                .OpenEnd(ReferenceAir.Mm(3)),
            3.0 / 45
        );
        var (field, ka) = (new MouthField(1 + 3.0 / 45, tapering), Vector.Create(0.2));
        var basis = new RadialBasis(2);
        var change = MouthField.Of(basis, ka, field.Seen(ka, true))[0] - field.At(basis, ka)[0];
        Assert.True(change.At(0).Real < 0);
    }

    private static void Compare(ReferenceTable.Row row, MouthField field, int modes, double tolerance)
    {
        var ka = row["ka"];
        // Below, the space that is cut off a hundred radii away is felt.
        if (ka is < 0.05 or > 3.8)
        {
            return;
        }

        var z = PlaneImpedance(field, modes, ka);
        var expected = new EndReflection(Math.Log(row["absR"]), row["l_over_a"]).RelativeImpedance(ka);
        Near.Relative(expected, z, tolerance, $"ka = {ka}");
    }

    // What the plane wave of a straight pipe meets, over ρc/S: the higher modes go back into the pipe.
    private static Complex PlaneImpedance(MouthField field, int modes, double ka)
    {
        var basis = new RadialBasis(modes);
        var x = field.At(basis, Vector.Create(ka));
        var n = modes;
        var turned = new ComplexVector[n * n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                turned[(n - 1 - i) * n + n - 1 - j] = x[i * n + j];
            }

            if (i > 0)
            {
                var decay = Complex.Sqrt(basis.Gamma[i] * basis.Gamma[i] - ka * ka);
                turned[(n - 1 - i) * (n + 1)] += ComplexVector.All(1 / (Math.PI * decay));
            }
        }

        LaneSymmetric.Eliminate(turned, n, n - 1, new ComplexVector[n]);
        return new Complex(0, ka * Math.PI) * turned[n * n - 1].At(0);
    }
}
