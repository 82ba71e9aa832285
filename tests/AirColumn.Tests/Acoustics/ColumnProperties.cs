using System.Numerics;
using AirColumn.Acoustics.Propagation;
using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class ColumnProperties
{
    private static readonly double[] Shares = [0.001, 0.03, 0.2, 0.6, 0.99];

    // Radii 0.5 mm to 100 mm, lengths 1 mm to 10 m, 1 Hz to the cut-on.
    [Property(MaxTest = 120)]
    [Trait("Speed", "Slow")]
    public void Any_column_is_finite_passive_and_reciprocal_up_to_the_cut_on(int seed)
    {
        var random = new Random(~seed);
        var options = new ColumnOptions
        {
            Losses = (WallLosses)random.Next(2),
            Wavefronts = (Wavefronts)random.Next(3),
        };
        var column = new Column(RandomBore.From(seed, longest: 10), TableAir, options);
        var top = Math.Min(column.CutOnHertz, column.HighestHertz);
        foreach (var share in Shares)
        {
            var f = Frequency.FromHertz(1 + share * (top - 1));
            var z = column.ImpedanceAt(f);
            Assert.True(Complex.IsFinite(z), $"seed {seed}, {f}");
            // Without losses Re Z may be the rounding of a zero: a closed end returns everything.
            var rounding = options.Losses == WallLosses.None ? 1e-9 * Complex.Abs(z) : 0;
            Assert.True(z.Real >= -rounding, $"seed {seed}, {f}: Z = {z}");
            Assert.True(Complex.Abs(column.ReflectionAt(f)) <= 1 + 1e-11, $"seed {seed}, {f}");
            // Where it attenuates so strongly that doubles do not hold the two-port, there is none.
            var (a, b, c, d) = TwoPort.Of(column.Model, 2 * Math.PI * f.Hertz);
            if (Complex.IsFinite(a * d))
            {
                var scale = Math.Max(1, Complex.Abs(a * d));
                Near.Absolute(0, Complex.Abs(a * d - b * c - 1) / scale, 1e-10, seed);
            }
        }
    }

    [Property(MaxTest = 200)]
    public void Steep_short_cones_are_passive_down_to_the_lowest_frequency(int seed)
    {
        var random = new Random(seed);
        var cone = new ConeSection(Diameter(), Diameter(), Metres(1e-5 * Math.Pow(1e5, random.NextDouble())));
        var z = Column(cone, new ClosedEnd())
            .AnswerAt(2 * Math.PI * 1e-3 * Math.Pow(1e5, random.NextDouble()));
        Assert.True(Complex.IsFinite(z) && z.Real >= 0, $"seed {seed}: {cone}: Z = {z}");

        Length Diameter() => Metres(1e-4 * Math.Pow(1e3, random.NextDouble()));
    }

    [Property(MaxTest = 200)]
    public void Two_port_is_reciprocal(int seed)
    {
        var column = new Column(
            RandomBore.From(seed, 3e-3),
            TableAir,
            OneDimensional with
            {
                RelativeTolerance = 1e-13,
            }
        );
        var m = column.TransferMatrixAt(
            Frequency.FromHertz(0.5 * Math.Min(column.CutOnHertz, column.HighestHertz))
        );
        // The determinant is a difference of products: its rounding is relative to them.
        var scale = Math.Max(1, Complex.Abs(m.A * m.D));
        Near.Absolute(0, Complex.Abs(m.Determinant - 1) / scale, 1e-11, seed);
    }

    [Property(MaxTest = 100)]
    public void Splitting_a_section_changes_nothing(int seed)
    {
        var random = new Random(seed);
        var (d1, d2) = (5 + 60 * random.NextDouble(), 5 + 60 * random.NextDouble());
        var (length, share) = (20 + 1500 * random.NextDouble(), 0.05 + 0.9 * random.NextDouble());
        var middle = d1 + share * (d2 - d1);
        var whole = Bore.Build().Cone(Mm(d1), Mm(d2), Mm(length)).OpenEnd(Mm(2));
        var parts = Bore.Build()
            .Cone(Mm(d1), Mm(middle), Mm(share * length))
            .Cone(Mm(d2), Mm((1 - share) * length))
            .OpenEnd(Mm(2));
        foreach (var hertz in new[] { 30.0, 217, 1000, 1900 })
        {
            // Lossy cones to the column's tolerance, 1e-10, times the sharpness of a resonance.
            var f = Frequency.FromHertz(hertz);
            Near.Relative(
                new Column(whole, TableAir, OneDimensional).ImpedanceAt(f),
                new Column(parts, TableAir, OneDimensional).ImpedanceAt(f),
                2e-8
            );
        }
    }

    [Property(MaxTest = 60)]
    public void Without_losses_scaling_all_lengths_divides_all_frequencies(int seed)
    {
        var scale = 0.25 + 4 * new Random(seed).NextDouble();
        var small = RandomBore.From(seed, 5e-3, 0.03, 0.7);
        var sections = small.Sections.Select(section => Scaled(section, scale));
        BoreEnd end = small.FarEnd is OpenEnd open ? new OpenEnd(open.Wall * scale) : small.FarEnd;
        var before = new Column(small, TableAir, Lossless).FirstResonances(4);
        var after = new Column(new Bore(sections, end), TableAir, Lossless).FirstResonances(4);

        Assert.Equal(before.Count, after.Count);
        foreach (var (a, b) in before.Zip(after))
        {
            Near.Relative(a.Frequency.Hertz, b.Frequency.Hertz * scale, 1e-8, seed);
        }
    }

    [Property(MaxTest = 60)]
    public void A_longer_cylinder_never_raises_the_first_resonance(int seed)
    {
        var random = new Random(seed);
        var bore = Bore.Build()
            .Cylinder(Mm(20 + 20 * random.NextDouble()), Mm(20 + 50 * random.NextDouble()))
            .Cylinder(Mm(25 + 30 * random.NextDouble()), Mm(200 + 1200 * random.NextDouble()))
            .Cone(Mm(30 + 40 * random.NextDouble()), Mm(30 + 100 * random.NextDouble()))
            .OpenEnd(Mm(3));
        var longer = bore.WithSectionLength(1, bore.Sections[1].Length + Mm(0.1 + 50 * random.NextDouble()));
        var before = new Column(bore, TableAir).FirstResonances(1)[0].Frequency;
        var after = new Column(longer, TableAir).FirstResonances(1)[0].Frequency;
        Assert.True(after < before, $"seed {seed}");
    }

    [Fact]
    public void Warm_air_raises_every_resonance_as_the_speed_of_sound_does()
    {
        var bore = Bore.Build().Cylinder(Mm(38), Mm(1200)).OpenEnd(Mm(3));
        var cold = Air.At(Temperature.FromDegreesCelsius(15), RelativeHumidity.FromPercent(50));
        var warm = Air.At(Temperature.FromDegreesCelsius(25), RelativeHumidity.FromPercent(50));
        var ratio = warm.SpeedOfSound / cold.SpeedOfSound;
        foreach (
            var (a, b) in new Column(bore, cold)
                .FirstResonances(4)
                .Zip(new Column(bore, warm).FirstResonances(4))
        )
        {
            // Wall losses change a little too.
            Near.Relative(ratio, b.Frequency / a.Frequency, 3e-4);
        }
    }

    private static Section Scaled(Section section, double scale) =>
        section switch
        {
            CylinderSection c => new CylinderSection(c.Diameter * scale, c.Length * scale),
            ConeSection c => new ConeSection(
                c.InletDiameter * scale,
                c.OutletDiameter * scale,
                c.Length * scale
            ),
            HornSection h => new HornSection(
                h.Law,
                h.InletDiameter * scale,
                h.OutletDiameter * scale,
                h.Length * scale
            ),
            ProfileSection p => new ProfileSection(
                [
                    .. p.Points.Select(point => new ProfilePoint(
                        point.Position * scale,
                        point.Diameter * scale
                    )),
                ],
                p.Join
            ),
            _ => throw new InvalidOperationException(section.ToString()),
        };
}
