using System.Numerics;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Tests.Acoustics.Kernels;

public class PerturbationTests
{
    // The numbers in the engine are those of the recurrence (ixaru1997), for any coefficients and any η.
    [Fact]
    public void Corrections_are_those_of_the_recurrence()
    {
        var random = new Random(5);
        for (var round = 0; round < 50; round++)
        {
            var c = Some(5);
            var eta = Some(Oscillation.Orders);
            var actual = new Perturbation([.. c.Select(ComplexLanes.All)], [.. eta.Select(ComplexLanes.All)]);
            Complex[] pairs = [c[1] * c[1], c[1] * c[2], c[2] * c[2], c[1] * c[3]];
            ComplexLanes[] functions = [actual.U, actual.USlope, actual.V, actual.VSlope];
            for (var f = 0; f < functions.Length; f++)
            {
                var expected = Complex.Zero;
                for (var n = 0; n < eta.Length; n++)
                {
                    var row = f * PerturbationRecurrence.Rows + n + 1;
                    for (var i = 0; i < PerturbationRecurrence.Degree; i++)
                    {
                        expected +=
                            PerturbationRecurrence.First[row * PerturbationRecurrence.Degree + i]
                            * c[i + 1]
                            * eta[n];
                    }

                    for (var i = 0; i < PerturbationRecurrence.Pairs; i++)
                    {
                        expected +=
                            PerturbationRecurrence.Second[row * PerturbationRecurrence.Pairs + i]
                            * pairs[i]
                            * eta[n];
                    }
                }

                Near.Absolute(0, Complex.Abs(functions[f].Lane(4) - expected), 1e-13, f);
            }
        }

        Complex[] Some(int count) =>
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(_ => new Complex(random.NextDouble() - 0.5, random.NextDouble() - 0.5)),
            ];
    }

    // With ξ as well the recurrence has a row of its own, which no correction uses; η₅ neither.
    [Fact]
    public void No_correction_needs_more()
    {
        for (var f = 0; f < PerturbationRecurrence.Functions; f++)
        {
            foreach (var row in new[] { 0, PerturbationRecurrence.Rows - 1 })
            {
                var at = f * PerturbationRecurrence.Rows + row;
                for (var i = 0; i < PerturbationRecurrence.Degree; i++)
                {
                    Assert.Equal(
                        0,
                        PerturbationRecurrence.First[at * PerturbationRecurrence.Degree + i],
                        1e-14
                    );
                    Assert.Equal(
                        0,
                        PerturbationRecurrence.Second[at * PerturbationRecurrence.Pairs + i],
                        1e-14
                    );
                }
            }
        }
    }
}
