using System.Numerics;
using MathNet.Numerics;

namespace AirColumn.Tables;

/// <summary>
/// What a small source on a rigid cylinder of radius r hears of itself at kr, beyond the static limit: G(kr) − G(0), where the pressure is
/// jωρ/r·G for unit flow. The sum over the circular modes of the cylinder (morse1948). Writes CylinderWallTable.cs:
/// dotnet run -c Release --project benchmarks/AirColumn.Tables -- cylinder-wall --write
/// </summary>
internal static class CylinderWall
{
    private const double HighestKr = 6;
    private const int Count = 20;

    // Circular modes and axial wavenumbers, over r, up to which the sum is taken; beyond, the wall is as good as plane.
    private const double Reach = 80;
    private const int Points = 3000;

    public static IEnumerable<Table> Tables { get; } =
    [
        new(
            "cylinder-wall",
            "Radiation/CylinderWallTable.cs",
            ["Inertance", "Resistance"],
            Count,
            i =>
            {
                var kr = HighestKr * Math.Pow((i + 1.0) / Count, 2);
                var g = Self(kr);
                // Of the resistance, what is more than in free space, over that.
                return [g.Real, -g.Imaginary * 4 * Math.PI / kr - 1];
            },
            "F5",
            2e-5
        ),
    ];

    private static Complex Self(double k)
    {
        var sum = Complex.Zero;
        for (var m = 0; m < Reach; m++)
        {
            var order = m;
            var edge = Math.Sqrt(Reach * Reach - m * m);
            // Below k and above it in variables in which the kernel is smooth there.
            var part = Integral(
                0,
                Math.PI / 2,
                angle =>
                    (Kernel(order, k, k * Math.Sin(angle)) - Still(order, k * Math.Sin(angle)))
                    * k
                    * Math.Cos(angle)
            );
            if (edge > k)
            {
                part += Integral(
                    0,
                    Math.Sqrt(Math.Sqrt(edge * edge - k * k)),
                    s =>
                    {
                        // The wavenumber across, s², and that along the cylinder.
                        var across = s * s;
                        var along = Math.Sqrt(k * k + across * across);
                        return (Still(order, across) - Still(order, along)) * 2 * s * across / along;
                    }
                );
            }

            sum += (m == 0 ? 1 : 2) * part;
        }

        var beyond = (Reach - Math.Sqrt(Reach * Reach - k * k)) / (2 * Math.PI);
        return sum / (2 * Math.PI * Math.PI) + beyond;
    }

    // −H(x)/(x·H'(x)), x² = k² − along², of the outgoing Hankel function for exp(+jωt).
    private static Complex Kernel(int m, double k, double along)
    {
        var x = Math.Sqrt(Math.Max(0, k * k - along * along));
        if (x < 1e-9 || (m > 0 && m * Math.Log(2 * m / (Math.E * x)) > 200))
        {
            return Still(m, Math.Max(x, 1e-9));
        }

        var h = Hankel(m, x);
        var slope = m == 0 ? -Hankel(1, x) : Hankel(m - 1, x) - m / x * h;
        return -h / (x * slope);

        static Complex Hankel(int n, double at) =>
            new(SpecialFunctions.BesselJ(n, at), -SpecialFunctions.BesselY(n, at));
    }

    // K(x)/(−x·K'(x)): the same where nothing is radiated. From K₀/K₁ upwards.
    private static double Still(int m, double x)
    {
        x = Math.Max(x, 1e-9);
        var ratio = SpecialFunctions.BesselKScaled(0, x) / SpecialFunctions.BesselKScaled(1, x);
        if (m == 0)
        {
            return ratio / x;
        }

        for (var n = 1; n < m; n++)
        {
            ratio = 1 / (ratio + 2 * n / x);
        }

        return 1 / (x * ratio + m);
    }

    private static Complex Integral(double from, double to, Func<double, Complex> of)
    {
        var sum = Complex.Zero;
        for (var i = 0; i < Points; i++)
        {
            sum += of(from + (to - from) * (i + 0.5) / Points);
        }

        return sum * ((to - from) / Points);
    }
}
