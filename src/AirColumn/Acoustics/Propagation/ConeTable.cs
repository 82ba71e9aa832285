using System.Buffers;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>The steps of a run of cones for a band of frequencies, and their coefficients.</summary>
/// <remarks>
/// Where the boundary layer is thin, each moment of q over a step is a polynomial in 1/√ω: real numbers times eighth roots of unity, from
/// five Gauss points. Elsewhere moments come from the exact losses at the same points.
/// </remarks>
internal sealed class ConeTable
{
    private const int Powers = LossSeries.Orders + 3; // of 1/√ω in q
    private const int Moments = 6; // five, and none
    private const int Width = 2 * Moments; // real and imaginary parts of each
    private const int Narrow = 4; // where only the first two count
    private const int UsualRoom = 4096; // numbers, enough for most columns without moving them
    private const double Rounding = 1e-15;

    private readonly Medium medium;
    private readonly Band band;
    private readonly bool isStrong;
    private readonly double allowed; // of a coefficient
    private Step[] steps;
    private double[] coefficients;
    private int count;
    private int used;
    private Cone? last;

    public ConeTable(Medium medium, in Band band, int cones, bool isStrong)
    {
        (this.medium, this.band, this.isStrong) = (medium, band, isStrong);
        steps = new Step[cones];
        coefficients = ArrayPool<double>.Shared.Rent(Math.Max(UsualRoom, Width * (Powers + 2 * cones)));
        allowed = 1e-2 * band.Tolerance;
    }

    /// <summary>Adds the next cone towards the blown end.</summary>
    public void Add(in Cone cone)
    {
        var parts = ConeStepCount.Of(cone, medium, band, isStrong);
        var ratio = parts == 1 || cone.Far == cone.Near ? 1 : Math.Pow(cone.Near / cone.Far, 1.0 / parts);
        var from = cone.Far;
        for (var n = 0; n < parts; n++)
        {
            var to = n == parts - 1 ? cone.Near : from * ratio;
            var share = cone.Far == cone.Near ? 1.0 / parts : (from - to) / (cone.Far - cone.Near);
            var step = new Step
            {
                From = from,
                To = to,
                Length = cone.Length * share,
                Front = cone.Front,
                ThinFrom = medium.Wall.ThinFrom(Math.Min(from, to)),
                Offset = used,
            };
            if (n == 0 && last is { } before)
            {
                Join(ref step, before, cone);
            }

            step.Offset = used;
            if (step.ThinFrom <= band.High)
            {
                AddMoments(ref step, cone.Slope);
            }

            Append(step);
            from = to;
        }

        last = cone;
    }

    /// <summary>To be called after the last cone: gives back room that was taken in advance.</summary>
    public void Close()
    {
        var taken = coefficients;
        coefficients = taken.AsSpan(0, used).ToArray();
        ArrayPool<double>.Shared.Return(taken);
    }

    /// <summary>ψ and ψ'/k, in the places of pressure and flow, from the far end of the run to the near one.</summary>
    public void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        for (var n = 0; n < count; n++)
        {
            ref readonly var step = ref steps[n];
            for (var i = 0; i < frequencies.Length; i++)
            {
                ref readonly var frequency = ref frequencies[i];
                ref var state = ref states[i];
                var thin = step.ThinFrom <= band.Low || step.ThinFrom <= frequency.Lowest;
                if (step.IsJoint)
                {
                    PassJoint(step, frequency, thin, ref state);
                }

                if (thin)
                {
                    CarryThin(step, frequency, ref state);
                }
                else
                {
                    CarryAny(step, frequency, ref state);
                }
            }
        }
    }

    /// <summary>H and (a'/ka)·Lean at an end of the run.</summary>
    public void AtPort(
        in Port port,
        in FrequencyVector frequency,
        out ComplexVector h,
        out ComplexVector lean
    )
    {
        if (medium.Wall.ThinFrom(port.Radius) > frequency.Lowest)
        {
            medium.Wall.OfTaper(port.Radius, frequency, out var terms);
            (h, lean) = (terms.H, terms.Lean);
        }
        else
        {
            var scale = 1 / (medium.Wall.Unit * port.Radius);
            var w = (Math.Sqrt(0.5) * scale) * frequency.InverseRoot;
            var argument = new ComplexVector(w, -w);
            var terms = TermsAt(port.Radius);
            h = Polynomial(medium.Wall.Series.H, terms, argument);
            lean = port.Slope == 0 ? ComplexVector.One : Polynomial(medium.Wall.Series.Lean, terms, argument);
        }

        lean = (port.Slope / port.Radius) * frequency.InverseWavenumber(medium.SpeedOfSound) * lean;
    }

    // Terms of a series in w that count at a radius over the band.
    private int TermsAt(double radius)
    {
        var w = 1 / (medium.Wall.Unit * radius * Math.Sqrt(Math.Max(band.Low, medium.Wall.ThinFrom(radius))));
        var series = medium.Wall.Series.H;
        var power = 1.0;
        var terms = 1;
        for (var n = 0; n < series.Length; n++, power *= w)
        {
            terms = Math.Abs(series[n]) * power > Math.Min(0.1 * allowed, Rounding) ? n + 1 : terms;
        }

        return Math.Min(terms + 1, series.Length);
    }

    private static ComplexVector Polynomial(double[] series, int terms, in ComplexVector w)
    {
        var sum = new ComplexVector(Vector.Create(series[terms - 1]), RealVector.Zero);
        for (var n = terms - 2; n >= 0; n--)
        {
            sum = series[n] + sum * w;
        }

        return sum;
    }

    // p and U go on: ψ stays, and ψ'/k = ratio·ψ'/k + (kink/k)·Lean·ψ.
    private void Join(ref Step step, in Cone before, in Cone cone)
    {
        step.Ratio = cone.Front / before.Front;
        step.Kink = (cone.Slope - step.Ratio * before.Slope) / cone.Far;
        step.IsJoint = step.Ratio != 1 || Math.Abs(step.Kink) > 1e-13 * Math.Abs(cone.Slope / cone.Far);
        if (!step.IsJoint)
        {
            return;
        }

        step.LeanOffset = used;
        var scale = 1 / (medium.Wall.Unit * cone.Far);
        var factor = step.Kink * medium.SpeedOfSound;
        var terms = TermsAt(cone.Far);
        Room(2 * terms);
        for (var n = 0; n < terms; n++, factor *= scale)
        {
            var (cos, sin) = Eighth(n);
            coefficients[used++] = factor * medium.Wall.Series.Lean[n] * cos;
            coefficients[used++] = -factor * medium.Wall.Series.Lean[n] * sin;
        }

        step.LeanTerms = terms;
    }

    private void PassJoint(in Step step, in FrequencyVector frequency, bool thin, ref WaveState state)
    {
        ComplexVector kink; // (kink/k)·Lean
        if (thin)
        {
            var v = frequency.InverseRoot;
            ref var c = ref coefficients[step.LeanOffset];
            var (re, im) = (RealVector.Zero, RealVector.Zero);
            for (var n = 2 * (step.LeanTerms - 1); n >= 0; n -= 2)
            {
                re = RealVectors.MultiplyAdd(re, v, Vector.Create(Unsafe.Add(ref c, n)));
                im = RealVectors.MultiplyAdd(im, v, Vector.Create(Unsafe.Add(ref c, n + 1)));
            }

            kink = v * v * new ComplexVector(re, im);
        }
        else
        {
            medium.Wall.OfTaper(step.From, frequency, out var terms);
            kink = step.Kink * frequency.InverseWavenumber(medium.SpeedOfSound) * terms.Lean;
        }

        state.U = ComplexVector.MultiplyAdd(kink, state.P, step.Ratio * state.U);
    }

    // [order·Width + moment], behind all of them the imaginary parts: q as a polynomial in v = 1/√ω. With w = exp(−jπ/4)·v/(unit·a),
    // T/H = Σ Wave[n]·wⁿ, and −(a'/ka)²·Bend = −a'²c²·unit²·Σ Bend[n]·wⁿ·v⁴/(unit·a)²; wⁿ and wⁿ⁻⁴ differ by the sign.
    private void AddMoments(ref Step step, double slope)
    {
        var series = medium.Wall.Series;
        var unit = medium.Wall.Unit;
        var isStraight = step.From == step.To;
        var bend = isStraight ? 0 : slope * medium.SpeedOfSound * unit;
        bend *= bend;
        var v = 1 / Math.Sqrt(Math.Max(band.Low, step.ThinFrom));
        // How much a moment counts against the first: by j₁, j₂, j₃.
        var z = band.High / medium.SpeedOfSound * step.Length;
        // A cylinder is exact whatever the tolerance.
        var least = (isStraight ? Math.Min(allowed, Rounding) : allowed) / Math.Max(1, z);
        var (least01, least23, least4) = (
            Vector128.Create(least, least * Math.Max(z, 3 / z)),
            Vector128.Create(least * Math.Max(z, 30 / (z * z)), least * Math.Max(z, 210 / (z * z * z))),
            Vector128.Create(least * Math.Max(z, 1890 / (z * z * z * z)), double.PositiveInfinity)
        );
        var gauss = new ConeGauss(0.5 * unit * (step.From + step.To), 0.5 * unit * (step.To - step.From));
        Room(Width * Powers);
        ref var c = ref coefficients[used];
        Span<int> terms = stackalloc int[Moments];
        terms.Clear();
        var (before, earlier) = (default(GaussMoments), default(GaussMoments));
        var power = 1.0;
        for (var n = 0; n < Powers; n++, power *= v)
        {
            var here = gauss.Moments(isStraight);
            var wave = n < LossSeries.Orders ? step.Front * series.Wave[n] : 0;
            var bent = n >= 6 ? bend * series.Bend[n - 4] : 0;
            var m01 = wave * here.First + bent * earlier.First;
            var m23 = wave * here.Second + bent * earlier.Second;
            var m4 = wave * here.Third + bent * earlier.Third;
            var (cos, sin) = Eighth(n);
            var at = (nuint)(n * Width);
            (cos * m01).StoreUnsafe(ref c, at);
            (cos * m23).StoreUnsafe(ref c, at + 2);
            (cos * m4).StoreUnsafe(ref c, at + 4);
            (-sin * m01).StoreUnsafe(ref c, at + 6);
            (-sin * m23).StoreUnsafe(ref c, at + 8);
            (-sin * m4).StoreUnsafe(ref c, at + 10);
            var counts =
                Counts(m01, power, least01)
                | Counts(m23, power, least23) << 2
                | Counts(m4, power, least4) << 4;
            for (var i = 0; i < Moments; i++)
            {
                terms[i] = (counts >> i & 1) != 0 ? n + 1 : terms[i];
            }

            if (counts == 0 && n > 1 && (bend == 0 || n > 7))
            {
                break;
            }

            (earlier, before) = (before, here);
            gauss.Next();
        }

        for (var i = 2; i < Moments - 1; i++)
        {
            terms[i] = Math.Min(terms[i], terms[i - 1]);
        }

        step.Terms = terms[0];
        step.Order =
            isStraight || terms[1] == 0 ? 0
            : terms[2] == 0 ? 1
            : 2;
        if (step.Order > 1)
        {
            used += Width * step.Terms;
            return;
        }

        // Only the first two moments.
        for (var n = 0; n < step.Terms; n++, used += Narrow)
        {
            var from = n * Width;
            var to = n * Narrow;
            Unsafe.Add(ref c, to) = Unsafe.Add(ref c, from);
            Unsafe.Add(ref c, to + 1) = Unsafe.Add(ref c, from + 1);
            Unsafe.Add(ref c, to + 2) = Unsafe.Add(ref c, from + Moments);
            Unsafe.Add(ref c, to + 3) = Unsafe.Add(ref c, from + Moments + 1);
        }
    }

    private static uint Counts(Vector128<double> moments, double power, Vector128<double> least) =>
        Vector128.GreaterThan(Vector128.Abs(moments) * power, least).ExtractMostSignificantBits();

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void CarryThin(in Step step, in FrequencyVector frequency, ref WaveState state)
    {
        ref var c = ref MemoryMarshal.GetArrayDataReference(coefficients);
        c = ref Unsafe.Add(ref c, step.Offset);
        var v = frequency.InverseRoot;
        var zero = RealVector.Zero;
        var (r0, i0, r1, i1) = (zero, zero, zero, zero);
        var (r2, i2, r3, i3) = (zero, zero, zero, zero);
        var (r4, i4) = (zero, zero);
        if (step.Order > 1)
        {
            for (var n = Width * (step.Terms - 1); n >= 0; n -= Width)
            {
                r0 = RealVectors.MultiplyAdd(r0, v, Vector.Create(Unsafe.Add(ref c, n + 0)));
                i0 = RealVectors.MultiplyAdd(i0, v, Vector.Create(Unsafe.Add(ref c, n + Moments + 0)));
                r1 = RealVectors.MultiplyAdd(r1, v, Vector.Create(Unsafe.Add(ref c, n + 1)));
                i1 = RealVectors.MultiplyAdd(i1, v, Vector.Create(Unsafe.Add(ref c, n + Moments + 1)));
                r2 = RealVectors.MultiplyAdd(r2, v, Vector.Create(Unsafe.Add(ref c, n + 2)));
                i2 = RealVectors.MultiplyAdd(i2, v, Vector.Create(Unsafe.Add(ref c, n + Moments + 2)));
                r3 = RealVectors.MultiplyAdd(r3, v, Vector.Create(Unsafe.Add(ref c, n + 3)));
                i3 = RealVectors.MultiplyAdd(i3, v, Vector.Create(Unsafe.Add(ref c, n + Moments + 3)));
                r4 = RealVectors.MultiplyAdd(r4, v, Vector.Create(Unsafe.Add(ref c, n + 4)));
                i4 = RealVectors.MultiplyAdd(i4, v, Vector.Create(Unsafe.Add(ref c, n + Moments + 4)));
            }
        }
        else
        {
            for (var n = Narrow * (step.Terms - 1); n >= 0; n -= Narrow)
            {
                r0 = RealVectors.MultiplyAdd(r0, v, Vector.Create(Unsafe.Add(ref c, n + 0)));
                i0 = RealVectors.MultiplyAdd(i0, v, Vector.Create(Unsafe.Add(ref c, n + 2)));
                r1 = RealVectors.MultiplyAdd(r1, v, Vector.Create(Unsafe.Add(ref c, n + 1)));
                i1 = RealVectors.MultiplyAdd(i1, v, Vector.Create(Unsafe.Add(ref c, n + 3)));
            }
        }

        Turn(
            step,
            frequency,
            new(new(r0, i0), new(r1, i1), new(r2, i2), new(r3, i3), new(r4, i4)),
            step.Order,
            ref state
        );
    }

    // From the exact losses.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void CarryAny(in Step step, in FrequencyVector frequency, ref WaveState state)
    {
        if (step.From == step.To)
        {
            medium.Wall.OfTaper(step.From, frequency, out var even);
            var wave = step.Front * even.Wave;
            Turn(step, frequency, new(wave, default, default, default, default), 0, ref state);
            return;
        }

        ComplexVector q0 = default;
        ComplexVector q1 = default;
        ComplexVector q2 = default;
        ComplexVector q3 = default;
        ComplexVector q4 = default;
        var slope = (step.To - step.From) / step.Length;
        for (var i = 0; i < ConeGauss.Places.Length; i++)
        {
            var t = ConeGauss.Places[i];
            var radius = 0.5 * (step.From + step.To) + 0.5 * (step.To - step.From) * t;
            medium.Wall.OfTaper(radius, frequency, out var terms);
            var g = (slope / radius) * frequency.InverseWavenumber(medium.SpeedOfSound);
            var q = step.Front * terms.Wave - (g * g) * terms.Bend;
            var weight = 0.5 * ConeGauss.Weights[i];
            q0 += weight * q;
            q1 += (3 * weight * t) * q;
            q2 += (5 * weight * (1.5 * t * t - 0.5)) * q;
            q3 += (7 * weight * (2.5 * t * t - 1.5) * t) * q;
            q4 += (9 * weight * ConeGauss.Fourth(t)) * q;
        }

        Turn(step, frequency, new(q0, q1, q2, q3, q4), 2, ref state);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Turn(
        in Step step,
        in FrequencyVector frequency,
        in Moments q,
        int order,
        ref WaveState state
    )
    {
        var kl = step.Length * frequency.Wavenumber(medium.SpeedOfSound);
        var overKl = (1 / step.Length) * frequency.InverseWavenumber(medium.SpeedOfSound);
        ConeStep.Carry(kl, overKl, q, order, ref state.P, ref state.U);
        if (isStrong)
        {
            Calm(kl, q.Q0, ref state);
        }
    }

    // Takes out what the step attenuates by, or rather grows by on the way to the blown end.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Calm(RealVector kl, in ComplexVector q, ref WaveState state)
    {
        var attenuation = kl * Vector.Abs(q.Root().Im);
        var scale = Vector.Exp(-attenuation);
        (state.P, state.U) = (scale * state.P, scale * state.U);
        state.Log += attenuation;
    }

    // cos and sin of nπ/4.
    private static (double Cos, double Sin) Eighth(int n)
    {
        ReadOnlySpan<double> cosines =
        [
            1,
            0.70710678118654752,
            0,
            -0.70710678118654752,
            -1,
            -0.70710678118654752,
            0,
            0.70710678118654752,
        ];
        return (cosines[n & 7], cosines[(n + 6) & 7]);
    }

    private void Append(in Step step)
    {
        if (count == steps.Length)
        {
            Array.Resize(ref steps, 2 * count + 4);
        }

        steps[count++] = step;
    }

    private void Room(int more)
    {
        if (used + more > coefficients.Length)
        {
            var larger = ArrayPool<double>.Shared.Rent(Math.Max(2 * coefficients.Length, used + more));
            coefficients.AsSpan(0, used).CopyTo(larger);
            ArrayPool<double>.Shared.Return(coefficients);
            coefficients = larger;
        }
    }

    private struct Step
    {
        public double From; // radii, m: on the side of the far end and of the blown end
        public double To;
        public double Length;
        public double Front;
        public double ThinFrom; // ω
        public int Offset; // of its coefficients
        public int Terms;
        public int Order;
        public bool IsJoint; // on its far side
        public double Ratio;
        public double Kink;
        public int LeanOffset;
        public int LeanTerms;
    }
}
