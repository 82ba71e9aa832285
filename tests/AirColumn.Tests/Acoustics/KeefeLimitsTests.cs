using System.Numerics;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Tests.Acoustics;

/// <summary>
/// Propagation in lossy tubes of all widths against the limits and series of keefe1984, with his air of 300 K: γ = 1.4017,
/// √Pr = 0.8410 (his r_v is the radius over the viscous boundary layer, his ν is √Pr).
/// </summary>
public class KeefeLimitsTests
{
    private const double C = 347.23;
    private const double Density = 1.1769;
    private const double Viscosity = 1.846e-5;
    private const double Gamma = 1.4017;
    private const double RootPrandtl = 0.8410;

    private static readonly GasConstants Gas = new(
        C,
        Density,
        Viscosity,
        Viscosity * 1006 / (RootPrandtl * RootPrandtl),
        1006,
        Gamma
    );

    // Γ over ω/c and Zc over ρc/S.
    private static (Complex Propagation, Complex Impedance) At(double rv)
    {
        const double Omega = 2 * Math.PI * 100;
        var radius = rv / Math.Sqrt(Omega * Density / Viscosity);
        new BoundaryLayer(Gas, WallLosses.Full).At(radius, FrequencyVector.All(Omega), out var h, out var t);
        return (Complex.ImaginaryOne * Complex.Sqrt(t.At(0) / h.At(0)), 1 / Complex.Sqrt(h.At(0) * t.At(0)));
    }

    // Narrow: Poiseuille's resistance and isothermal compression, Γ = (ω/c)·2√γ·(1 + j)/r_v. The next terms are of relative
    // order r_v².
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.03)]
    [InlineData(0.01)]
    public void Narrow_tubes_conduct_as_diffusion(double rv)
    {
        var (propagation, impedance) = At(rv);
        var limit = 2 * Math.Sqrt(Gamma) / rv;
        Near.Relative(limit, propagation.Real, rv * rv);
        Near.Relative(limit, propagation.Imaginary, rv * rv);
        Near.Relative(2 / (Math.Sqrt(Gamma) * rv), impedance.Real, rv * rv);
        Near.Relative(-2 / (Math.Sqrt(Gamma) * rv), impedance.Imaginary, rv * rv);
    }

    // Wide: α = (ω/c)/(√2·r_v)·(1 + (γ−1)/ν), and the phase velocity lower by as much.
    [Theory]
    [InlineData(100)]
    [InlineData(1000)]
    [InlineData(10000)]
    public void Wide_tubes_lose_as_Kirchhoff_says(double rv)
    {
        var propagation = At(rv).Propagation;
        var limit = (1 + (Gamma - 1) / RootPrandtl) / (Math.Sqrt(2) * rv);
        Near.Relative(limit, propagation.Real, 1.1 / rv);
        Near.Relative(limit, propagation.Imaginary - 1, 1.1 / rv);
    }

    // His series with printed coefficients (from memory), meant for r_v > 2: attenuation to 0.5 % there from r_v = 10,
    // phase velocity and characteristic impedance to 0.2 %.
    [Theory]
    [InlineData(10)]
    [InlineData(20)]
    [InlineData(50)]
    [InlineData(200)]
    public void Printed_series_for_wide_tubes(double rv)
    {
        var (propagation, impedance) = At(rv);
        var r = 1 / rv;
        Near.Relative(r * (1.045 + r * (1.080 + r * 0.750)), propagation.Real, 5e-3);
        Near.Relative(1 + 1.045 * r, propagation.Imaginary, 2e-3);
        Near.Relative(1 + 0.369 * r, impedance.Real, 2e-3);
        Near.Absolute(-r * (0.369 + r * (1.149 + r * 0.303)), impedance.Imaginary, 1e-3 * (1 + 5 * r));
    }
}
