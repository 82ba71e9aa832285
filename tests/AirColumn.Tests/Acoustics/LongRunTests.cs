using System.Numerics;
using AirColumn.Tests.Oracle;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>Many cones in a row that attenuate so much that their product would overflow.</summary>
public class LongRunTests
{
    [Fact]
    [Trait("Speed", "Slow")]
    public void A_long_capillary_of_cones_answers_as_it_does_section_by_section()
    {
        var builder = Bore.Build();
        for (var i = 0; i < 150; i++)
        {
            builder = builder.Cone(Mm(0.2), Mm(0.22), Metres(1)).Cone(Mm(0.22), Mm(0.2), Metres(1));
        }

        var column = new Column(builder.OpenEnd(), TableAir, OneDimensional);
        double[] hertz = [100, 500, 1000];
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        column.Impedance(hertz, real, imaginary);
        for (var i = 0; i < hertz.Length; i++)
        {
            var expected = column.InputImpedance(2 * Math.PI * hertz[i]);
            var difference = Complex.Abs(new Complex(real[i], imaginary[i]) - expected);
            // The tolerance of the sections one by one.
            Near.Absolute(0, difference / Complex.Abs(expected), 1e-10);
        }
    }
}
