using AirColumn.Acoustics.Multimodal;

namespace AirColumn.Tests.Acoustics.Multimodal;

public class RadialBasisTests
{
    // Zeros of J₁ (DLMF 10.21, table): the rigid circular duct's radial modes.
    private static readonly double[] Zeros = [0, 3.8317059702, 7.0155866698, 10.1734681351, 13.3236919363];

    [Theory]
    [InlineData(4, 2, 1e-4)]
    [InlineData(6, 3, 1e-3)]
    [InlineData(10, 5, 1e-3)]
    [InlineData(12, 4, 1e-8)]
    public void Lower_modes_are_those_of_a_rigid_duct(int count, int good, double tolerance)
    {
        var basis = new RadialBasis(count);
        Assert.Equal(0, basis.Gamma[0]);
        for (var n = 1; n < good; n++)
        {
            Near.Relative(Zeros[n], basis.Gamma[n], tolerance, n);
        }
    }

    [Fact]
    public void Modes_are_orthogonal_and_their_products_exact()
    {
        var basis = new RadialBasis(7);
        var same = basis.Overlap(basis, 1);
        for (var m = 0; m < 7; m++)
        {
            for (var n = 0; n < 7; n++)
            {
                Near.Absolute(m == n ? 1 : 0, same[m * 7 + n], 1e-12, (m, n));
                // ∫(ξ²φₘφₙ)' dξ = φₘφₙ at the wall.
                Near.Absolute(
                    basis.AtWall[m] * basis.AtWall[n] - (m == n ? 1 : 0),
                    0.5 * (basis.Drift[m * 7 + n] + basis.Drift[n * 7 + m]),
                    1e-10 * (1 + Math.Abs(basis.AtWall[m] * basis.AtWall[n])),
                    (m, n)
                );
            }
        }
    }
}
