using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Tests.Acoustics.Vectors;

/// <summary>Against the runtime's own functions.</summary>
public class TrigonometryTests
{
    [Theory]
    [InlineData(1, 2e-16)]
    [InlineData(100, 3e-16)]
    [InlineData(1e5, 2e-15)]
    public void Sine_and_cosine_are_those_of_the_runtime(double largest, double allowed)
    {
        var random = new Random(20);
        for (var i = 0; i < 5000; i++)
        {
            var x = largest * (2 * random.NextDouble() - 1);
            Trigonometry.SinCos(Vector.Create(x), out var sin, out var cos);
            Near.Absolute(Math.Sin(x), sin[0], allowed, x);
            Near.Absolute(Math.Cos(x), cos[0], allowed, x);
        }
    }

    // Multiples of π/2, where what is left is small.
    [Fact]
    public void Near_quarter_turns_the_small_one_keeps_its_digits()
    {
        for (var n = -1000; n <= 1000; n++)
        {
            var x = n * Math.PI / 2 + 1e-5;
            Trigonometry.SinCos(Vector.Create(x), out var sin, out var cos);
            Near.Relative(Math.Sin(x), sin[0], 1e-12, x);
            Near.Relative(Math.Cos(x), cos[0], 1e-12, x);
        }
    }
}
