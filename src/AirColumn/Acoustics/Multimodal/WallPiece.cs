using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// A short stretch of bore whose radius changes: the equations of the coupled modes along it by Galerkin's method, and what is
/// inside taken out.
/// </summary>
/// <remarks>
/// With p = Σ Pₙ(x)·φₙ(r/a(x)) the wave equation in its weak form is, for every q of the same form,
/// <code>
/// ∫ S·(Q' − ÃQ)ᵀ(P' − ÃP) + (S/a²)·QᵀΓ²P − k²S·QᵀP − S·Fv·(vᵀQ')(vᵀP') − k²S(1 + a'²)(γ − 1)Ft·(wᵀQ)(wᵀP) dx = [QᵀW]
/// </code>
/// Ã = (a'/a)·∫2ξφₘξφₙ'dξ, w the modes at the wall, v the same or less (<see cref="WallLayer"/>) (source: pagneux1996, whose equations these are
/// between two places; the losses are a
/// boundary layer as thick as the radius of curvature a/cos of the wall allows, berggren2018). The matrix is symmetric, so that
/// reciprocity holds, and without losses real, so that energy is kept, whatever the polynomials along x leave out.
/// </remarks>
internal sealed class WallPiece : ModalPiece
{
    private readonly RadialBasis basis;
    private readonly Section section;
    private readonly double from;
    private readonly double length;
    private readonly int degree;
    private readonly GasConstants gas;
    private readonly BoundaryLayer losses;
    private readonly int modes;
    private readonly int size; // of the system: modes times functions along x
    private readonly int functions;
    private readonly double speedOfSound;
    private readonly double[] stiffness;
    private readonly double[] inertia;
    private readonly WallLayer? layer;
    private readonly double[] wall; // the modes there

    /// <summary>Between two places of a section, m from its inlet, with polynomials of a degree along it.</summary>
    public WallPiece(
        RadialBasis basis,
        Section section,
        double from,
        double to,
        int degree,
        GasConstants gas,
        BoundaryLayer losses
    )
    {
        (this.basis, this.section, this.from, this.degree) = (basis, section, from, degree);
        (this.gas, this.losses) = (gas, losses);
        modes = basis.Count;
        functions = degree + 1;
        size = modes * functions;
        speedOfSound = gas.SpeedOfSound;
        wall = basis.AtWall;
        stiffness = new double[size * size];
        inertia = new double[functions * functions];
        var (places, weights) = GaussRule.OnUnit(degree + 2);
        length = to - from;
        var (value, slope) = (new double[functions], new double[functions]);
        layer = losses.IsLossless
            ? null
            : new WallLayer(functions, places.Length, wall.Skip(1).Sum(w => w * w), gas, losses);
        for (var g = 0; g < places.Length; g++)
        {
            var at = section.WallAt(from + places[g] * length);
            AxialFunctions.At(places[g], value, slope);
            var weight = weights[g] * length * Math.PI * at.Radius * at.Radius;
            for (var i = 0; i < functions; i++)
            {
                slope[i] /= length;
            }

            Add(basis, at, weight, value, slope);
            layer?.Add(g, at, Stretch(at), weight, value, slope);
        }
    }

    public override double Length => length;

    public override (ModalPiece Near, ModalPiece Far) Split(double at) =>
        (
            new WallPiece(basis, section, from, from + at, degree, gas, losses),
            new WallPiece(basis, section, from + at, from + length, degree, gas, losses)
        );

    public override (double Friction, double Heat) Loss(in ModalEnds ends, in FrequencyVector frequency)
    {
        if (layer is null)
        {
            return default;
        }

        var p = Inside(ends.Pressure, ends.FarPressure, frequency);
        // The pressure at the wall, function by function.
        var (plane, rest) = (new Complex[functions], new Complex[functions]);
        for (var i = 0; i < size; i++)
        {
            (i % modes == 0 ? plane : rest)[i / modes] += wall[i % modes] * p[i];
        }

        var (friction, heat) = layer.Taken(frequency.Lowest, plane, rest);
        var scale = 0.5 / (frequency.Lowest * gas.Density);
        return (scale * friction, scale * heat);
    }

    // All unknowns, from those at both ends.
    private Complex[] Inside(Complex[] near, Complex[] far, in FrequencyVector frequency)
    {
        var state = new ModalState(modes, frequency);
        var a = new ComplexVector[size * size];
        Assemble(state, a, new ComplexVector[3 * functions * functions]);
        var inner = size - 2 * modes;
        Complex[] p = [.. new Complex[inner], .. far, .. near];
        var matrix = new Complex[inner * inner];
        for (var i = 0; i < inner; i++)
        {
            for (var j = 0; j < size; j++)
            {
                var entry = (i >= j ? a[i * size + j] : a[j * size + i]).At(0);
                if (j < inner)
                {
                    matrix[i * inner + j] = entry;
                }
                else
                {
                    p[i] -= entry * p[j];
                }
            }
        }

        // Gauss, without pivoting: the stretch is short against the wave.
        for (var k = 0; k < inner; k++)
        {
            for (var i = k + 1; i < inner; i++)
            {
                var factor = matrix[i * inner + k] / matrix[k * inner + k];
                for (var j = k + 1; j < inner; j++)
                {
                    matrix[i * inner + j] -= factor * matrix[k * inner + j];
                }

                p[i] -= factor * p[k];
            }
        }

        for (var k = inner - 1; k >= 0; k--)
        {
            for (var j = k + 1; j < inner; j++)
            {
                p[k] -= matrix[k * inner + j] * p[j];
            }

            p[k] /= matrix[k * inner + k];
        }

        return p;
    }

    // Of wall over axis, squared. With one mode the wall counts as it does for plane waves.
    private double Stretch(in Wall at) => modes > 1 ? 1 + at.Slope * at.Slope : 1;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public override void Carry(ModalState state)
    {
        var room = state.Room(size * size + size + 3 * functions * functions);
        var a = room[..(size * size)];
        var row = room.Slice(size * size, size);
        Assemble(state, a, room[(size * size + size)..]);
        row.Clear();
        // Functions in the order inner ones, far end, near end.
        var far = size - 2 * modes;
        for (var m = 0; m < modes; m++)
        {
            row[far + m] = state.T[m];
            for (var n = 0; n <= m; n++)
            {
                a[(far + m) * size + far + n] += state.H[m * modes + n];
            }
        }

        LaneSymmetric.Eliminate(a, size, size - modes, row);
        var near = size - modes;
        for (var m = 0; m < modes; m++)
        {
            state.T[m] = row[near + m];
            for (var n = 0; n <= m; n++)
            {
                var entry = a[(near + m) * size + near + n];
                state.H[m * modes + n] = entry;
                state.H[n * modes + m] = entry;
            }
        }
    }

    private void Assemble(ModalState state, Span<ComplexVector> a, Span<ComplexVector> losses)
    {
        var k = state.Wavenumber(speedOfSound);
        var square = k * k;
        layer?.At(state.Frequencies, square, losses);
        for (var i = 0; i < functions; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var mass = square * -inertia[i * functions + j];
                var each = functions * functions;
                for (var m = 0; m < modes; m++)
                {
                    var at = (i * modes + m) * size + j * modes;
                    for (var n = 0; n < modes; n++)
                    {
                        var real = Vector.Create(stiffness[at + n]) + (m == n ? mass : default);
                        if (layer is null)
                        {
                            a[at + n] = new ComplexVector(real, default);
                            continue;
                        }

                        var kind = (m == 0 ? 0 : 1) + (n == 0 ? 0 : 1);
                        var lost = (wall[m] * wall[n]) * losses[kind * each + i * functions + j];
                        a[at + n] = new ComplexVector(real + lost.Re, lost.Im);
                    }
                }
            }
        }
    }

    private void Add(RadialBasis basis, in Wall at, double weight, double[] value, double[] slope)
    {
        var turn = at.Slope / at.Radius;
        Span<double> product = stackalloc double[modes * modes]; // ÃᵀÃ + Γ²/a²
        for (var m = 0; m < modes; m++)
        {
            for (var n = 0; n < modes; n++)
            {
                var sum = 0.0;
                for (var l = 0; l < modes; l++)
                {
                    sum += basis.Drift[l * modes + m] * basis.Drift[l * modes + n];
                }

                var across = m == n ? basis.Gamma[m] / at.Radius : 0;
                product[m * modes + n] = turn * turn * sum + across * across;
            }
        }

        for (var i = 0; i < functions; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                inertia[i * functions + j] += weight * value[i] * value[j];
                for (var m = 0; m < modes; m++)
                {
                    for (var n = 0; n < modes; n++)
                    {
                        // (ℓᵢ'φₘ − ℓᵢÃφₘ)·(ℓⱼ'φₙ − ℓⱼÃφₙ)
                        var mixed =
                            -turn
                            * (
                                slope[i] * value[j] * basis.Drift[m * modes + n]
                                + value[i] * slope[j] * basis.Drift[n * modes + m]
                            );
                        stiffness[(i * modes + m) * size + j * modes + n] +=
                            weight
                            * (
                                (m == n ? slope[i] * slope[j] : 0)
                                + mixed
                                + value[i] * value[j] * product[m * modes + n]
                            );
                    }
                }
            }
        }
    }
}
