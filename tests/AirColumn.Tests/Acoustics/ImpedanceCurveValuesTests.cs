using System.Globalization;
using System.Numerics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>A lossless closed tube, Z = −j·ρc/S·cot kL (chaigne2016, ch. 7, from memory), in each form in which a curve is read.</summary>
public class ImpedanceCurveValuesTests
{
    private const double Metres = 0.5;

    private static readonly Column Tube = new(
        Bore.Build().Cylinder(Mm(20), Length.FromMeters(Metres)).ClosedEnd(),
        TableAir,
        Lossless
    );

    private static readonly ImpedanceCurve Curve = Tube.Impedance(FrequencyGrid.FromHertz(100, 250, 300));

    [Fact]
    public void Each_form_is_the_formula()
    {
        var z0 = 1.2045 * 343.37 / (Math.PI * 0.01 * 0.01);
        for (var i = 0; i < Curve.Count; i++)
        {
            var cot = 1 / Math.Tan(2 * Math.PI * Curve.Grid.Hertz[i] / 343.37 * Metres);
            Close(z0 * Math.Abs(cot), Curve.Magnitude()[i]);
            Close(cot > 0 ? -Math.PI / 2 : Math.PI / 2, Curve.Phase()[i]);
            Close(20 * Math.Log10(Math.Abs(cot)), Curve.Decibels()[i]);
            Close(new Complex(0, -cot), Curve.Normalised()[i]);
            Close(1 / new Complex(0, -cot * z0), Curve.Admittance()[i]);
            // All comes back, in the phase of twice the length.
            Close(Complex.FromPolarCoordinates(1, -2 * Math.Atan(1 / cot)), Curve.Reflection()[i]);
        }

        static void Close(Complex expected, Complex value) =>
            Assert.Equal(0, Complex.Abs(value / expected - 1), 1e-9);
    }

    [Fact]
    public void Csv_is_read_back_to_the_last_digit()
    {
        using var text = new StringWriter(CultureInfo.GetCultureInfo("ar-SA"));
        Curve.WriteCsv(text);
        var lines = text.ToString().Split('\n');
        Assert.Equal("frequency_hz,re,im", lines[0]);
        for (var i = 0; i < Curve.Count; i++)
        {
            double[] numbers =
            [
                .. lines[i + 1].Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)),
            ];
            Assert.Equal([Curve.Grid.Hertz[i], Curve.Real[i], Curve.Imaginary[i]], numbers);
        }
    }

    [Fact]
    public void Several_parameters_are_set_at_once()
    {
        var other = ColumnParameter.WithAll(
            Tube,
            (ColumnParameter.SectionLength(0), 0.6),
            (ColumnParameter.Diameter(0), 0.03)
        );
        Assert.Equal(0.6, other.Bore.Sections[0].Length.Meters, 1e-15);
        Assert.Equal(0.03, ColumnParameter.Diameter(0).Of(other), 1e-15);
        Assert.Equal(Metres, Tube.Bore.Length.Meters, 1e-15);
    }

    [Fact]
    public void Curves_and_columns_say_what_they_are()
    {
        Assert.Equal("Input impedance at 3 frequencies, 100 Hz to 300 Hz", Curve.ToString());
        Assert.StartsWith(Tube.Bore.ToString(), Tube.ToString(), StringComparison.Ordinal);
        Assert.Equal("1 frequency, 440 Hz", FrequencyGrid.FromHertz(440).ToString());
    }
}
