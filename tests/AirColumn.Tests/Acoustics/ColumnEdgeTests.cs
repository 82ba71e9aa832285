using System.Numerics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class ColumnEdgeTests
{
    private static Column Tube(BoreEnd end) => Column(new CylinderSection(Mm(40), Mm(1000)), end);

    [Fact]
    public void Curve_single_answers_and_spans_agree()
    {
        var column = new Column(
            Bore.Build().Cylinder(Mm(30), Mm(25)).Cone(Mm(38), Mm(60), Mm(700)).OpenEnd(Mm(3)),
            TableAir
        );
        var grid = FrequencyGrid.Logarithmic(20, 2000, 50);
        var curve = column.Impedance(grid);
        var real = new double[grid.Count];
        var imaginary = new double[grid.Count];
        column.Impedance(grid.Hertz, real, imaginary);
        for (var i = 0; i < grid.Count; i++)
        {
            Assert.Equal(curve[i], new Complex(real[i], imaginary[i]));
            // By itself, where a curve takes many together: the same to what either may be off.
            Near.Relative(curve[i], column.ImpedanceAt(grid[i]), 1e-9);
        }

        Assert.Empty(curve.Warnings);
    }

    [Fact]
    public void Reflection_and_impedance_tell_the_same()
    {
        var column = Tube(new OpenEnd(Mm(3)));
        var f = Frequency.FromHertz(123);
        var r = column.ReflectionAt(f);
        Near.Relative(column.ImpedanceAt(f), column.CharacteristicImpedance * (1 + r) / (1 - r), 1e-12);
    }

    [Fact]
    public void Transfer_matrix_and_load_give_the_impedance()
    {
        var column = Tube(new ClosedEnd());
        var f = Frequency.FromHertz(321);
        var m = column.TransferMatrixAt(f);
        Near.Relative(column.ImpedanceAt(f), m.A / m.C, 1e-12);
        Near.Relative(column.ImpedanceAt(f), m.InputImpedance(1e30), 1e-12);
    }

    [Fact]
    public void Above_the_cut_on_a_curve_warns_and_a_single_answer_is_refused()
    {
        var column = Tube(new ClosedEnd());
        // 1.2197·c/d for the first radial mode (from memory): 3.8317/π.
        Near.Relative(1.2197 * 343.37 / 0.040, column.CutOn.Hertz, 1e-4);
        var warning = Assert.Single(column.Impedance(FrequencyGrid.FromHertz(100, 11_000)).Warnings);
        Assert.Contains("plane-wave theory ends at", warning, StringComparison.Ordinal);
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            column.ImpedanceAt(Frequency.FromHertz(11_000))
        );
        Assert.Equal("frequency", error.ParamName);
    }

    [Fact]
    public void Beyond_the_radiation_tables_a_radiating_end_refuses()
    {
        var column = Tube(new OpenEnd(Mm(3)));
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            column.Impedance(FrequencyGrid.FromHertz(11000))
        );
        Assert.Contains(
            "radiation of this open end is known up to 10383",
            error.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => column.Resonances(Frequency.FromHertz(11000)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void Frequencies_above_zero_only(double hertz)
    {
        var column = Tube(new OpenEnd(Mm(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => column.ImpedanceAt(Frequency.FromHertz(hertz)));
        Assert.Throws<ArgumentOutOfRangeException>(() => column.Resonances(Frequency.FromHertz(hertz)));
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyGrid.FromHertz(hertz));
    }

    [Fact]
    public void A_refused_span_is_left_as_it_was()
    {
        var column = Tube(new OpenEnd(Mm(0)));
        var real = new double[] { 7, 7 };
        var imaginary = new double[] { 7, 7 };
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            column.Impedance([100, double.NaN], real, imaginary)
        );
        Assert.Throws<ArgumentException>(() => column.Impedance([100, 200, 300], real, imaginary));
        Assert.Equal([7, 7], real);
        Assert.Equal([7, 7], imaginary);
    }

    [Fact]
    public void Spans_are_filled_without_allocating()
    {
        var column = new Column(
            Bore.Build().Cylinder(Mm(30), Mm(25)).Cone(Mm(38), Mm(60), Mm(700)).OpenEnd(Mm(3)),
            TableAir
        );
        var frequencies = FrequencyGrid.Linear(20, 2000, 20).Hertz.ToArray();
        var (real, imaginary) = (new double[20], new double[20]);
        column.Impedance(frequencies, real, imaginary);
        var before = GC.GetAllocatedBytesForCurrentThread();
        column.Impedance(frequencies, real, imaginary);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void Grids_refuse_what_makes_no_grid()
    {
        Assert.Throws<ArgumentException>(() => FrequencyGrid.FromHertz());
        Assert.Throws<ArgumentException>(() => FrequencyGrid.FromHertz(200, 100));
        Assert.Throws<ArgumentException>(() => FrequencyGrid.FromHertz(100, 100));
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyGrid.FromHertz(100, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyGrid.Linear(100, 100, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            FrequencyGrid.Linear(100, double.PositiveInfinity, 10)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyGrid.Linear(100, 200, 1));
    }

    [Fact]
    public void Grids_are_the_same_from_quantities_and_from_numbers_and_name_what_was_given()
    {
        var (low, high) = (Frequency.FromHertz(100), Frequency.FromKilohertz(1));
        Assert.Equal(FrequencyGrid.Linear(100, 1000, 7).Hertz, FrequencyGrid.Linear(low, high, 7).Hertz);
        Assert.Equal(
            FrequencyGrid.Logarithmic(100, 1000, 7).Hertz,
            FrequencyGrid.Logarithmic(low, high, 7).Hertz
        );
        var swapped = Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyGrid.Linear(high, low, 7));
        Assert.StartsWith(
            "to is 100 Hz; it must be above from, 1000 Hz.",
            swapped.Message,
            StringComparison.Ordinal
        );
    }

    // At a few hundred nepers the far end is out of sight: Z is the characteristic impedance of the lossy duct.
    [Fact]
    public void Overwhelming_attenuation_does_not_overflow()
    {
        var capillary = new CylinderSection(Mm(0.05), Metres(100));
        var column = Column(capillary, new ClosedEnd());
        var z = column.ImpedanceAt(Frequency.FromHertz(500));
        var shorter = Column(capillary.WithLength(Metres(10)), new ClosedEnd())
            .ImpedanceAt(Frequency.FromHertz(500));
        Assert.True(Complex.IsFinite(z));
        Near.Relative(shorter, z, 1e-12);
        Assert.Throws<ArithmeticException>(() => column.TransferMatrixAt(Frequency.FromHertz(500)));
    }

    [Fact]
    public void Warnings_of_the_air_come_with_the_answers()
    {
        var cold = Air.At(Temperature.FromDegreesCelsius(5), RelativeHumidity.FromPercent(50));
        var column = new Column(Bore.Build().Cylinder(Mm(40), Mm(1000)).OpenEnd(), cold);
        Assert.NotEmpty(cold.Warnings);
        Assert.Equal(cold.Warnings, column.Impedance(FrequencyGrid.FromHertz(100)).Warnings);
        Assert.Equal(cold.Warnings, column.FirstResonances(1).Warnings);
    }

    [Fact]
    public void A_very_thick_wall_is_warned_of()
    {
        var column = Tube(new OpenEnd(Mm(100)));
        Assert.Contains(
            "field solutions were tabulated up to 3 times",
            Assert.Single(column.FirstResonances(1).Warnings),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Fewer_resonances_than_asked_for_are_said()
    {
        var column = Column(new CylinderSection(Mm(40), Mm(100)), new OpenEnd(Mm(3)));
        var found = column.FirstResonances(50);
        Assert.InRange(found.Count, 3, 12);
        Assert.Contains($"{found.Count} of 50 resonances", found.Warnings[^1], StringComparison.Ordinal);
    }

    // Large-tube losses: first order of the full ones, so the difference falls as the square of the boundary layer.
    [Theory]
    [InlineData(20, 2e-3)]
    [InlineData(200, 2e-5)]
    public void Large_tube_losses_tend_to_the_full_ones(double diameter, double tolerance)
    {
        var tube = new CylinderSection(Mm(diameter), Mm(800));
        var f = Frequency.FromHertz(60);
        var full = Column(tube, new ClosedEnd()).ImpedanceAt(f);
        var first = Column(tube, new ClosedEnd(), new ColumnOptions { Losses = WallLosses.LargeTube })
            .ImpedanceAt(f);
        Near.Relative(full, first, tolerance);
        Assert.NotEqual(full, first);
    }

    [Fact]
    public void Options_refuse_what_is_not_allowed()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ColumnOptions { Losses = (WallLosses)9 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new ColumnOptions { RelativeTolerance = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ColumnOptions { RelativeTolerance = double.NaN }
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => BlownEnd.Open(Mm(-1)));
    }
}
