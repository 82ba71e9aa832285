using System.Numerics;

namespace AirColumn.Resonances;

/// <summary>
/// The least |g| of an analytic function along the real axis, and the complex zero next to it, from values on the axis
/// alone.
/// </summary>
/// <remarks>
/// Near a resonance 1/Z (or Z) is smooth on the scale of the spacing of modes, not of the width of the peak, so a
/// polynomial of fourth degree through five points spanning the peak represents it closely. Its values are complex, so
/// the place of least modulus comes out to rounding, not to the square root of it as when comparing moduli.
/// </remarks>
internal static class Extremum
{
    private const int MostRounds = 40;

    internal readonly record struct Result(double Place, Complex Zero, Complex Value);

    /// <summary>
    /// Starts at <paramref name="guess"/> and stays between the two limits; null where no extremum is found.
    /// </summary>
    public static Result? Find(Func<double, Complex> function, double guess, double lower, double upper)
    {
        var centre = guess;
        var width = Math.Min(1e-3 * guess, 0.1 * Math.Min(guess - lower, upper - guess));
        var previousStep = double.PositiveInfinity;
        for (var round = 0; round < MostRounds; round++)
        {
            if (!(width > 0))
            {
                return null;
            }

            var fit = Quartic.Through(function, centre, width);
            var zero = fit.ZeroNear();
            var (step, isLeast) = fit.LeastModulusNear(zero.Real);
            var reach = Math.Max(Math.Abs(centre - lower), Math.Abs(upper - centre)) / width;
            if (!isLeast || !(Math.Abs(step) < reach))
            {
                step = Math.Clamp(double.IsFinite(step) ? step : 0, -2, 2);
            }

            // Beyond its five points a polynomial is a guide, not a value.
            var next = centre + width * Math.Clamp(step, -5, 5);
            if (next <= lower || next >= upper)
            {
                return null;
            }

            var settled = Math.Abs(next - centre) <= 4e-15 * centre || Math.Abs(step) < 1e-9;
            if (isLeast && (settled || (Math.Abs(step) < 1e-4 && Math.Abs(step) >= previousStep)))
            {
                var pole = centre + width * zero;
                return new Result(next, pole, function(next));
            }

            previousStep = Math.Abs(step) < 1e-4 ? Math.Abs(step) : double.PositiveInfinity;
            // Span about half a peak: wide enough to stand above rounding, narrow against the spacing of modes.
            var halfWidth = Math.Abs(zero.Imaginary) * width;
            var room = 0.5 * Math.Min(next - lower, upper - next);
            width = Math.Min(Math.Clamp(0.3 * halfWidth, 1e-7 * next, 0.02 * next), room);
            centre = next;
        }

        return null;
    }

    // A polynomial in t = (x − centre)/width through t = −2, −1, 0, 1, 2.
    private readonly struct Quartic(Complex c0, Complex c1, Complex c2, Complex c3, Complex c4)
    {
        public static Quartic Through(Func<double, Complex> f, double centre, double width)
        {
            var (a, b, m, d, e) = (
                f(centre - 2 * width),
                f(centre - width),
                f(centre),
                f(centre + width),
                f(centre + 2 * width)
            );
            return new Quartic(
                m,
                (a - 8 * b + 8 * d - e) / 12,
                (-a + 16 * b - 30 * m + 16 * d - e) / 24,
                (-a + 2 * b - 2 * d + e) / 12,
                (a - 4 * b + 6 * m - 4 * d + e) / 24
            );
        }

        // Newton from the middle.
        public Complex ZeroNear()
        {
            var t = Complex.Zero;
            for (var i = 0; i < 50; i++)
            {
                var (value, slope, _) = At(t);
                var step = value / slope;
                t -= step;
                if (!(Complex.Abs(step) > 1e-15 * Complex.Abs(t)))
                {
                    break;
                }
            }

            return t;
        }

        // Newton on d|g|²/dt = 0 from the real part of the zero; whether it is a minimum.
        public (double Step, bool IsLeast) LeastModulusNear(double start)
        {
            var t = start;
            var isLeast = false;
            for (var i = 0; i < 50; i++)
            {
                var (value, slope, curvature) = At(t);
                var first = (Complex.Conjugate(value) * slope).Real;
                var second =
                    slope.Real * slope.Real
                    + slope.Imaginary * slope.Imaginary
                    + (Complex.Conjugate(value) * curvature).Real;
                isLeast = second > 0;
                if (!isLeast)
                {
                    break;
                }

                var step = first / second;
                t -= step;
                if (Math.Abs(step) <= 1e-15 * Math.Abs(t))
                {
                    break;
                }
            }

            return (t, isLeast);
        }

        private (Complex Value, Complex Slope, Complex Curvature) At(Complex t) =>
            (
                c0 + t * (c1 + t * (c2 + t * (c3 + t * c4))),
                c1 + t * (2 * c2 + t * (3 * c3 + t * 4 * c4)),
                2 * c2 + t * (6 * c3 + t * 12 * c4)
            );
    }
}
