using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

public class QualityIndicatorsTests
{
    // A tube that swallows every echo shows its characteristic impedance at every frequency: ρc/S but for the boundary layer.
    [Fact]
    public void Mean_of_an_endless_tube_is_its_characteristic_impedance()
    {
        var column = Column(new CylinderSection(Mm(4), Mm(1_000_000)), new ClosedEnd());
        // The layer adds about its share of the cross-section, here below 3 %, which smith2007's mean includes too.
        Near.Relative(column.CharacteristicImpedance, column.MeanImpedance(), 0.03);
    }

    // ∫ln|tan| over a whole number of periods is 0: the geometric mean of a lossless tube is ρc/S exactly if 1 kHz spans a
    // whole number of half-wave spacings, here ten of them.
    [Fact]
    public void Mean_of_a_lossless_tube_over_whole_periods_is_its_characteristic_impedance()
    {
        var column = Column(
            new CylinderSection(Mm(20), Length.FromMeters(343.37 / 2 / 100)),
            new IdealOpenEnd(),
            Lossless
        );
        // Logarithmic singularities at each resonance cost adaptive quadrature a few digits.
        Near.Relative(column.CharacteristicImpedance, column.MeanImpedance(), 1e-3);
    }

    [Fact]
    public void Mean_agrees_with_a_dense_grid()
    {
        var bore = Bore.Build().Cylinder(Mm(30), Mm(25)).Cylinder(Mm(38), Mm(1240)).OpenEnd(Mm(3));
        var column = new Column(bore, TableAir);
        var curve = column.Impedance(FrequencyGrid.Linear(1000.05, 1999.95, 10_000));
        var sum = 0.0;
        for (var i = 0; i < curve.Count; i++)
        {
            sum += Math.Log(curve[i].Magnitude);
        }

        Near.Relative(Math.Exp(sum / curve.Count), column.MeanImpedance(), 1e-6);
    }

    [Fact]
    public void A_bore_too_wide_for_2_kHz_has_no_such_mean() =>
        Assert.Throws<ArgumentException>(() =>
            Column(new CylinderSection(Mm(250), Mm(1000)), new BaffledEnd()).MeanImpedance()
        );

    [Fact]
    public void First_peak_is_that_of_the_first_resonance()
    {
        var column = Column(new CylinderSection(Mm(30), Mm(1000)), new BaffledEnd());
        Near.Relative(
            column.FirstResonances(1)[0].Magnitude / column.CharacteristicImpedance,
            column.FirstPeakHeight(),
            1e-12
        );
        Assert.Throws<InvalidOperationException>(() =>
            Column(new CylinderSection(Mm(0.1), Mm(10_000)), new BaffledEnd()).FirstPeakHeight()
        );
    }

    // Without losses a tube closed at one end has exactly the odd harmonics, one open at both all of them (fletcher1998,
    // ch. 8).
    [Fact]
    public void Ideal_tubes_are_harmonic()
    {
        var options = new ColumnOptions { Losses = WallLosses.None };
        var found = Column(new CylinderSection(Mm(30), Mm(1000)), new IdealOpenEnd(), options)
            .FirstResonances(5);
        var odd = found.HarmonicityAgainst(found[0].Frequency, onlyOdd: true);
        Assert.Equal([1, 3, 5, 7, 9], odd.Select(h => h.Harmonic));
        Assert.All(odd, h => Near.Absolute(0, h.Cents, 1e-8));

        options = options with { BlownEnd = BlownEnd.Open(Length.Zero) };
        var open = Column(new CylinderSection(Mm(30), Mm(1000)), new IdealOpenEnd(), options)
            .FirstResonances(4);
        Assert.Equal([1, 2, 3, 4], open.HarmonicityAgainst(open[0].Frequency).Select(h => h.Harmonic));
    }

    // 1200·log2(f/(n·F)), the distance of the equivalent fundamental pitch f/n from F (chick2004).
    [Fact]
    public void Cents_are_those_of_the_equivalent_fundamental_pitch()
    {
        var found = Column(new ConeSection(Mm(10), Mm(50), Mm(1000)), new BaffledEnd()).FirstResonances(4);
        foreach (var h in found.HarmonicityAgainst(Frequency.FromHertz(150)))
        {
            var pitch = h.Resonance.Frequency.Hertz / h.Harmonic;
            Near.Absolute(1200 * Math.Log2(pitch / 150), h.Cents, 1e-9);
        }
    }
}
