using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>What ends the bore, for its modes.</summary>
/// <remarks>
/// The plane wave of a straight pipe is to meet the end that <see cref="Termination"/> knows, exact where theory is: what the field of
/// the mouth lacks of that, some 1e-4 of the radius, is put before it as an impedance of the plane mode.
/// </remarks>
internal sealed class ModalEnd
{
    // An ideal open end: pressures are this much smaller than they would be.
    private const double Huge = 1e15;

    // A thinner wall makes a field that differs by less than what the plane mode is corrected for.
    private const double ThinnestRim = 1.005;

    private readonly RadialBasis basis;
    private readonly Termination load;
    private readonly GasConstants gas;
    private readonly double radius;
    private readonly MouthTable? mouth;
    private readonly MouthTable? outside; // what it adds, where it is not a cylinder
    private readonly bool isIdeal;

    public ModalEnd(
        RadialBasis basis,
        Bore bore,
        Termination load,
        GasConstants gas,
        MouthStore mouths,
        CancellationToken cancellationToken
    )
    {
        (this.basis, this.load, this.gas) = (basis, load, gas);
        var (end, last) = (bore.FarEnd, bore.Sections[^1]);
        radius = last.WallAt(last.LengthMetres).Radius;
        isIdeal = end is IdealOpenEnd && load.IsSmooth;
        if (!load.IsClosed && !isIdeal)
        {
            var outer = end is OpenEnd { WallMetres: var wall }
                ? Math.Max(1 + wall / radius, ThinnestRim)
                : double.PositiveInfinity;
            var profile = end is OpenEnd ? OuterProfile.Of(bore, outer - 1) : null;
            (mouth, outside) = mouths.Tables(outer, profile, basis, cancellationToken);
        }
    }

    /// <summary>The state at the end.</summary>
    public void Start(ModalState state)
    {
        var n = state.Modes;
        state.H.AsSpan().Clear();
        if (isIdeal)
        {
            for (var i = 0; i < n; i++)
            {
                state.H[i * n + i] = ComplexVector.All(Huge * radius);
            }
        }
        else if (mouth is not null)
        {
            Radiate(state);
        }

        // The wave that goes out: half of P + W/(jkS).
        var k = state.Wavenumber(gas.SpeedOfSound);
        var flow = new ComplexVector(RealVector.Zero, Vector.Create(-0.5 / (Math.PI * radius * radius)) / k);
        for (var i = 0; i < n; i++)
        {
            state.T[i] = flow * state.H[i];
        }

        state.T[0] = 0.5 + state.T[0];
    }

    private void Radiate(ModalState state)
    {
        var n = state.Modes;
        var k = state.Wavenumber(gas.SpeedOfSound);
        var omega = state.Frequencies.Omega;
        mouth!.AddTo(k, radius, state.H);
        var exact = ComplexVector.Each(i =>
        {
            var at = omega[i];
            var (p, u) = load.At(at);
            return p / (u * new Complex(0, at * gas.Density));
        });
        state.H[0] += exact - StraightPipe(state);
        outside?.AddTo(k, radius, state.H);
        LaneSymmetric.Invert(state.H, n);
    }

    // What the plane wave of a straight pipe meets, its higher modes going back into the pipe.
    private ComplexVector StraightPipe(ModalState state)
    {
        var n = state.Modes;
        var room = state.Room(n * n + n);
        var turned = room[..(n * n)];
        var k = state.Wavenumber(gas.SpeedOfSound);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                turned[(n - 1 - i) * n + n - 1 - j] = state.H[i * n + j];
            }

            if (i > 0)
            {
                var across = basis.Gamma[i] / radius;
                var decay = new ComplexVector(Vector.Create(across * across) - k * k, RealVector.Zero);
                turned[(n - 1 - i) * (n + 1)] += (Math.PI * radius * radius * decay.Root()).Inverse();
            }
        }

        room[(n * n)..].Clear();
        LaneSymmetric.Eliminate(turned, n, n - 1, room[(n * n)..]);
        return turned[n * n - 1];
    }
}
