using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics;
using AirColumn.Acoustics.Kernels;
using AirColumn.Bores;
using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics.Kernels;

/// <summary>Many frequencies at once against one at a time, a textbook version and 34-digit arithmetic, at every width.</summary>
public class WaveKernelTests
{
    private delegate void Kernel(
        WaveBlock block,
        ReadOnlySpan<double> hertz,
        Span<double> real,
        Span<double> imaginary
    );

    private static readonly Dictionary<string, Kernel> Kernels = new()
    {
        ["512"] = WaveKernel512.Run,
        ["256"] = WaveKernel256.Run,
        ["128"] = WaveKernel128.Run,
        ["scalar"] = WaveKernelScalar.Run,
    };

    public static TheoryData<string> Widths => [.. Kernels.Keys];

    [Theory]
    [MemberData(nameof(Widths))]
    public void Lossy_cones_agree_with_34_digits(string width)
    {
        foreach (var row in ReferenceTable.Read("cones-lossy-34-digits.csv").Rows)
        {
            var column = new Column(Cones(row.Text("bore")), TableAir);
            var expected = new Complex(row["re"], row["im"]);
            Near.Relative(expected, At(column, row["frequency_hz"], width), 2e-13, row);
        }
    }

    // Cylinders of one radius: no steps, whose air mass the textbook version leaves out. Its own 1 − F has lost four digits at a
    // radius of a millimetre.
    [Theory]
    [MemberData(nameof(Widths))]
    public void Cylinders_agree_with_the_textbook_version(string width)
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
                    At(column, hertz, width),
                    1e-12,
                    $"{width}, {radius} m, {hertz} Hz"
                );
            }
        }
    }

    [Property(MaxTest = 150)]
    [Trait("Speed", "Slow")]
    public void Any_column_is_the_same_one_frequency_at_a_time(int seed)
    {
        var random = new Random(seed);
        var plain = RandomBore.From(seed, 2e-3, 0.05, 1);
        var options = new ColumnOptions
        {
            Losses = (WallLosses)random.Next(3),
            Wavefronts = (Wavefronts)random.Next(3),
            Tolerance = 1e-13,
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
            options = options with { Fingering = fingering };
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

        var (real, imaginary) = (new double[24], new double[24]);
        column.Impedance(hertz, real, imaginary);
        // In rising order, and so many that series are made where they span several bands.
        double[] rising = [.. hertz.Concat(hertz.Take(12).Select(f => f * 1.00003)).Order()];
        var (risingReal, risingImaginary) = (new double[36], new double[36]);
        column.Impedance(rising, risingReal, risingImaginary);
        for (var i = 0; i < hertz.Length; i++)
        {
            // Beside a sharp peak or zero the last digits of both count for more: the change over a relative step of 1e-11 in
            // frequency is allowed. Large steps of diameter cost digits of the waves, not of the impedance itself.
            var expected = column.InputImpedance(2 * Math.PI * hertz[i]);
            var beside = column.InputImpedance(2 * Math.PI * hertz[i] * (1 + 1e-11));
            var allowed = 1e-11 * Complex.Abs(expected) + 3 * Complex.Abs(beside - expected);
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

    // Where the series of a stretch would overflow or span too many powers of ten, bands are computed by themselves.
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

        var column = new Column(builder.OpenEnd(), TableAir, OneDimensional with { Tolerance = 1e-13 });
        var hertz = FrequencyGrid.Linear(from, to, 64).Hertz.ToArray();
        var (real, imaginary) = Curve(column, hertz);
        for (var i = 0; i < hertz.Length; i += 7)
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
            Near.Relative(single[i], new Complex(hertz[i], imaginary[i]), 1e-13, i);
        }
    }

    [Theory]
    [MemberData(nameof(Widths))]
    public void A_block_of_the_waves_themselves_is_their_quotient(string width)
    {
        var series = new Column(Cones("wavy"), TableAir).Waves.Segments.At(700)!;
        var block = WholeBlock.Of(series, 690, 720);
        Assert.True(block.IsWhole && !block.IsDirect);
        var hertz = Enumerable.Range(0, 23).Select(i => 690 + 1.3 * i).ToArray();
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        Kernels[width](block, hertz, real, imaginary);
        for (var i = 0; i < hertz.Length; i++)
        {
            var (back, on) = series.WavesAt(Vector512.Create(hertz[i]));
            var (p, u) = (on.Lane(0) + back.Lane(0), on.Lane(0) - back.Lane(0));
            // The rounding of two sums of a hundred terms; beside a zero of p or u it counts for more.
            var allowed = 2e-14 * Complex.Abs(on.Lane(0)) * (1 / Complex.Abs(p) + 1 / Complex.Abs(u));
            Near.Relative(series.Impedance * p / u, new Complex(real[i], imaginary[i]), allowed, hertz[i]);
        }
    }

    // What the error of an interpolated curve is taken from. A large step at the blown end makes p⁺ dip.
    [Theory]
    [InlineData(3)]
    [InlineData(30)]
    [InlineData(300)]
    public void The_least_wave_of_a_block_is_found_however_narrow_its_dip_is(double diameter)
    {
        var bore = Bore.Build().Cylinder(Mm(diameter), Mm(1)).Cylinder(Mm(30), Mm(1000)).ClosedEnd();
        var series = new Column(bore, TableAir, OneDimensional).Waves.Segments.At(700)!;
        for (var low = 500.0; low < 1000; low += 17)
        {
            var block = WholeBlock.Of(series, low, low + 60);
            var least = Enumerable
                .Range(0, 20_001)
                .Min(i => Complex.Abs(series.WavesAt(Vector512.Create(low + 0.003 * i)).On.Lane(0)));
            Near.Relative(least * block.WaveScale, block.LeastOn, 0.02, $"{diameter} mm, {low} Hz");
        }
    }

    [Fact]
    public void Nothing_is_allocated_once_the_blocks_are_there()
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

    // The text of each width is the one of 512 bits with its head exchanged; white space is the formatter's.
    [Theory]
    [InlineData("256", 4)]
    [InlineData("128", 2)]
    public void Narrower_kernels_are_made_from_the_widest(string bits, int lanes)
    {
        var made = Text("512").Replace("512", bits).Replace("Width = 8;", $"Width = {lanes};");
        Assert.Equal(Squeezed(made), Squeezed(Text(bits)));
    }

    [Fact]
    public void The_scalar_kernel_is_made_from_the_widest_but_for_its_head()
    {
        const string End = "// </width>";
        var (wide, scalar) = (Text("512"), Text("Scalar"));
        Assert.Equal(
            Squeezed(wide[wide.IndexOf(End, StringComparison.Ordinal)..]),
            Squeezed(scalar[scalar.IndexOf(End, StringComparison.Ordinal)..])
        );
    }

    private static (double[] Real, double[] Imaginary) Curve(Column column, double[] hertz)
    {
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        column.Impedance(hertz, real, imaginary);
        return (real, imaginary);
    }

    private static Complex At(Column column, double hertz, string width)
    {
        double[] all = [hertz, hertz, hertz];
        var (real, imaginary) = (new double[3], new double[3]);
        // By the nodes of its own band, then by the series of a group of bands.
        var alone = Complex.Zero;
        foreach (var areMany in new[] { false, true })
        {
            var block = column.Waves.Bands.At(hertz, areMany);
            Assert.NotNull(block);
            Assert.False(block.IsDirect);
            Kernels[width](block, all, real, imaginary);
            Assert.Equal((real[0], imaginary[0]), (real[2], imaginary[2]));
            var found = new Complex(real[1], imaginary[1]);
            alone = areMany ? alone : found;
            Near.Relative(alone, found, 2e-13, hertz);
        }

        return alone;
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

    private static string Text(string width) =>
        File.ReadAllText(
            Path.Combine(SourceFolder(), "src", "AirColumn", "Acoustics", "Kernels", $"WaveKernel{width}.cs")
        );

    private static string SourceFolder()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "AirColumn.slnx")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return folder;
    }

    private static string Squeezed(string text) =>
        string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != ','));
}
