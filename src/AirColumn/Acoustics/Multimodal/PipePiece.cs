using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;

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
    BoundaryLayer losses
) : ModalPiece
{
    public override double Length => length;

    public override (ModalPiece Near, ModalPiece Far) Split(double at) =>
        (Part(at), Part(Math.Max(length - at, 0)));

    public override (double Friction, double Heat) Loss(in ModalEnds ends, in FrequencyVector frequency)
    {
        // ½∫Re(Z')·|U|² + ½∫Re(Y')·|P|² dx, mode by mode, of P = f·exp(−κx) + g·exp(−κ(L − x)).
        var omega = frequency.Lowest;
        losses.At(radius, frequency, out var mobility, out var compliance);
        var (series, shunt) = (1 / mobility.At(0), compliance.At(0));
        var area = Math.PI * radius * radius;
        var n = ends.Pressure.Length;
        var (h, e) = (new ComplexVector[n], new ComplexVector[n]);
        var kappa = new ComplexVector[n];
        Modes(frequency, h, e, kappa);
        var (friction, heat) = (0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            var (own, rate) = (h[i].At(0), kappa[i].At(0));
            var f = 0.5 * (ends.Pressure[i] + ends.Flow[i] / own);
            var g = 0.5 * (ends.FarPressure[i] - ends.FarFlow[i] / own);
            var apart = (Norm(f) + Norm(g)) * Mean(2 * rate.Real * length);
            var turn = rate.Imaginary * length;
            var mixed =
                2
                * (f * Complex.Conjugate(g)).Real
                * Math.Exp(-rate.Real * length)
                * (turn == 0 ? 1 : Math.Sin(turn) / turn);
            var mass = (i == 0 ? inertia : 1) / (area * omega * gas.Density);
            var spring = omega * area / (gas.Density * gas.SpeedOfSound * gas.SpeedOfSound);
            friction -= 0.5 * mass * series.Imaginary * Norm(own) * length * (apart - mixed);
            heat -= 0.5 * spring * shunt.Imaginary * length * (apart + mixed);
        }

        return (friction, heat);

        static double Norm(Complex z) => z.Real * z.Real + z.Imaginary * z.Imaginary;

        // (1 − exp(−x))/x
        static double Mean(double x) => x < 1e-8 ? 1 - x / 2 : -Math.Exp(-x) / x + 1 / x;
    }

    private PipePiece Part(double part) => new(basis, radius, part, inertia, gas, losses);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public override void Carry(ModalState state)
    {
        var n = state.Modes;
        var room = state.Room(n * n + 4 * n);
        var g = room[..(n * n)];
        var h = room.Slice(n * n, n);
        var e = room.Slice(n * n + n, n);
        var t = room.Slice(n * n + 2 * n, n);
        Modes(state.Frequencies, h, e, state.Room(n * n + 4 * n).Slice(n * n + 3 * n, n));
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
            var sum = ComplexVector.Zero;
            for (var i = 0; i < n; i++)
            {
                sum = ComplexVector.MultiplyAdd(state.T[i], g[i * n + j], sum);
            }

            t[j] = 2 * (sum * e[j]);
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                g[i * n + j] = 2 * (e[i] * g[i * n + j] * e[j]);
            }

            g[i * n + i] += (ComplexVector.One - e[i] * e[i]) * h[i].Inverse();
        }

        LaneSymmetric.Invert(g, n);
        for (var i = 0; i < n; i++)
        {
            var sum = ComplexVector.Zero;
            for (var j = 0; j < n; j++)
            {
                state.H[i * n + j] = 2 * g[i * n + j];
                sum = ComplexVector.MultiplyAdd(t[j], g[j * n + i], sum);
            }

            state.H[i * n + i] -= h[i];
            state.T[i] = sum;
        }
    }

    /// <summary>What each mode by itself carries, W = h·P, what is left of it over the length, exp(−κL), and κ.</summary>
    private void Modes(
        in FrequencyVector frequencies,
        Span<ComplexVector> h,
        Span<ComplexVector> e,
        Span<ComplexVector> kappas
    )
    {
        var k = frequencies.Omega * (1 / gas.SpeedOfSound);
        losses.At(radius, frequencies, out var mobility, out var compliance);
        var stretch = mobility.Inverse();
        var compression = (k * k) * compliance;
        var area = Math.PI * radius * radius;
        for (var i = 0; i < h.Length; i++)
        {
            var across = basis.Gamma[i] / radius;
            var mass = i == 0 ? inertia * stretch : stretch;
            var square = (ComplexVector.All(across * across) - compression) * mass;
            // Adding nothing turns −0 into 0: a wave without losses goes the right way.
            var kappa = (square + ComplexVector.Zero).Root();
            kappas[i] = kappa;
            h[i] = area * (kappa / mass);
            var (sin, cos) = Vector.SinCos(kappa.Im * length);
            var size = Vector.Exp(-length * kappa.Re);
            e[i] = new ComplexVector(size * cos, -(size * sin));
        }
    }
}
