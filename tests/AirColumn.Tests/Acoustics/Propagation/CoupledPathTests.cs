using System.Numerics;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;
using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics.Propagation;

/// <summary>Openings that hear each other, passed one by one, against one system of equations for all of them.</summary>
public class CoupledPathTests
{
    [Property(MaxTest = 100)]
    public void Impedance_and_flows_are_those_of_all_equations_at_once(int seed)
    {
        var column = seed % 2 == 0 ? Tube(seed, 1 + (int)((uint)seed % 12)) : AnyColumn(seed);
        if (column.Model.Openings is null)
        {
            return;
        }

        var random = new Random(seed);
        for (var n = 0; n < 5; n++)
        {
            var hertz = 20 + 0.9 * random.NextDouble() * column.HighestFrequency.Hertz;
            var omega = 2 * Math.PI * hertz;
            var (z, flows) = CoupledHoles.Of(column, omega);
            Near.Relative(
                z,
                column.ImpedanceAt(Frequency.FromHertz(hertz)),
                1e-7,
                $"seed {seed}, {hertz} Hz"
            );

            var model = column.Model;
            var path = new CoupledPath(
                model.Way,
                model.End,
                model.Openings!,
                model.Impedance,
                new Band(omega, omega, 1e-12)
            );
            var (_, mouths) = path.Mouths(FrequencyVector.All(omega));
            var scale = flows[^1] / mouths[^1].Flow.At(0);
            for (var i = 0; i < mouths.Length; i++)
            {
                Near.Absolute(
                    0,
                    Complex.Abs(flows[i] - scale * mouths[i].Flow.At(0)) / flows.Max(Complex.Abs),
                    1e-7,
                    $"seed {seed}, {hertz} Hz, opening {i}"
                );
            }
        }
    }

    // Where waves do not pass a row of open holes, the far ones move by a part in 10^20 and less.
    [Theory]
    [InlineData(16)]
    [InlineData(80)]
    public void Long_rows_of_open_holes_do_not_lose_digits(int holes)
    {
        var column = Row(holes);
        foreach (var hertz in new[] { 60.0, 300, 900, 2500 })
        {
            var f = Frequency.FromHertz(hertz);
            Near.Relative(
                CoupledHoles.Of(column, 2 * Math.PI * hertz).Impedance,
                column.ImpedanceAt(f),
                1e-8
            );
        }

        // A curve goes through series of what is carried.
        var curve = column.Impedance(FrequencyGrid.Linear(50, 2500, 2000));
        for (var i = 0; i < curve.Count; i += 97)
        {
            Near.Relative(
                column.ImpedanceAt(Frequency.FromHertz(curve.Grid.Hertz[i])),
                curve[i],
                1e-7,
                curve.Grid.Hertz[i]
            );
        }
    }

    [Fact]
    public void Who_hears_nobody_is_as_without_it()
    {
        var one = Bore.Build().Cylinder(Mm(15), Mm(400)).Hole(Mm(200), Mm(7), Mm(3)).ClosedEnd();
        var shut = Bore.Build().Cylinder(Mm(15), Mm(400)).Hole(Mm(200), Mm(7), Mm(3)).OpenEnd(Mm(1));
        Assert.Null(new Column(one, TableAir, Lossless).Model.Openings);
        Assert.Null(
            new Column(shut, TableAir, Lossless with { Fingering = Fingering.AllClosed }).Model.Openings
        );
        Assert.NotNull(new Column(shut, TableAir, Lossless).Model.Openings);
        Assert.Null(new Column(shut, TableAir, Lossless with { MutualRadiation = false }).Model.Openings);
        var wall = Bore.Build().Cylinder(Mm(15), Mm(400)).Hole(Mm(200), Mm(7), Mm(3)).BaffledEnd();
        Assert.Null(new Column(wall, TableAir, Lossless).Model.Openings);
    }

    [Fact]
    public void Where_nothing_passes_nothing_is_heard()
    {
        // 0.1 mm wide and 100 m long: some thousand nepers.
        var bore = Bore.Build()
            .Cylinder(Mm(0.1), Metres(100))
            .Hole(Mm(400), Mm(0.08), Mm(0.1))
            .OpenEnd(Mm(1));
        var column = new Column(bore, TableAir, OneDimensional);
        var f = Frequency.FromHertz(5000);
        Assert.NotNull(column.Model.Openings);
        Assert.True(Complex.IsFinite(column.ImpedanceAt(f)));
        Assert.True(double.IsFinite(column.PowerAt(f).Imbalance));
        Assert.Equal(0, column.TransferAt(f).PressureRatio.Magnitude, 1e-100);
        var gradient = column.ImpedanceGradient(
            FrequencyGrid.Linear(4000, 5000, 3),
            [ColumnParameter.HolePosition(0), ColumnParameter.SectionLength(0)]
        );
        Assert.True(Complex.IsFinite(gradient.At(0, 1)) && Complex.IsFinite(gradient.At(1, 2)));
    }

    [Fact]
    public void Radial_modes_leave_it_out_and_say_so()
    {
        var bore = Bore.Build().Cylinder(Mm(15), Mm(300)).Hole(Mm(200), Mm(7), Mm(3)).OpenEnd(Mm(2));
        var curved = new Column(bore, TableAir, OneDimensional);
        var modes = new Column(bore, TableAir, new() { Wavefronts = Wavefronts.Multimodal, Modes = 2 });
        Assert.True(AirColumn.Documents.Provenance.Of(curved).MutualRadiation);
        Assert.False(AirColumn.Documents.Provenance.Of(modes).MutualRadiation);
        const string Said = "hear each other outside";
        Assert.Contains(
            modes.FirstResonances(1).Warnings,
            text => text.Contains(Said, StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            curved.FirstResonances(1).Warnings,
            text => text.Contains(Said, StringComparison.Ordinal)
        );
    }

    // Bores of all sections with losses, steps, closed holes and branches between the open ones.
    private static Column AnyColumn(int seed)
    {
        var (bore, fingering) = RandomOpenings.From(seed, RandomBore.From(seed, 3e-3), 6);
        return new Column(
            bore,
            TableAir,
            OneDimensional with
            {
                Fingering = fingering,
                RelativeTolerance = 1e-13,
            }
        );
    }

    private static Column Row(int holes)
    {
        var bore = Bore.Build().Cylinder(Mm(15), Mm(200 + 15.0 * holes));
        for (var i = 0; i < holes; i++)
        {
            bore = bore.Hole(Mm(100 + 15.0 * i), Mm(7), Mm(3));
        }

        return new Column(bore.OpenEnd(Mm(3)), TableAir, Lossless);
    }

    private static Column Tube(int seed, int holes)
    {
        var random = new Random(seed);
        var diameter = 10 + 20 * random.NextDouble();
        var spacing = 1.2 * diameter + 40 * random.NextDouble();
        var bore = Bore.Build().Cylinder(Mm(diameter), Mm(100 + holes * spacing));
        for (var i = 0; i < holes; i++)
        {
            var d = diameter * (0.2 + 0.75 * random.NextDouble());
            bore = bore.Hole(
                new ToneHole(
                    Mm(50 + (i + 0.2 * random.NextDouble()) * spacing),
                    Mm(d),
                    Mm(1 + 6 * random.NextDouble())
                )
                {
                    ChimneyWall = random.Next(3) == 0 ? Mm(1) : null,
                }
            );
        }

        // With one hole alone there is nobody to hear but the end.
        return new Column(
            holes > 1 && random.Next(4) == 0 ? bore.ClosedEnd() : bore.OpenEnd(Mm(3)),
            TableAir,
            Lossless
        );
    }
}
