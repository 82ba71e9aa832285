using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>What lies beyond a place, as the openings on this side of it hear it outside.</summary>
/// <remarks>
/// Beyond any place there is the wave (P, U)·a, a its amplitude, and what the openings m on this side, whose flows are Uₘ, make it send back.
/// Let Z be a fixed resistance and W = P + Z·U. Choose a so that what is sent back has no W of its own. Then
/// <list type="bullet">
/// <item>the pressure that reaches the mouth m from beyond is rₘ·a + Σ xₘₖ·Uₖ, x symmetric;</item>
/// <item>by reciprocity the wave that Uₘ makes it send back is (Z, −1)·tₘ·Uₘ, tₘ = rₘ/W.</item>
/// </list>
/// A passive line has W ≠ 0, so nothing is divided by what can vanish, and no digits are lost, however long a row of open holes is. At a hole, the pressure at its foot is that of the bore; this eliminates its flow. The wave is multiplied by the pivot: where nothing
/// is heard it is what <see cref="SidePropagator"/> makes of it.
/// </remarks>
internal readonly ref struct HeardBeyond
{
    private readonly OutsideOpenings openings;
    private readonly double impedance; // Z
    private readonly Span<ComplexVector> r;
    private readonly Span<ComplexVector> x; // of m and k ≤ m, at m·count + k
    private readonly Span<ComplexVector> own; // pressure of each opening by itself for a flow of 1 m³/s
    private readonly Span<ComplexVector> pairs; // what each hears of each outside
    private readonly Span<ComplexVector> direct; // what the hole that is passed puts on each mouth, with what comes back of it
    private readonly Span<ComplexVector> gamma; // and then what each flow adds to the flow of the hole, with a as it is there
    private readonly Span<ComplexVector> c;

    /// <param name="openings">All of them.</param>
    /// <param name="impedance">Z, Pa·s/m³.</param>
    /// <param name="memory"><see cref="SizeFor"/> them.</param>
    public HeardBeyond(OutsideOpenings openings, double impedance, Span<ComplexVector> memory)
    {
        var count = openings.Count;
        (this.openings, this.impedance) = (openings, impedance);
        r = memory[..count];
        direct = memory.Slice(count, count);
        gamma = memory.Slice(2 * count, count);
        c = memory.Slice(3 * count, count);
        own = memory.Slice(4 * count, count);
        pairs = memory.Slice(5 * count, openings.Pairs);
        x = memory[(5 * count + openings.Pairs)..];
    }

    /// <summary>What it needs for some openings.</summary>
    public static int SizeFor(OutsideOpenings openings) =>
        openings.Count * (openings.Count + 5) + openings.Pairs;

    /// <summary>At the far end.</summary>
    /// <param name="end">It.</param>
    /// <param name="omega">ω.</param>
    /// <returns>The wave there.</returns>
    public WaveState Start(Termination end, RealVector omega)
    {
        openings.At(omega, own, pairs);
        r.Clear();
        x.Clear();
        if (!openings.HasFarEnd)
        {
            var (p, u) = end.At(omega);
            return new WaveState(p, u);
        }

        var wave = Mouth(0);
        var overW = W(wave).Inverse();
        for (var m = 1; m < r.Length; m++)
        {
            var heard = pairs[OutsideOpenings.PairOf(m, 0)];
            r[m] = heard;
            for (var k = 1; k <= m; k++)
            {
                x[m * r.Length + k] = -(heard * r[k] * overW);
            }
        }

        return wave;
    }

    /// <summary>The wave at an opening that sends out 1 m³/s and hears nothing.</summary>
    public WaveState Mouth(int opening) => new(own[opening], ComplexVector.One);

    /// <summary>Across a stretch in which no opening hears another.</summary>
    /// <param name="from">The first opening on this side of it.</param>
    /// <param name="far">The wave before.</param>
    /// <param name="sent">What has become of (Z, −1) across it.</param>
    /// <param name="near">What has become of the wave.</param>
    /// <param name="excess">The factor by which both came out too large.</param>
    /// <param name="tape">Keeps what leads back.</param>
    public void Cross(
        int from,
        in WaveState far,
        in WaveState sent,
        in WaveState near,
        in ComplexVector excess,
        MouthTape? tape
    )
    {
        var log = far.Log - near.Log;
        var grown = excess;
        var back = W(sent) / W(near) / W(far);
        if (near.Log != far.Log || sent.Log != RealVector.Zero)
        {
            grown = Vector.Exp(log) * excess;
            back = Vector.Exp(log + sent.Log) * back;
        }

        tape?.Keep(r[from..], grown, back);
        for (var m = from; m < r.Length; m++)
        {
            var sentBack = -(r[m] * back);
            var row = x.Slice(m * r.Length, m + 1);
            for (var k = from; k < row.Length; k++)
            {
                row[k] = ComplexVector.MultiplyAdd(sentBack, r[k], row[k]);
            }
        }

        for (var m = from; m < r.Length; m++)
        {
            r[m] *= grown;
        }
    }

    /// <summary>Past the shunt of an open hole.</summary>
    /// <param name="n">Which opening it is.</param>
    /// <param name="feet">See <see cref="SidePropagator.Feet"/>.</param>
    /// <param name="wave">The wave beyond it, then before it.</param>
    /// <param name="tape">Keeps what leads back.</param>
    public void Pass(int n, in HoleFeet feet, ref WaveState wave, MouthTape? tape)
    {
        var (foot, flow, heard) = feet;
        var beyond = wave;
        var (p, u) = (wave.P, wave.U);
        var overW = W(wave).Inverse();
        var (rn, tn) = (r[n], flow * (r[n] * overW));
        var xn = flow * x[n * r.Length + n];
        var pivot = foot.P + heard.P * xn - impedance * tn;
        var overPivot = pivot.Inverse();
        var shunt = foot.U + heard.U * xn - tn;
        var beta = p - heard.P * rn;
        wave.P = pivot * p + impedance * (tn * beta);
        wave.U = pivot * (u + heard.U * rn) + shunt * beta;
        var overNext = W(wave).Inverse();
        for (var m = n + 1; m < r.Length; m++)
        {
            var t = r[m] * overW;
            direct[m] = x[m * r.Length + n] + pairs[OutsideOpenings.PairOf(m, n)];
            gamma[m] = impedance * t - heard.P * direct[m];
            var own = gamma[m] * overPivot;
            var pm = impedance * (t + tn * own);
            var um = heard.U * direct[m] - t + shunt * own;
            c[m] = (pm + impedance * um) * overNext;
        }

        tape?.Keep(
            new PassedHole(beyond, overW, feet, r[n], x[n * r.Length + n], beta, pivot),
            direct[(n + 1)..],
            gamma[(n + 1)..],
            c[(n + 1)..]
        );
        for (var m = n + 1; m < r.Length; m++)
        {
            var lost = r[m] * pivot;
            var put = flow * direct[m];
            gamma[m] = gamma[m] * overPivot - beta * c[m];
            var row = x.Slice(m * r.Length, m + 1);
            for (var k = n + 1; k < row.Length; k++)
            {
                row[k] = ComplexVector.MultiplyAdd(put, gamma[k], row[k] - lost * c[k]);
            }

            r[m] = ComplexVector.MultiplyAdd(put, beta, lost);
        }
    }

    private ComplexVector W(in WaveState wave) => wave.P + impedance * wave.U;
}
