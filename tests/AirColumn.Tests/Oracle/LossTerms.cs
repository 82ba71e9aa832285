using System.Numerics;

namespace AirColumn.Tests.Oracle;

/// <summary>
/// What the wall adds to the series impedance and the shunt admittance of a duct, as fractions of the lossless ones:
/// Z' = (jωρ/S)(1 + Series), Y' = (jωS/ρc²)(1 + Shunt).
/// </summary>
internal readonly record struct LossTerms(Complex Series, Complex Shunt)
{
    public static LossTerms At(double radius, double omega, in GasConstants gas, WallLosses model)
    {
        if (model == WallLosses.None)
        {
            return default;
        }

        // sv = a√(ωρ/μ) and st = a√(ωρCp/κ): radius over boundary-layer thickness (keefe1984's r_v and r_t).
        var sv = radius * Math.Sqrt(omega * gas.Density / gas.Viscosity);
        var st = sv * Math.Sqrt(gas.PrandtlNumber);
        if (model == WallLosses.LargeTube)
        {
            // 1/(1 − F) − 1 and F to first order in 1/s: both 2/(√j·s).
            var inverseRootOfJ = new Complex(Math.Sqrt(0.5), -Math.Sqrt(0.5));
            return new LossTerms(
                2 / sv * inverseRootOfJ,
                (gas.HeatCapacityRatio - 1) * 2 / st * inverseRootOfJ
            );
        }

        var (viscous, rest) = BesselRatio.At(sv);
        return new LossTerms(viscous / rest, (gas.HeatCapacityRatio - 1) * BesselRatio.At(st).F);
    }
}
