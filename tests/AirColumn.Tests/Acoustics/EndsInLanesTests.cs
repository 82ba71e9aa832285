using System.Numerics;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>Radiating ends at several frequencies at a time are what they are at one.</summary>
public class EndsInLanesTests
{
    [Theory]
    [InlineData(40)]
    [InlineData(25)]
    public void Reflection_and_reactance_are_those_at_one_frequency(double inlet)
    {
        foreach (
            var end in new BoreEnd[]
            {
                new OpenEnd(Mm(0)),
                new OpenEnd(Mm(3)),
                new OpenEnd(Mm(300)),
                new BaffledEnd(),
                new IdealOpenEnd(),
                new ClosedEnd(),
            }
        )
        {
            var column = Column(new ConeSection(Mm(inlet), Mm(40), Mm(500)), end);
            var load = column.Model.End;
            var highest = 0.99 * Math.Min(column.HighestHertz, 1e4);
            for (var hertz = 1.0; hertz < highest; hertz *= 1.07)
            {
                var omega = 2 * Math.PI * hertz * (RealVector.One + 0.01 * RealVector.Indices);
                omega = Vector.Min(omega, Vector.Create(2 * Math.PI * highest));
                var (reflections, reactances) = (load.ReflectionAt(omega), load.LosslessReactance(omega));
                var (pressures, flows) = load.At(omega);
                for (var i = 0; i < RealVector.Count; i++)
                {
                    var (p, u) = load.At(omega[i]);
                    Assert.Equal(u, flows.At(i));
                    var z = load.Scales.Impedance;
                    // Each part for itself, but for the rounding of numbers up to 1: what is radiated is little beside the mass.
                    var (resistance, off) = (p.Real / z, (pressures.At(i) - p) / z);
                    Near.Absolute(0, off.Real / (1e-11 * resistance + 1e-15), 1, $"{end}, {hertz} Hz");
                    Near.Absolute(0, off.Imaginary, 1e-12 * Complex.Abs(p / z) + 1e-15, $"{end}, {hertz} Hz");
                    // Some units in the last place of numbers up to 1.
                    var expected = (p - z * u) / (p + z * u);
                    Assert.True(Complex.Abs(expected - reflections.At(i)) < 1e-14, $"{end}, {hertz} Hz");
                    if (!load.IsClosed)
                    {
                        Near.Absolute(load.LosslessReactance(omega[i]) / z, reactances[i] / z, 1e-13);
                    }
                }
            }
        }
    }
}
