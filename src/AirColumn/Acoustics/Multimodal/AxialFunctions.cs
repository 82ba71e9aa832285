namespace AirColumn.Acoustics.Multimodal;

/// <summary>Polynomials along a stretch of bore: inner ones that vanish at both ends, then those of the far and of the near end.</summary>
internal static class AxialFunctions
{
    /// <summary>All at s, 0 at the near end to 1 at the far end, and their derivatives in s.</summary>
    public static void At(double s, Span<double> value, Span<double> slope)
    {
        var inner = value.Length - 2;
        // (P(k+2) − P(k))/√(4k + 6): integrals of Legendre's.
        var x = 2 * s - 1;
        var (before, p) = (1.0, x);
        for (var k = 0; k < inner; k++)
        {
            var next = ((2 * k + 3) * x * p - (k + 1) * before) / (k + 2);
            var norm = Math.Sqrt(4 * k + 6);
            (value[k], slope[k]) = ((next - before) / norm, 2 * (2 * k + 3) * p / norm);
            (before, p) = (p, next);
        }

        (value[inner], slope[inner]) = (s, 1);
        (value[inner + 1], slope[inner + 1]) = (1 - s, -1);
    }
}
