using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// The wall-loss functions at eight arguments s, with their slopes s·d/ds: εv of the viscous argument, and εt/(γ − 1) of the thermal.
/// </summary>
internal readonly record struct LossLanes(
    ComplexLanes Series,
    ComplexLanes SeriesSlope,
    ComplexLanes Shunt,
    ComplexLanes ShuntSlope
)
{
    /// <summary>At viscous arguments; the thermal ones are √Pr times as large.</summary>
    public static LossLanes At(WallLosses model, Vector512<double> viscous, double rootPrandtl)
    {
        switch (model)
        {
            case WallLosses.None:
                return default;
            case WallLosses.LargeTube:
                // 2/(√j·s).
                var first = Vector512.Create(2 * Math.Sqrt(0.5)) / viscous;
                var series = new ComplexLanes(first, -first);
                var shunt = (1 / rootPrandtl) * series;
                return new(series, -series, shunt, -shunt);
            default:
                var (lowest, highest) = (viscous.GetElement(0), viscous.GetElement(0));
                for (var i = 1; i < ComplexLanes.Count; i++)
                {
                    lowest = Math.Min(lowest, viscous.GetElement(i));
                    highest = Math.Max(highest, viscous.GetElement(i));
                }

                LossPieces.At(viscous, lowest, highest, rootPrandtl, out var epsilon, out var f);
                // s·F' = 2(1 − F) − j·s²F²/2, by Riccati's equation of J1/J0 (DLMF 10.6.3); 1 − F = 1/(1 + ε).
                var grown = 1 + epsilon;
                var rest = grown.Inverse();
                var slope = Slope(rest, epsilon * rest, viscous) * grown * grown;
                return new(epsilon, slope, f, Slope(1 + -f, f, viscous * rootPrandtl));
        }
    }

    private static ComplexLanes Slope(ComplexLanes rest, ComplexLanes f, Vector512<double> s) =>
        2 * rest - (0.5 * s * s * (f * f)).TimesJ();
}
