using System.Numerics;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class InterpolationErrorTests
{
    [Fact]
    public void An_ordinary_tube_is_within_1e_10_and_says_so()
    {
        var bore = Bore.Build().Cylinder(Mm(31), Mm(30)).Cylinder(Mm(50), Mm(980)).Cone(Mm(75), Mm(120));
        var column = new Column(bore.OpenEnd(Mm(3)), TableAir);
        var grid = FrequencyGrid.Linear(20, 2000, 4096);
        var curve = column.Impedance(grid);
        Assert.InRange(curve.InterpolationError, 1e-16, 1e-10);
        Compare(column, curve, 1e-10, "tube");
        Assert.Equal(0, column.Impedance(FrequencyGrid.FromHertz(100, 200)).InterpolationError);
    }

    // Also where little is smooth: sharp peaks, capillaries, few frequencies, some below the waves.
    [Draws(quick: 4, inLong: 100)]
    [Trait("Speed", "Slow")]
    public void The_error_it_states_holds_on_any_bore(int seed)
    {
        var random = new Random(seed);
        var plain = RandomBore.From(seed, 2e-3, 0.05, 1);
        var (bore, fingering) =
            random.Next(2) == 0 ? RandomOpenings.From(seed, plain) : (plain, Fingering.AllOpen);
        var column = new Column(
            bore,
            TableAir,
            OneDimensional with
            {
                Fingering = fingering,
                RelativeTolerance = 1e-13,
            }
        );
        var top = Math.Min(column.CutOnHertz, column.HighestHertz);
        var grid = FrequencyGrid.Linear(0.01, 0.9 * Math.Min(top, 3000), 10 + random.Next(1500));
        var curve = column.Impedance(grid);
        Compare(column, curve, curve.InterpolationError, $"seed {seed}");
    }

    // The series are made for what is asked first and made anew where more is asked later.
    [Fact]
    public void Asked_for_more_after_less_it_is_as_good()
    {
        var column = Column(new ConeSection(Mm(30), Mm(60), Mm(1300)), new OpenEnd(Mm(3)));
        foreach (var (from, to) in new[] { (300, 500), (310, 490), (20, 2000), (320, 3000), (20, 2000) })
        {
            var grid = FrequencyGrid.Linear(from, to, 2000);
            var curve = column.Impedance(grid);
            Assert.InRange(curve.InterpolationError, 1e-16, 1e-10);
            Compare(column, curve, curve.InterpolationError, $"{from} to {to} Hz");
        }
    }

    [Fact]
    public void With_radial_modes_it_states_its_error()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(40.9), Mm(500))
            .Horn(HornLaw.Cosine, Mm(40.9), Mm(90), Mm(120))
            .OpenEnd(Mm(3));
        var column = new Column(
            bore,
            TableAir,
            new ColumnOptions { Wavefronts = Wavefronts.Multimodal, Modes = 3 }
        );
        var grid = FrequencyGrid.Linear(50, 1500, 600);
        var curve = column.Impedance(grid);
        Assert.InRange(curve.InterpolationError, 1e-16, 1e-8);
        Compare(column, curve, curve.InterpolationError, "modes");
    }

    // Zeros of the waves' sum and difference lie on the axis there; between its frequencies Z is finite.
    [Fact]
    public void Without_losses_it_states_its_error()
    {
        var column = Column(new ConeSection(Mm(20), Mm(50), Mm(900)), new ClosedEnd(), Lossless);
        var grid = FrequencyGrid.Linear(20, 2000, 1500);
        var curve = column.Impedance(grid);
        Compare(column, curve, curve.InterpolationError, "no losses");
        Assert.InRange(curve.InterpolationError, 1e-16, 1e-8);
    }

    // A side branch that is longer than the bore: where it shorts the bore nearly all of the wave turns back there.
    [Theory]
    [InlineData(8)]
    [InlineData(1)]
    public void Past_a_long_branch_it_states_its_error(double millimetres)
    {
        var branch = Bore.Build().Cylinder(Mm(millimetres), Mm(2000)).ClosedEnd();
        var bore = new Bore(
            [new CylinderSection(Mm(25), Mm(700))],
            new OpenEnd(Mm(3)),
            null,
            [new SideBranch(Mm(300), branch)]
        );
        var column = new Column(bore, TableAir, OneDimensional);
        var grid = FrequencyGrid.Linear(20, 2500, 1500);
        var curve = column.Impedance(grid);
        Compare(column, curve, curve.InterpolationError, $"branch of {millimetres} mm");
        Assert.InRange(curve.InterpolationError, 1e-16, 1e-8);
    }

    // So strong an attenuation that the squares of the waves would overflow.
    [Fact]
    [Trait("Speed", "Slow")]
    public void A_long_capillary_is_answered_by_exact_values()
    {
        var builder = Bore.Build();
        for (var i = 0; i < 150; i++)
        {
            builder = builder.Cylinder(Mm(0.2), Metres(0.2)).Cylinder(Mm(0.21), Metres(0.2));
        }

        var column = new Column(builder.OpenEnd(), TableAir, OneDimensional);
        foreach (var (from, to) in new[] { (900, 1000), (1, 1000) })
        {
            var grid = FrequencyGrid.Linear(from, to, 2000);
            var curve = column.Impedance(grid);
            Assert.InRange(curve.InterpolationError, 0, 1e-8);
            Compare(column, curve, 1e-8, $"{from} to {to} Hz");
        }
    }

    [Fact]
    public void Threads_that_share_a_column_get_what_it_states()
    {
        var bore = new Bore([new ConeSection(Mm(30), Mm(60), Mm(1300))], new OpenEnd(Mm(3)));
        var shared = new Column(bore, TableAir);
        Parallel.For(
            0,
            16,
            i =>
            {
                var grid = FrequencyGrid.Linear(20 + 30 * i, 2000 - 50 * (i % 4), 1500);
                var curve = shared.Impedance(grid);
                Compare(shared, curve, curve.InterpolationError, $"thread {i}");
            }
        );
    }

    [Fact]
    public void Beyond_the_radiation_model_it_refuses_as_the_exact_one_does()
    {
        var column = Column(new CylinderSection(Mm(40), Mm(500)), new OpenEnd(Mm(3)));
        var grid = FrequencyGrid.Linear(100, 50_000, 100);
        var problem = Assert.Throws<ArgumentOutOfRangeException>(() => column.Impedance(grid));
        Assert.Contains("radiation of this open end", problem.Message, StringComparison.Ordinal);
    }

    // Both curves have errors of their own, which a peak or zero magnifies as a change of frequency of 1e-12 would: beside a zero Z is a straight
    // line, beside a pole 1/Z.
    // Each frequency by itself.
    private static void Compare(Column column, ImpedanceCurve curve, double allowed, string name)
    {
        Complex[] exact =
        [
            .. curve
                .Grid.Hertz.ToArray()
                .Select(hertz =>
                {
                    var (p, u, _) = column.Answers().At(hertz);
                    return p / u;
                }),
        ];
        var grid = curve.Grid;
        for (var i = 1; i < exact.Length - 1; i++)
        {
            var slope = Math.Max(
                Complex.Abs(exact[i + 1] - exact[i - 1]) / Complex.Abs(exact[i]),
                Complex.Abs(1 / exact[i + 1] - 1 / exact[i - 1]) * Complex.Abs(exact[i])
            );
            var steepness = slope * grid[i].Hertz / (grid[i + 1] - grid[i - 1]).Hertz;
            Near.Relative(
                exact[i],
                curve[i],
                allowed + 1e-11 + 5 * column.Options.RelativeTolerance + 1e-12 * steepness,
                $"{name}, {grid[i]}"
            );
        }
    }
}
