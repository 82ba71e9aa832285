using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// A cylinder, or a bend taken for one but for the mass of its plane mode: each mode by itself, exactly, with what the walls do to the
/// plane wave done to all.
/// </summary>
internal sealed class PipePiece(
    RadialBasis basis,
    double radius,
    double length,
    double inertia,
    GasConstants gas,
    WallLosses losses
) : ModalPiece
{
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public override void Carry(ModalState state)
    {
        var n = state.Modes;
        var room = state.Room(n * n + 3 * n);
        var g = room[..(n * n)];
        var h = room.Slice(n * n, n);
        var e = room.Slice(n * n + n, n);
        var t = room.Slice(n * n + 2 * n, n);
        Modes(state, h, e);
        // B = (h + H)⁻¹, and for the waves at the near end G = (1 − e²)/h + 2eBe, e = exp(−κL): then H = 2G⁻¹ − h.
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                g[i * n + j] = i == j ? state.H[i * n + j] + h[i] : state.H[i * n + j];
            }
        }

        LaneSymmetric.Invert(g, n);
        for (var j = 0; j < n; j++)
        {
            var sum = ComplexLanes.Zero;
            for (var i = 0; i < n; i++)
            {
                sum = ComplexLanes.MultiplyAdd(state.T[i], g[i * n + j], sum);
            }

            t[j] = 2 * (sum * e[j]);
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                g[i * n + j] = 2 * (e[i] * g[i * n + j] * e[j]);
            }

            g[i * n + i] += (ComplexLanes.One - e[i] * e[i]) * h[i].Inverse();
        }

        LaneSymmetric.Invert(g, n);
        for (var i = 0; i < n; i++)
        {
            var sum = ComplexLanes.Zero;
            for (var j = 0; j < n; j++)
            {
                state.H[i * n + j] = 2 * g[i * n + j];
                sum = ComplexLanes.MultiplyAdd(t[j], g[j * n + i], sum);
            }

            state.H[i * n + i] -= h[i];
            state.T[i] = sum;
        }
    }

    /// <summary>What each mode by itself carries, W = h·P, and what is left of it over the length, exp(−κL).</summary>
    private void Modes(ModalState state, Span<ComplexLanes> h, Span<ComplexLanes> e)
    {
        var k = state.Wavenumber(gas.SpeedOfSound);
        var (series, shunt) = SectionLanes.LossesAt(radius, gas, losses, state.Frequencies);
        var stretch = 1 + series;
        var compression = (k * k) * (1 + shunt);
        var area = Math.PI * radius * radius;
        for (var i = 0; i < state.Modes; i++)
        {
            var across = basis.Gamma[i] / radius;
            var mass = i == 0 ? inertia * stretch : stretch;
            var square = (ComplexLanes.All(across * across) - compression) * mass;
            // Adding nothing turns −0 into 0: a wave without losses goes the right way.
            var kappa = (square + ComplexLanes.Zero).Root();
            h[i] = area * (kappa / mass);
            var (sin, cos) = Vector512.SinCos(kappa.Im * length);
            var size = Vector512.Exp(-length * kappa.Re);
            e[i] = new ComplexLanes(size * cos, -(size * sin));
        }
    }
}
