using System.Numerics;
using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class InsideColumnTests
{
    private const double Density = 1.2045;
    private const double SpeedOfSound = 343.37;

    // Closed form without losses (fletcher1998, ch. 8): driven by a flow of 1 at x = 0, with p = 0 at L,
    // U = cos k(L − x)/cos kL and p = jZ₀·sin k(L − x)/cos kL.
    [Fact]
    public void Tube_driven_at_a_closed_end_follows_the_closed_form()
    {
        var column = Column(new CylinderSection(Mm(30), Mm(800)), new IdealOpenEnd(), Lossless);
        var f = Frequency.FromHertz(523);
        var k = 2 * Math.PI * 523 / SpeedOfSound;
        var z0 = Density * SpeedOfSound / (Math.PI * 0.015 * 0.015);
        var wave = column.StandingWaveAt(f, 41);
        for (var i = 0; i < wave.Count; i++)
        {
            var rest = k * (0.8 - wave.Metres[i]);
            Near.Absolute(Math.Cos(rest) / Math.Cos(k * 0.8), wave.Flow[i].Real, 1e-11, i);
            Near.Absolute(z0 * Math.Sin(rest) / Math.Cos(k * 0.8), wave.Pressure[i].Imaginary, 1e-11 * z0, i);
        }
    }

    // An open blown end: 1 Pa outside its correction of length d, U = j·sin k(L − x)…/…: the tube closed at L and d longer
    // in mass, p(x) = cos k(L − x)/(cos kL − kd·sin kL).
    [Fact]
    public void Tube_driven_by_a_jet_starts_from_the_pressure_outside_its_correction()
    {
        var options = new ColumnOptions { Losses = WallLosses.None, BlownEnd = BlownEnd.Open(Mm(9)) };
        var column = Column(new CylinderSection(Mm(18), Mm(300)), new ClosedEnd(), options);
        var k = 2 * Math.PI * 250 / SpeedOfSound;
        var wave = column.StandingWaveAt(Frequency.FromHertz(250), [Mm(0), Mm(120), Mm(300)]);
        for (var i = 0; i < 3; i++)
        {
            var expected =
                Math.Cos(k * (0.3 - wave.Metres[i])) / (Math.Cos(k * 0.3) - k * 0.009 * Math.Sin(k * 0.3));
            Near.Relative(expected, wave.Pressure[i], 1e-11, i);
        }
    }

    // Without losses a cone's pressure is that of spherical waves, (A·e^(−jkr) + B·e^(jkr))/r (morse1948): closed where it is
    // narrow, r·p is a sinusoid of kr, here with cos and sin fixed by no flow at the far, closed end.
    [Fact]
    public void Cone_carries_spherical_waves()
    {
        var options = new ColumnOptions { Losses = WallLosses.None, Wavefronts = Wavefronts.Plane };
        var column = Column(new ConeSection(Mm(20), Mm(60), Mm(500)), new ClosedEnd(), options);
        const double Apex = 0.25;
        var k = 2 * Math.PI * 700 / SpeedOfSound;
        var wave = column.StandingWaveAt(Frequency.FromHertz(700), 21);
        // d(p)/dr = 0 at r₁ = 0.75: r·p = cos k(r₁ − r) − sin k(r₁ − r)/(k·r₁).
        double Shape(double x)
        {
            var rest = k * (0.5 - x);
            return (Math.Cos(rest) - Math.Sin(rest) / (k * 0.75)) / (Apex + x);
        }

        for (var i = 0; i < wave.Count; i++)
        {
            Near.Absolute(
                Shape(wave.Metres[i]) / Shape(0.5),
                (wave.Pressure[i] / wave.Pressure[20]).Real,
                1e-9,
                i
            );
        }
    }

    [Fact]
    public void Field_meets_the_input_impedance_and_the_two_port()
    {
        var options = OneDimensional with { RelativeTolerance = 1e-13 };
        var column = new Column(RandomBore.From(11, 3e-3), TableAir, options);
        var f = Frequency.FromHertz(0.3 * Math.Min(column.CutOnHertz, column.HighestHertz));
        var wave = column.StandingWaveAt(f, 2);
        var transfer = column.TransferAt(f);
        Near.Relative(column.ImpedanceAt(f), wave.Pressure[0], 1e-11);
        Near.Relative(Complex.One, wave.Flow[0], 1e-12);
        Near.Relative(wave.Pressure[1] / wave.Pressure[0], transfer.PressureRatio, 1e-11);
        Near.Relative(wave.Flow[1], transfer.FlowRatio, 1e-11);
        Near.Relative(wave.Pressure[1], transfer.Impedance, 1e-11);
    }

    [Fact]
    public void Flow_is_continuous_over_a_step_and_pressure_jumps_by_the_mass_there()
    {
        var bore = Bore.Build().Cylinder(Mm(20), Mm(200)).Cylinder(Mm(40), Mm(300)).BaffledEnd();
        var column = new Column(bore, TableAir);
        var wave = column.StandingWaveAt(Frequency.FromHertz(400), [Mm(199.9999), Mm(200)]);
        Near.Relative(wave.Flow[0], wave.Flow[1], 1e-5);
        var jump = (wave.Pressure[0] - wave.Pressure[1]) / wave.Flow[1];
        // kergomard1987 with a ratio of radii of 1/2: l = 0.298 of the smaller radius; the rest is 0.1 µm of bore.
        Near.Relative(2 * Math.PI * 400 * 1.2045 * 0.298 / (Math.PI * 0.01), jump.Imaginary, 2e-3);
    }

    // Radii, lengths and frequencies over the whole range of the library. Each part is found by itself; that they add up to
    // 1e-10 of the input is the conservation of energy. Where the column stores far more than it passes on, rounding of
    // pressure and flow (1e-15 each, over some tens of steps) counts against the small real part: allowed is 1e-13 of |p·U|.
    [Property(MaxTest = 300)]
    [Trait("Speed", "Slow")]
    public void Power_lost_to_the_walls_and_radiated_is_the_power_sent_in(int seed)
    {
        var random = new Random(~seed);
        var options = new ColumnOptions
        {
            RelativeTolerance = 1e-13,
            Wavefronts = (Wavefronts)random.Next(3),
        };
        var column = new Column(RandomBore.From(seed), TableAir, options);
        var top = Math.Min(column.CutOnHertz, column.HighestHertz);
        var f = Frequency.FromHertz(1 + Math.Pow(random.NextDouble(), 2) * (Math.Min(top, 5000) - 1));
        var power = column.PowerAt(f);
        var stored = 0.5 * column.ImpedanceAt(f).Magnitude;
        Assert.True(power.Radiated >= 0 && power.Viscous > 0 && power.Thermal > 0, $"seed {seed}: {power}");
        Near.Absolute(0, power.Imbalance, 1e-10 + 1e-13 * stored / power.Input, $"seed {seed} {power}");
    }

    // An ordinary drone tube, a cone and a bell at the default tolerance: 1e-10, without any allowance.
    [Theory]
    [InlineData(30)]
    [InlineData(65.4)]
    [InlineData(131)]
    [InlineData(440)]
    [InlineData(1700)]
    public void Power_adds_up_in_ordinary_bores(double hertz)
    {
        Bore[] bores =
        [
            Bore.Build()
                .Cylinder(Mm(30), Mm(25))
                .Cylinder(Mm(38), Mm(1240))
                .Cone(Mm(70), Mm(90))
                .OpenEnd(Mm(3)),
            Bore.Build().Cone(Mm(12), Mm(40), Mm(700)).OpenEnd(),
            Bore.Build()
                .Cylinder(Mm(12), Mm(900))
                .Horn(HornLaw.Exponential, Mm(12), Mm(110), Mm(400))
                .BaffledEnd(),
        ];
        foreach (var bore in bores)
        {
            var power = new Column(bore, TableAir).PowerAt(Frequency.FromHertz(hertz));
            Near.Absolute(0, power.Imbalance, 1e-10, power);
            Assert.InRange(power.Efficiency, 1e-9, 1);
        }
    }

    // A small opening in a large plane radiates like a monopole into half a space: Re Z = ρω²/(2πc) (pierce1981, ch. 5).
    [Fact]
    public void A_small_opening_radiates_as_a_monopole()
    {
        var column = Column(new CylinderSection(Mm(20), Mm(600)), new BaffledEnd());
        var f = Frequency.FromHertz(130);
        var power = column.PowerAt(f);
        var flow = column.TransferAt(f).FlowRatio.Magnitude;
        var omega = 2 * Math.PI * 130;
        // The next term is of order (ka)² = 6e-4.
        Near.Relative(
            0.5 * flow * flow * Density * omega * omega / (2 * Math.PI * SpeedOfSound),
            power.Radiated,
            2e-3
        );
    }

    [Fact]
    public void Ends_that_do_not_radiate_and_walls_that_do_not_rub_take_nothing()
    {
        var closed = Column(new CylinderSection(Mm(20), Mm(600)), new ClosedEnd())
            .PowerAt(Frequency.FromHertz(100));
        Assert.Equal(0, closed.Radiated);
        Assert.Equal(0, closed.Efficiency);
        var smooth = Column(new ConeSection(Mm(20), Mm(40), Mm(600)), new BaffledEnd(), Lossless)
            .PowerAt(Frequency.FromHertz(100));
        Assert.Equal(0, smooth.Viscous + smooth.Thermal);
        Near.Relative(1, smooth.Efficiency, 1e-9);
    }

    [Fact]
    public void A_capillary_swallows_everything_without_overflow()
    {
        var column = Column(new CylinderSection(Mm(0.1), Mm(100_000)), new BaffledEnd());
        var wave = column.StandingWaveAt(Frequency.FromHertz(1000), 5);
        Assert.Equal(0, wave.Pressure[4].Magnitude);
        Assert.All(wave.Pressure.ToArray(), p => Assert.True(Complex.IsFinite(p)));
        Assert.Equal(0, column.TransferAt(Frequency.FromHertz(1000)).PressureRatio.Magnitude);
    }

    [Fact]
    public void Requests_outside_the_column_are_refused()
    {
        var column = Column(new CylinderSection(Mm(20), Mm(600)), new ClosedEnd());
        var f = Frequency.FromHertz(100);
        Assert.Throws<ArgumentOutOfRangeException>(() => column.StandingWaveAt(f, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => column.StandingWaveAt(f, [Mm(601)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => column.PowerAt(Frequency.FromHertz(1e6)));
        Assert.Throws<ArgumentOutOfRangeException>(() => column.TransferAt(Frequency.FromHertz(0)));
    }
}
