using System.Globalization;
using System.Numerics;

namespace AirColumn.Tests;

/// <summary>Comparisons with the tolerance said each time.</summary>
internal static class Near
{
    public static void Relative(double expected, double actual, double tolerance, object? context = null) =>
        Check(Math.Abs(actual - expected) / Math.Abs(expected), tolerance, expected, actual, context);

    public static void Relative(Complex expected, Complex actual, double tolerance, object? context = null) =>
        Check(Complex.Abs(actual - expected) / Complex.Abs(expected), tolerance, expected, actual, context);

    public static void Absolute(double expected, double actual, double tolerance, object? context = null) =>
        Check(Math.Abs(actual - expected), tolerance, expected, actual, context);

    private static void Check(
        double error,
        double tolerance,
        object expected,
        object actual,
        object? context
    ) =>
        // Written so that NaN fails.
        Assert.True(
            error <= tolerance,
            string.Create(
                CultureInfo.InvariantCulture,
                $"expected {expected:R}, got {actual:R}: error {error:E2}, allowed {tolerance:E2} {context}"
            )
        );
}
