using System.Numerics;
using AirColumn.Tests.Oracle;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics.Propagation;

/// <summary>Many frequencies at once against one at a time, a textbook version and 34-digit arithmetic.</summary>
public class CurveTests
{
    // By itself and in a curve; at the finest tolerance and at the default, which allows for ten sections.
    [Theory]
    [InlineData(1e-13, 4e-13)]
    [InlineData(1e-10, 1e-9)]
    public void Lossy_cones_agree_with_34_digits(double tolerance, double allowed)
    {
        foreach (var row in ReferenceTable.Read("cones-lossy-34-digits.csv").Rows)
        {
            var options = new ColumnOptions { RelativeTolerance = tolerance };
            var column = new Column(Cones(row.Text("bore")), TableAir, options);
            var expected = new Complex(row["re"], row["im"]);
            var hertz = row["frequency_hz"];
            Near.Relative(expected, column.ImpedanceAt(Frequency.FromHertz(hertz)), allowed, row);
            double[] dense = [.. Enumerable.Range(-1500, 3001).Select(i => hertz * (1 + i * 1e-4))];
            var (real, imaginary) = Curve(column, dense);
            Near.Relative(expected, new Complex(real[1500], imaginary[1500]), 10 * allowed, row);
        }
    }

    // Cylinders of one radius: no steps, whose air mass the textbook version leaves out. Its own 1 − F has lost four digits at a
    // radius of a millimetre.
    [Fact]
    public void Cylinders_agree_with_the_textbook_version()
    {
        var plain = new PlainColumn(343.37, 1.2045, 1.814e-5, 0.0258, 1006, 1.4019);
        foreach (var radius in new[] { 0.006, 0.02, 0.045 })
        {
            var lengths = Enumerable.Range(1, 12).Select(i => 0.01 * i).ToList();
            var column = new Column(
                new Bore(
                    lengths.Select(l => new CylinderSection(Metres(2 * radius), Metres(l))),
                    new ClosedEnd()
                ),
                TableAir
            );
            foreach (var hertz in new[] { 25.0, 91, 333, 1210, 1999 })
            {
                Near.Relative(
                    plain.ClosedImpedance(hertz, [.. lengths.Select(length => (radius, length))]),
                    column.ImpedanceAt(Frequency.FromHertz(hertz)),
                    1e-12,
                    $"{radius} m, {hertz} Hz"
                );
            }
        }
    }

    // Against the oracle, which takes other steps, other variables and other losses.
    [Draws(quick: 12, inLong: 150)]
    [Trait("Speed", "Slow")]
    public void Any_column_is_what_the_oracle_says(int seed)
    {
        var random = new Random(seed);
        var plain = RandomBore.From(seed, 2e-3, 0.05, 1);
        var options = new ColumnOptions
        {
            Losses = (WallLosses)random.Next(3),
            Wavefronts = (Wavefronts)random.Next(3),
            RelativeTolerance = 1e-13,
            BlownEnd = random.Next(3) switch
            {
                0 => BlownEnd.Open(Mm(5)),
                1 => BlownEnd.FreeOpen(Mm(2)),
                _ => BlownEnd.Closed,
            },
        };
        var bore = plain;
        if (random.Next(2) == 0)
        {
            (bore, var fingering) = RandomOpenings.From(seed, plain);
            // The oracle hears nothing outside; CoupledPathTests does.
            options = options with
            {
                Fingering = fingering,
                MutualRadiation = false,
            };
        }

        var column = new Column(bore, TableAir, options);
        var top = Math.Min(column.CutOnHertz, column.HighestHertz);
        var hertz = new double[24];
        for (var i = 0; i < hertz.Length; i++)
        {
            // Not in order, and some of them close together.
            hertz[i] =
                i % 3 == 2 ? hertz[i - 1] * 1.0001 : 1 + 0.98 * (top - 1) * Math.Pow(random.NextDouble(), 3);
        }

        var (real, imaginary) = Curve(column, hertz);
        // In rising order, and so many that a series is made.
        double[] rising =
        [
            .. hertz.Concat(Enumerable.Range(0, 2000).Select(i => 1 + 0.99 * (top - 1) * i / 2000)).Order(),
        ];
        var (risingReal, risingImaginary) = Curve(column, rising);
        for (var i = 0; i < hertz.Length; i++)
        {
            // Beside a sharp peak or zero the last digits of both count for more: the change over a relative step of 1e-11 in
            // frequency is allowed.
            var expected = column.InputImpedance(2 * Math.PI * hertz[i]);
            var beside = column.InputImpedance(2 * Math.PI * hertz[i] * (1 + 1e-11));
            var allowed = 3e-11 * Complex.Abs(expected) + 5 * Complex.Abs(beside - expected);
            Near.Absolute(
                0,
                Complex.Abs(new Complex(real[i], imaginary[i]) - expected) / allowed,
                1,
                $"seed {seed}, {hertz[i]} Hz: {expected}"
            );
            var place = Array.BinarySearch(rising, hertz[i]);
            Near.Absolute(
                0,
                Complex.Abs(new Complex(risingReal[place], risingImaginary[place]) - expected) / allowed,
                1,
                $"seed {seed}, {hertz[i]} Hz among many: {expected}"
            );
        }
    }

    // 1,000 Np and more: growth is taken out of the state as it goes.
    [Theory]
    [InlineData("cones with steps between them", 900, 1000)]
    [InlineData("long thin branch", 1, 60)]
    public void What_attenuates_strongly_is_as_good_in_a_curve(string name, double from, double to)
    {
        var builder = Bore.Build();
        if (name == "long thin branch")
        {
            var branch = Bore.Build()
                .Cylinder(Mm(0.2), Metres(1))
                .Cylinder(Mm(0.21), Metres(1))
                .Cylinder(Mm(0.2), Metres(1))
                .Cylinder(Mm(0.21), Metres(1));
            builder = builder.Cone(Mm(10), Mm(12), Metres(1)).Branch(Mm(500), branch.ClosedEnd());
        }
        else
        {
            for (var i = 0; i < 300; i++)
            {
                builder = builder.Cone(Mm(0.2), Mm(0.21), Metres(0.2));
            }
        }

        var column = new Column(
            builder.OpenEnd(),
            TableAir,
            OneDimensional with
            {
                RelativeTolerance = 1e-13,
            }
        );
        var hertz = FrequencyGrid.Linear(from, to, 300).Hertz.ToArray();
        var (real, imaginary) = Curve(column, hertz);
        for (var i = 0; i < hertz.Length; i += 29)
        {
            var expected = column.InputImpedance(2 * Math.PI * hertz[i]);
            Near.Relative(expected, new Complex(real[i], imaginary[i]), 1e-10, $"{name}, {hertz[i]} Hz");
        }
    }

    // Whole vectors, part of one, part of two, one point, in place.
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(16)]
    [InlineData(23)]
    [InlineData(400)]
    public void Every_count_gives_what_single_frequencies_give(int count)
    {
        var column = new Column(Cones("widening"), TableAir);
        var hertz = Enumerable.Range(0, count).Select(i => 300 + 0.11 * i).ToArray();
        var single = Array.ConvertAll(hertz, f => column.ImpedanceAt(Frequency.FromHertz(f)));
        var imaginary = new double[count];
        column.Impedance(hertz, hertz, imaginary);
        for (var i = 0; i < count; i++)
        {
            Near.Relative(single[i], new Complex(hertz[i], imaginary[i]), 1e-9, i);
        }
    }

    [Fact]
    public void Nothing_is_allocated_once_the_series_are_there()
    {
        var column = new Column(
            Bore.Build()
                .Cylinder(Mm(31), Mm(30))
                .Cylinder(Mm(50), Mm(980))
                .Cone(Mm(75), Mm(120))
                .OpenEnd(Mm(3)),
            TableAir
        );
        var hertz = FrequencyGrid.Linear(20, 2000, 500).Hertz.ToArray();
        var (real, imaginary) = (new double[500], new double[500]);
        column.Impedance(hertz, real, imaginary);
        column.ImpedanceAt(Frequency.FromHertz(100));
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 20; i++)
        {
            column.Impedance(hertz, real, imaginary);
            _ = column.ImpedanceAt(Frequency.FromHertz(100));
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    [Trait("Speed", "Slow")]
    public void Threads_that_share_a_column_get_what_one_gets()
    {
        var hertz = FrequencyGrid.Linear(20, 2000, 1000).Hertz.ToArray();
        var alone = Curve(new Column(Cones("wavy"), TableAir), hertz);
        var shared = new Column(Cones("wavy"), TableAir);
        var curves = new (double[], double[])[8];
        Parallel.For(0, curves.Length, i => curves[i] = Curve(shared, hertz));
        Assert.All(
            curves,
            curve =>
            {
                Assert.Equal(alone.Real, curve.Item1);
                Assert.Equal(alone.Imaginary, curve.Item2);
            }
        );
    }

    private static (double[] Real, double[] Imaginary) Curve(Column column, double[] hertz)
    {
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        column.Impedance(hertz, real, imaginary);
        return (real, imaginary);
    }

    private static Bore Cones(string name)
    {
        var diameters = Enumerable
            .Range(0, 11)
            .Select(i =>
                name switch
                {
                    "widening" => 30 + 3.0 * i,
                    "narrow" => 2 + 0.1 * i,
                    _ => i % 2 == 0 ? 30 : 33,
                }
            )
            .ToList();
        return new Bore(
            diameters.Zip(diameters.Skip(1), (a, b) => new ConeSection(Mm(a), Mm(b), Mm(130))),
            new ClosedEnd()
        );
    }
}
