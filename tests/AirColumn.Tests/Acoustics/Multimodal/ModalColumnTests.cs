using System.Numerics;
using AirColumn.Acoustics.Multimodal;
using AirColumn.Acoustics.Vectors;
using AirColumn.Tests.Oracle;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics.Multimodal;

public class ModalColumnTests
{
    private static readonly double[] Shares = [0.02, 0.13, 0.37, 0.71, 0.97];

    private static readonly Bore Flared = Bore.Build()
        .Cylinder(Mm(40.9), Mm(1200))
        .Horn(HornLaw.Cosine, Mm(40.9), Mm(90), Mm(120))
        .OpenEnd(Mm(3));

    // Two programs for the same equations: waves of one mode by Galerkin's method, and the elements of plane-wave theory.
    [Draws(quick: 12, inLong: 60)]
    [Trait("Speed", "Slow")]
    public void One_mode_is_plane_wave_theory(int seed)
    {
        var random = new Random(seed);
        var losses = (WallLosses)random.Next(3);
        var bore = Random(random);
        var one = Column(bore, 1, losses);
        var plane = new Column(
            bore,
            TableAir,
            new ColumnOptions
            {
                Wavefronts = Wavefronts.Plane,
                Losses = losses,
                RelativeTolerance = 1e-13,
            }
        );
        foreach (var f in Some(one))
        {
            if (one.Model.IsSealed && f < 20)
            {
                continue; // there the air's volume alone is taken, from the one-dimensional column
            }

            var expected = plane.InputImpedance(2 * Math.PI * f);
            var scale = Complex.Abs(expected) + plane.CharacteristicImpedance;
            Near.Absolute(
                0,
                Complex.Abs(one.InputImpedance(2 * Math.PI * f) - expected) / scale,
                2e-9,
                (seed, f)
            );
        }
    }

    // What goes in is radiated or taken by the wall; each by itself.
    [Draws(quick: 4, inLong: 20)]
    [Trait("Speed", "Slow")]
    public void Energy_is_kept(int seed)
    {
        var random = new Random(seed);
        var column = Column(Random(random), random.Next(2, 7), (WallLosses)random.Next(2));
        foreach (var f in Some(column).Where(f => f > 5))
        {
            var power = column.PowerAt(Frequency.FromHertz(f));
            // Relative to what could pass, since through some ends nothing does.
            var scale = Math.Max(power.Input, 1e-3 * Complex.Abs(column.ImpedanceAt(power.Frequency)));
            var spent = power.Radiated + power.Viscous + power.Thermal;
            Near.Absolute(0, (spent - power.Input) / scale, 1e-8, (seed, f));
            Assert.True(power.Radiated >= -1e-9 * scale && power.Viscous >= 0 && power.Thermal >= 0);
        }
    }

    // By the hole as well as by the mouth.
    [Fact]
    public void Energy_is_kept_past_an_open_hole()
    {
        var bore = new Bore(
            [new CylinderSection(Mm(40), Mm(500)), new ConeSection(Mm(40), Mm(70), Mm(120))],
            new OpenEnd(Mm(3)),
            [new ToneHole(Mm(250), Mm(12), Mm(4))]
        );
        var column = Column(bore, 3, WallLosses.Full);
        foreach (var hertz in new[] { 150.0, 420, 900 })
        {
            var power = column.PowerAt(Frequency.FromHertz(hertz));
            Assert.True(power.SideOpenings > 0);
            Near.Absolute(0, power.Imbalance, 1e-8, hertz);
        }
    }

    // What a flow into mode n at one end makes of mode m at the other is what a flow into m there makes of n here. With two loads H at the
    // far end, none and D, Z − Z' = Zᵀ(far, near)·D·Z'(far, near) only if that is so: every entry of every piece is in it.
    [Draws(quick: 6, inLong: 20)]
    [Trait("Speed", "Slow")]
    public void Reciprocity(int seed)
    {
        var random = new Random(seed);
        var modes = random.Next(2, 7);
        var column = Column(Random(random), modes, (WallLosses)random.Next(2));
        var frequencies = new FrequencyVector(Vector.Create(2 * Math.PI * Some(column)[random.Next(1, 5)]));
        var load = Matrix<Complex>.Build.Dense(
            modes,
            modes,
            (i, j) => 0.02 * new Complex(i == j ? 1 : 0.1 * Math.Sin(i + j), 0.3 * Math.Cos(i + j))
        );
        var (z, far) = Seen(0 * load);
        var (otherZ, otherFar) = Seen(load);
        var apart = z - otherZ - far.Transpose() * load * otherFar;
        Near.Absolute(0, apart.InfinityNorm() / (z.InfinityNorm() + otherZ.InfinityNorm()), 1e-10, seed);

        // P/W at the near end, and P at the far end over W at the near one.
        (Matrix<Complex> Near, Matrix<Complex> Far) Seen(Matrix<Complex> end)
        {
            var passes = Matrix<Complex>.Build.Dense(modes, modes);
            Matrix<Complex>? near = null;
            for (var row = 0; row < modes; row++)
            {
                var state = new ModalState(modes, frequencies);
                for (var i = 0; i < modes * modes; i++)
                {
                    state.H[i] = ComplexVector.All(end[i / modes, i % modes]);
                }

                state.T[row] = ComplexVector.One;
                foreach (var piece in column.Modal()!.Pieces)
                {
                    piece.Carry(state);
                }

                for (var n = 0; n < modes; n++)
                {
                    passes[row, n] = state.T[n].At(0);
                }

                near ??= Matrix<Complex>.Build.Dense(modes, modes, (i, j) => state.H[i * modes + j].At(0));
            }

            var inverse = near!.Inverse();
            return (inverse, passes * inverse);
        }
    }

    [Draws(quick: 5, inLong: 20)]
    [Trait("Speed", "Slow")]
    public void A_cone_in_two_parts_is_the_cone(int seed)
    {
        var random = new Random(seed);
        var (a, b) = (10 + 20 * random.NextDouble(), 30 + 40 * random.NextDouble());
        var (length, share) = (100 + 300 * random.NextDouble(), 0.2 + 0.6 * random.NextDouble());
        var middle = a + share * (b - a);
        var whole = Column(Bore.Build().Cone(Mm(a), Mm(b), Mm(length)).BaffledEnd(), 4, WallLosses.Full);
        var parts = Column(
            Bore.Build()
                .Cone(Mm(a), Mm(middle), Mm(share * length))
                .Cone(Mm(middle), Mm(b), Mm((1 - share) * length))
                .BaffledEnd(),
            4,
            WallLosses.Full
        );
        foreach (var f in Some(whole))
        {
            // What the polynomials along the wall leave out of the upper modes.
            Near.Relative(
                whole.InputImpedance(2 * Math.PI * f),
                parts.InputImpedance(2 * Math.PI * f),
                1e-5,
                (seed, f)
            );
        }
    }

    // Without losses everything twice as large sounds an octave lower.
    [Draws(quick: 3, inLong: 20)]
    [Trait("Speed", "Slow")]
    public void A_larger_column_sounds_lower(int seed)
    {
        var scale = 0.3 + 3 * new Random(seed).NextDouble();
        var small = Column(Horn(1), 5, WallLosses.None);
        var large = Column(Horn(scale), 5, WallLosses.None);
        foreach (var f in Some(small))
        {
            Near.Relative(
                small.InputImpedance(2 * Math.PI * f),
                scale * scale * large.InputImpedance(2 * Math.PI * f / scale),
                1e-9,
                (seed, f)
            );
        }

        static Bore Horn(double s) =>
            Bore.Build()
                .Cylinder(Mm(20 * s), Mm(200 * s))
                .Horn(HornLaw.Exponential, Mm(30 * s), Mm(90 * s), Mm(150 * s))
                .OpenEnd(Mm(3 * s));
    }

    [Fact]
    public void A_curve_its_single_values_and_its_resonances_agree()
    {
        var column = Column(Flared, 4, WallLosses.Full);
        var grid = FrequencyGrid.Linear(30, 1500, 400);
        var curve = column.Impedance(grid);
        for (var i = 0; i < grid.Count; i += 37)
        {
            var single = column.InputImpedance(2 * Math.PI * grid.Hertz[i]);
            Near.Relative(single, curve[i], 1e-8, grid.Hertz[i]);
        }

        var first = column.FirstResonances(1)[0];
        var there = Complex.Abs(column.ImpedanceAt(first.Frequency));
        Near.Relative(first.Magnitude, there, 1e-9);
        foreach (var side in new[] { 0.999, 1.001 })
        {
            Assert.True(Complex.Abs(column.ImpedanceAt(side * first.Frequency)) < there);
        }
    }

    [Fact]
    public void Inside_pressure_begins_at_the_impedance_and_ends_at_the_radiating_end()
    {
        var column = Column(Flared, 4, WallLosses.Full);
        var frequency = Frequency.FromHertz(410);
        var wave = column.StandingWaveAt(frequency, 7);
        Near.Relative(column.ImpedanceAt(frequency), wave.Pressure[0], 1e-9);
        Near.Relative(1, wave.Flow[0], 1e-9);
        var transfer = column.TransferAt(frequency);
        Near.Relative(transfer.Impedance, wave.Pressure[^1], 1e-9);
        Near.Relative(transfer.FlowRatio, wave.Flow[^1], 1e-9);
        // In the cylinder the plane mode obeys p'' = −k²…p like any other: a place computed from both sides.
        var places = new[] { Mm(400), Mm(1260), Mm(1319) };
        var again = column.StandingWaveAt(frequency, places);
        Assert.All(again.Pressure.ToArray(), p => Assert.True(Complex.IsFinite(p)));
    }

    // Against columns beside it.
    [Fact]
    [Trait("Speed", "Slow")]
    public void Gradients_are_those_of_resonances_computed_anew()
    {
        var column = Column(Flared, 4, WallLosses.Full);
        var resonances = column.FirstResonances(3);
        ColumnParameter[] parameters =
        [
            ColumnParameter.SectionLength(0),
            ColumnParameter.SectionLength(1),
            ColumnParameter.OutletDiameter(1),
        ];
        var gradients = column.Gradients(resonances, parameters);
        for (var n = 0; n < parameters.Length; n++)
        {
            var value = parameters[n].Of(column);
            var step = 3e-4 * value;
            var (more, less) = (
                parameters[n].With(column, value + step).FirstResonances(3),
                parameters[n].With(column, value - step).FirstResonances(3)
            );
            for (var i = 0; i < 3; i++)
            {
                var expected = (more[i].Frequency - less[i].Frequency).Hertz / (2 * step);
                Near.Relative(expected, gradients[i].HertzPerUnit[n], 1e-4, (n, i));
            }
        }
    }

    [Fact]
    public void Frequencies_in_any_order_are_answered_alike()
    {
        var column = Column(Flared, 2, WallLosses.Full);
        double[] hertz = [200, 900, 300, 301, 1500, 100, 100, 899.9, 901, 40, 1501, 200];
        double[] inOrder = [.. hertz.Order()];
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        var (orderedReal, orderedImaginary) = (new double[hertz.Length], new double[hertz.Length]);
        column.Impedance(inOrder, orderedReal, orderedImaginary);
        column.Impedance(hertz, real, imaginary);
        for (var i = 0; i < hertz.Length; i++)
        {
            var place = Array.IndexOf(inOrder, hertz[i]);
            Near.Relative(
                new Complex(orderedReal[place], orderedImaginary[place]),
                new Complex(real[i], imaginary[i]),
                1e-9,
                hertz[i]
            );
        }
    }

    [Fact]
    [Trait("Speed", "Slow")]
    public void Convergence_is_told_and_falls_with_more_modes()
    {
        var figures = Enumerable
            .Range(2, 3)
            .Select(n => 2 * n)
            .Select(n => Column(Flared, n, WallLosses.Full).FirstResonances(8))
            .ToList();
        Assert.All(figures, list => Assert.True(list.ModeConvergence() > 0));
        Assert.True(figures[1].ModeConvergence() < 0.5 * figures[0].ModeConvergence());
        Assert.True(figures[2].ModeConvergence() < figures[1].ModeConvergence());
        // What two more change is what was told of them.
        var moved = figures[0]
            .Zip(figures[1], (a, b) => 1200 * Math.Log2(a.Frequency / b.Frequency))
            .Max(Math.Abs);
        Near.Relative(moved, figures[1].ModeConvergence(), 0.2);
        var automatic = new Column(
            Flared,
            TableAir,
            new ColumnOptions { Wavefronts = Wavefronts.Multimodal }
        );
        Assert.InRange(automatic.ModeCount(), 4, 8);
        Assert.Equal(0, new Column(Flared, TableAir, OneDimensional).FirstResonances(2).ModeConvergence());
        Assert.InRange(automatic.Impedance(FrequencyGrid.Linear(50, 900, 50)).ModeConvergence(), 1e-6, 0.3);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(13)]
    public void A_number_of_modes_out_of_range_is_refused(int modes)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => new ColumnOptions { Modes = modes });
        Assert.Contains("Modes", error.Message, StringComparison.Ordinal);
        Assert.Contains("12", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void There_is_no_two_port() =>
        Assert.Throws<NotSupportedException>(() =>
            Column(Flared, 3, WallLosses.Full).TransferMatrixAt(Frequency.FromHertz(100))
        );

    [Fact]
    public void Modes_are_taken_by_themselves_where_curved_fronts_do_not_reach()
    {
        Assert.Equal(Wavefronts.Multimodal, Chosen(Flared));
        Assert.Equal(Wavefronts.Multimodal, Chosen(FieldTubes.Named("bell")));
        Assert.Equal(Wavefronts.Curved, Chosen(FieldTubes.Named("wavy_gentle")));
        Assert.Equal(Wavefronts.Multimodal, Chosen(FieldTubes.Named("wavy_short")));
        Assert.Equal(Wavefronts.Curved, Chosen(FieldTubes.Named("drone")));
        Assert.Equal(
            Wavefronts.Multimodal,
            Chosen(
                Bore.Build()
                    .Cylinder(Mm(20), Mm(300))
                    .Cylinder(Mm(40), Mm(8))
                    .Cylinder(Mm(20), Mm(300))
                    .ClosedEnd()
            )
        );
        Assert.Equal(
            Wavefronts.Plane,
            new Column(
                FieldTubes.Named("bell"),
                TableAir,
                new ColumnOptions { Wavefronts = Wavefronts.Plane }
            ).Wavefronts
        );

        static Wavefronts Chosen(Bore bore) =>
            new Column(bore, TableAir, new ColumnOptions { Wavefronts = Wavefronts.Automatic }).Wavefronts;
    }

    private static Column Column(Bore bore, int modes, WallLosses losses) =>
        new(
            bore,
            TableAir,
            new ColumnOptions
            {
                Wavefronts = Wavefronts.Multimodal,
                Modes = modes,
                Losses = losses,
            }
        );

    private static double[] Some(Column column)
    {
        var top = Math.Min(column.CutOnHertz, column.HighestHertz);
        return [2, .. Shares.Select(share => share * top)];
    }

    private static Bore Random(Random random) =>
        new(
            Walls(random),
            random.Next(4) switch
            {
                0 => new ClosedEnd(),
                1 => new IdealOpenEnd(),
                2 => new BaffledEnd(),
                _ => new OpenEnd(Mm(1 + 4 * random.NextDouble())),
            }
        );

    // Cones and cylinders, half of them with a step between.
    private static Section[] Walls(Random random)
    {
        var sections = new Section[random.Next(1, 4)];
        var radius = 10 + 20 * random.NextDouble();
        for (var i = 0; i < sections.Length; i++)
        {
            var next = random.Next(3) == 0 ? radius : 8 + 25 * random.NextDouble();
            sections[i] = new ConeSection(Mm(2 * radius), Mm(2 * next), Mm(20 + 300 * random.NextDouble()));
            radius = random.Next(2) == 0 ? next : 8 + 25 * random.NextDouble();
        }

        return sections;
    }
}
