using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>Closed-form resonances of textbooks, ideal open ends and no losses.</summary>
public class HandbookTests
{
    private const double C = 343.37;

    // Truncated cone closed at the narrow end: tan kL = −k·x0, f2/f1 against B = r_small/r_large (fletcher1998, §8.5,
    // whose table gives four decimals).
    [Theory]
    [InlineData(0.1, 2.0157)]
    [InlineData(0.2, 2.0829)]
    [InlineData(0.3, 2.1846)]
    [InlineData(0.4, 2.3009)]
    [InlineData(0.5, 2.4218)]
    [InlineData(0.6, 2.5426)]
    [InlineData(0.8, 2.7775)]
    [InlineData(1.0, 3.0)]
    public void Second_to_first_resonance_of_a_truncated_cone(double ratio, double expected)
    {
        var cone = new ConeSection(Mm(60 * ratio), Mm(60), Mm(1000));
        var found = Column(cone, new IdealOpenEnd(), Lossless).FirstResonances(2);
        Near.Absolute(expected, found[1].Frequency / found[0].Frequency, 0.5e-4);
    }

    // Two joined cylinders, continuous pressure and flow: tan kL1·tan kL2 = S2/S1, 1 at the closed end (morse1948). The
    // engine adds the mass of the step, so the equation is solved with it: with m = ωM·S2/ρc,
    // tan kL1·(tan kL2 + m) = S2/S1.
    [Fact]
    public void Two_joined_cylinders()
    {
        var (r1, r2, l1, l2) = (0.014, 0.020, 0.31, 0.87);
        var bore = Bore.Build()
            .Cylinder(Metres(2 * r1), Metres(l1))
            .Cylinder(Metres(2 * r2), Metres(l2))
            .IdealOpenEnd();
        // step-inertance.csv at α = 0.7: l/a1 = 0.132350830, of which 0.0862538 belong to the first radial mode (mode matching,
        // computed apart) and grow as 1/√(1 − (ka₂/3.8317)²).
        double MassLength(double k)
        {
            var share = k * r2 / 3.8317059702075123;
            var ratio = 0.132350830 + 0.0862538 * (1 / Math.Sqrt(1 - share * share) - 1);
            return ratio * r1 * (r2 / r1) * (r2 / r1);
        }

        foreach (var resonance in new Column(bore, TableAir, Lossless).FirstResonances(6))
        {
            var k = 2 * Math.PI * resonance.Frequency.Hertz / C;
            var product = Math.Tan(k * l1) * (Math.Tan(k * l2) + k * MassLength(k));
            // The step's mass is interpolated to 3e-7 of a₁, a few parts in a million of it, and is a hundredth of the whole.
            Near.Relative(r2 * r2 / (r1 * r1), product, 5e-8);
        }
    }

    [Fact]
    public void Ideal_tube_sounds_odd_quarter_waves_closed_and_even_ones_open()
    {
        var tube = new CylinderSection(Mm(30), Mm(600));
        var closed = Column(tube, new IdealOpenEnd(), Lossless).FirstResonances(5);
        var open = Column(
                tube,
                new IdealOpenEnd(),
                new ColumnOptions { Losses = WallLosses.None, BlownEnd = BlownEnd.Open(Length.Zero) }
            )
            .FirstResonances(5);
        var stopped = Column(
                tube,
                new ClosedEnd(),
                new ColumnOptions { Losses = WallLosses.None, BlownEnd = BlownEnd.Open(Mm(12)) }
            )
            .FirstResonances(5);
        var shut = Column(tube, new ClosedEnd(), Lossless).FirstResonances(5);
        for (var n = 1; n <= 5; n++)
        {
            Near.Relative((2 * n - 1) * C / (4 * 0.6), closed[n - 1].Frequency.Hertz, 1e-12);
            Near.Relative(n * C / (2 * 0.6), open[n - 1].Frequency.Hertz, 1e-12);
            Near.Relative(n * C / (2 * 0.6), shut[n - 1].Frequency.Hertz, 1e-12);
            // cot kL = k·correction at an open blown end above a stop.
            var k = 2 * Math.PI * stopped[n - 1].Frequency.Hertz / C;
            Near.Absolute(0, Math.Cos(k * 0.6) - k * 0.012 * Math.Sin(k * 0.6), 1e-10);
        }
    }

    // Kirchhoff's wide-tube law in 20 °C air, cgs: c' = c[1 − 0.162/(r√f)] and attenuation 2.964e-5·√f/r per cm
    // (handbook formula, from memory; three digits).
    [Fact]
    public void Wide_tube_slows_and_damps_as_Kirchhoff_says()
    {
        const double radius = 0.02;
        var tube = new CylinderSection(Metres(2 * radius), Mm(1000));
        foreach (var resonance in Column(tube, new IdealOpenEnd()).FirstResonances(6))
        {
            var n = (int)Math.Round(resonance.Frequency.Hertz * 4 / C);
            var f = resonance.Pole.Real;
            var slowed = C * (1 - 0.162 / (100 * radius * Math.Sqrt(f)));
            Near.Relative(n * slowed / 4, f, 3e-4);
            // Q = π·f/(α·c').
            var alpha = 100 * 2.964e-5 * Math.Sqrt(f) / (100 * radius);
            Near.Relative(Math.PI * f / (alpha * slowed), resonance.QualityFactor, 0.02);
        }
    }
}
