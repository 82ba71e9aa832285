using System.Numerics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class BendTests
{
    // The acoustic mass of potential flow in a torus: v = K/r, so that the flow is K times the integral of dS/r over the
    // section and the mass per angle ρ/∫dS/r. By the midpoint rule, against that of a straight tube as long as the centreline.
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void Mass_is_that_of_potential_flow_in_a_torus(double tightness)
    {
        const int Steps = 2000;
        var integral = 0.0;
        for (var i = 0; i < Steps; i++)
        {
            // Strips of the unit circle at x = sin t, 2·cos t wide: smooth in t.
            var t = Math.PI * ((i + 0.5) / Steps - 0.5);
            integral += 2 * Math.Cos(t) * Math.Cos(t) / (1 / tightness + Math.Sin(t)) * Math.PI / Steps;
        }

        var bend = new BendSection(Mm(20), Mm(10 / tightness), Angle.FromDegrees(90));
        Near.Relative(Math.PI * tightness / integral, bend.InertiaFactor, 1e-9);
    }

    // Without losses a closed bend resonates as a straight tube of its length in which sound is faster by 1/√factor.
    [Fact]
    public void Resonances_rise_by_the_root_of_the_mass()
    {
        var bend = new BendSection(Mm(20), Mm(20), Angle.FromDegrees(360));
        var straight = new CylinderSection(Mm(20), bend.Length);
        var shift =
            Column(bend, new ClosedEnd(), Lossless).FirstResonances(1)[0].Frequency
            / Column(straight, new ClosedEnd(), Lossless).FirstResonances(1)[0].Frequency;
        Near.Relative(1 / Math.Sqrt((1 + Math.Sqrt(0.75)) / 2), shift, 1e-9);
    }

    [Fact]
    public void A_wide_bend_is_a_straight_tube()
    {
        var bend = new BendSection(Mm(20), Mm(1e5), Angle.FromDegrees(0.5));
        var straight = new CylinderSection(Mm(20), bend.Length);
        foreach (var hertz in new[] { 40.0, 333, 1200 })
        {
            var f = Frequency.FromHertz(hertz);
            Near.Relative(
                Column(straight, new OpenEnd(Mm(2))).ImpedanceAt(f),
                Column(bend, new OpenEnd(Mm(2))).ImpedanceAt(f),
                1e-6
            );
        }
    }

    // Cents by which the lowest wave in a torus lags behind the limit of low frequency: eigenvalues of the wave equation in
    // toroidal coordinates, Galerkin's method on the modes of a circle (80 of them, converged to the digits given). The
    // phase velocity falls with frequency, as felix2012 found.
    [Theory]
    [InlineData(0.2, 0.4, 1.65)]
    [InlineData(0.5, 0.2, 2.89)]
    [InlineData(0.5, 0.6, 25.81)]
    [InlineData(0.5, 1.0, 69.62)]
    [InlineData(0.7, 0.4, 26.84)]
    [InlineData(0.8, 0.6, 89.05)]
    public void Dispersion_in_a_bend_is_known_to_a_tenth(double tightness, double ka, double cents) =>
        Near.Relative(cents, OpeningWarnings.DispersionCents(tightness, ka), 0.1);

    [Fact]
    public void A_tight_bend_warns_at_high_frequency()
    {
        var column = Column(new BendSection(Mm(40), Mm(40), Angle.FromDegrees(180)), new ClosedEnd());
        Assert.Empty(column.Impedance(FrequencyGrid.Linear(20, 300, 3)).Warnings);
        Assert.Contains(
            "bends",
            Assert.Single(column.Impedance(FrequencyGrid.Linear(20, 2000, 3)).Warnings),
            StringComparison.Ordinal
        );
        Assert.True(Complex.IsFinite(column.ImpedanceAt(Frequency.FromHertz(2000))));
    }
}
