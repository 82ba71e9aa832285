using AirColumn.Acoustics.Radiation;
using AirColumn.Tables;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>Tubes blown by a jet: resonances are minima of |Z|.</summary>
public class BlownEndTests
{
    private const double C = 343.37;

    private static ResonanceList Minima(double diameter, double length, BoreEnd end, BlownEnd blown) =>
        Column(
                new CylinderSection(Mm(diameter), Mm(length)),
                end,
                new ColumnOptions { Losses = WallLosses.None, BlownEnd = blown }
            )
            .FirstResonances(6);

    // Open at both ends: f = c/2(L + d + l), the open tube of length L with its two end corrections (fletcher1998, ch. 8), the
    // far one l = 0.6127 a at low frequency (levine1948). A mass in place of a length d, the fall of l with ka and the
    // resistance of the open end are of relative order (kd)², (ka)² of the corrections.
    [Theory]
    [InlineData(18, 560, 9)]
    [InlineData(12, 300, 3.6)]
    public void Open_tube_with_a_mouth_correction(double diameter, double length, double correction)
    {
        var found = Minima(diameter, length, new OpenEnd(Mm(0)), BlownEnd.Open(Mm(correction)));
        var whole = (length + correction + 0.6127 * diameter / 2) / 1000;
        Near.Absolute(0, Cents.Between(Frequency.FromHertz(C / (2 * whole)), found[0].Frequency), 0.05);
    }

    // A pan pipe, stopped below, with the mass of a length d before it: cot kL = kd; close to the quarter wave of L + d.
    [Theory]
    [InlineData(9, 95, 3.6)]
    [InlineData(12, 180, 4.8)]
    public void Stopped_pipe_with_a_mouth_correction(double diameter, double length, double correction)
    {
        var found = Minima(diameter, length, new ClosedEnd(), BlownEnd.Open(Mm(correction)));
        var (l, d) = (length / 1000, correction / 1000);
        var k = Math.PI / 2 / (l + d);
        for (var i = 0; i < 50; i++)
        {
            k = Math.Atan2(1, k * d) / l;
        }

        Near.Relative(k * C / (2 * Math.PI), found[0].Frequency.Hertz, 1e-10);
        Near.Relative(C / (4 * (l + d)), found[0].Frequency.Hertz, 1e-4);
    }

    // Free at both ends: what is sent out returns reflected twice, R²·exp(−2jkL) = 1, so that f = n·c/2(L + 2l(ka)) with the
    // exact l of levine1948 at that frequency. The minimum of |Z| lies off it by the square of the damping per turn, (ka)⁴:
    // 0.015 cent at the sixth.
    [Fact]
    [Trait("Speed", "Slow")]
    public void Tube_free_at_both_ends()
    {
        const double A = 0.01;
        var found = Minima(20, 600, new OpenEnd(Mm(0)), BlownEnd.FreeOpen());
        for (var n = 1; n <= 6; n++)
        {
            var f = n * C / 1.2;
            for (var i = 0; i < 30; i++)
            {
                f = n * C / (2 * (0.6 + 2 * A * UnflangedEnd.EndCorrection(2 * Math.PI * f * A / C)));
            }

            Near.Absolute(0, Cents.Between(Frequency.FromHertz(f), found[n - 1].Frequency), 0.02, n);
        }
    }

    // Symmetric, so that the lowest mode radiates equally from both ends and loses twice what a tube closed at one end of half
    // its length loses in a turn: the quality factors agree.
    [Fact]
    public void Tube_free_at_both_ends_is_two_stopped_halves()
    {
        var whole = Minima(20, 600, new OpenEnd(Mm(0)), BlownEnd.FreeOpen());
        var half = Column(new CylinderSection(Mm(20), Mm(300)), new OpenEnd(Mm(0)), Lossless)
            .FirstResonances(3);
        for (var n = 0; n < 3; n++)
        {
            Near.Relative(half[n].Pole.Real, whole[2 * n].Pole.Real, 1e-9, n);
            Near.Relative(half[n].QualityFactor, whole[2 * n].QualityFactor, 1e-6, n);
        }
    }

    [Fact]
    public void A_free_blown_end_limits_and_describes_itself()
    {
        var free = BlownEnd.FreeOpen(Mm(2));
        Assert.True(free.IsOpen && free.IsFree);
        Assert.False(BlownEnd.Open(Mm(2)).IsFree);
        Assert.Equal(free, BlownEnd.FreeOpen(Mm(2)));
        Assert.Equal("free blown end (open end, wall 2 mm)", free.ToString());
        var options = new ColumnOptions { BlownEnd = free };
        var column = Column(new CylinderSection(Mm(20), Mm(300)), new ClosedEnd(), options);
        Near.Relative(RimmedEnd.HighestKa * C / (2 * Math.PI * 0.01), column.HighestFrequency.Hertz, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => BlownEnd.FreeOpen(Mm(-1)));
    }
}
