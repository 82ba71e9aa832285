using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// Waves carried from the radiating end to the blown end for many frequencies of one block: see <see cref="WaveBlock"/> for
/// the table of polynomials it reads. Nothing but multiplications and additions until the last division.
/// </summary>
/// <remarks>
/// One text for every width: the files of the other widths are this one with the part between the two marks exchanged
/// (src/AirColumn/Acoustics/Kernels/generate; a test compares them).
/// </remarks>
internal static class WaveKernel256
{
    // <width>
    public const int Width = 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes All(double value) => Vector256.Create(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Fma(Lanes a, Lanes b, Lanes c) => Vector256.FusedMultiplyAdd(a, b, c);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Root(Lanes a) => Vector256.Sqrt(a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Load(ref double from, int index) => Vector256.LoadUnsafe(ref from, (nuint)index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(Lanes value, ref double to, int index) =>
        value.StoreUnsafe(ref to, (nuint)index);

    // </width>

    /// <summary>Input impedances.</summary>
    /// <param name="block">The block that all frequencies lie in.</param>
    /// <param name="hertz">The frequencies.</param>
    /// <param name="real">Receives Re Z.</param>
    /// <param name="imaginary">Receives Im Z.</param>
    public static void Run(
        WaveBlock block,
        ReadOnlySpan<double> hertz,
        Span<double> real,
        Span<double> imaginary
    )
    {
        switch (block.WaveDegree, block.EchoDegree)
        {
            case (6, 5):
                Run<Degree6, Degree5>(block, hertz, real, imaginary);
                break;
            case (8, 7):
                Run<Degree8, Degree7>(block, hertz, real, imaginary);
                break;
            case (10, 9):
                Run<Degree10, Degree9>(block, hertz, real, imaginary);
                break;
            case (12, 11):
                Run<Degree12, Degree11>(block, hertz, real, imaginary);
                break;
            default:
                Run<Degree14, Degree14>(block, hertz, real, imaginary);
                break;
        }
    }

    private static void Run<TWave, TEcho>(
        WaveBlock block,
        ReadOnlySpan<double> hertz,
        Span<double> real,
        Span<double> imaginary
    )
        where TWave : IDegree
        where TEcho : IDegree
    {
        var i = 0;
        ref var f = ref MemoryMarshal.GetReference(hertz);
        ref var re = ref MemoryMarshal.GetReference(real);
        ref var im = ref MemoryMarshal.GetReference(imaginary);
        for (; i + 2 * Width <= hertz.Length; i += 2 * Width)
        {
            Two<TWave, TEcho>(
                block,
                ref Unsafe.Add(ref f, i),
                ref Unsafe.Add(ref re, i),
                ref Unsafe.Add(ref im, i)
            );
        }

        // What does not fill two vectors, in room of our own.
        var rest = hertz.Length - i;
        if (rest > 0)
        {
            Span<double> room = stackalloc double[6 * Width];
            var some = room[..(2 * Width)];
            var someReal = room.Slice(2 * Width, 2 * Width);
            var someImaginary = room[(4 * Width)..];
            some.Fill(hertz[^1]);
            hertz[i..].CopyTo(some);
            if (rest > Width)
            {
                Two<TWave, TEcho>(block, ref some[0], ref someReal[0], ref someImaginary[0]);
            }
            else
            {
                One<TWave, TEcho>(block, ref some[0], ref someReal[0], ref someImaginary[0]);
            }

            someReal[..rest].CopyTo(real[i..]);
            someImaginary[..rest].CopyTo(imaginary[i..]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Two<TWave, TEcho>(
        WaveBlock block,
        ref double hertz,
        ref double real,
        ref double imaginary
    )
        where TWave : IDegree
        where TEcho : IDegree
    {
        var scale = All(block.Scale);
        var shift = All(block.Shift);
        var t0 = Fma(Root(Load(ref hertz, 0)), scale, shift);
        var t1 = Fma(Root(Load(ref hertz, Width)), scale, shift);
        ref var c = ref MemoryMarshal.GetArrayDataReference(block.Table);

        // p⁺ = 1 at the far end, p⁻ its reflection; or both are those at the blown end already.
        Horner<TWave>(ref c, t0, t1, out var back0, out var back1);
        Horner<TWave>(ref Unsafe.Add(ref c, TWave.Value + 1), t0, t1, out var backIm0, out var backIm1);
        c = ref Unsafe.Add(ref c, 2 * (TWave.Value + 1));
        var on0 = All(1);
        var on1 = All(1);
        var onIm0 = All(0);
        var onIm1 = All(0);
        if (block.IsWhole)
        {
            Horner<TWave>(ref c, t0, t1, out on0, out on1);
            Horner<TWave>(ref Unsafe.Add(ref c, TWave.Value + 1), t0, t1, out onIm0, out onIm1);
        }

        foreach (var isGeneral in block.IsGeneral)
        {
            if (!isGeneral)
            {
                // W, b, c: p⁻ = W·p⁻ + b·p⁺, p⁺ = c·p⁻ + p⁺.
                Horner<TWave>(ref c, t0, t1, out var w0, out var w1);
                Horner<TWave>(ref Unsafe.Add(ref c, TWave.Value + 1), t0, t1, out var wIm0, out var wIm1);
                c = ref Unsafe.Add(ref c, 2 * (TWave.Value + 1));
                Horner<TEcho>(ref c, t0, t1, out var b0, out var b1);
                Horner<TEcho>(ref Unsafe.Add(ref c, TEcho.Value + 1), t0, t1, out var bIm0, out var bIm1);
                Horner<TEcho>(ref Unsafe.Add(ref c, 2 * (TEcho.Value + 1)), t0, t1, out var c0, out var c1);
                Horner<TEcho>(
                    ref Unsafe.Add(ref c, 3 * (TEcho.Value + 1)),
                    t0,
                    t1,
                    out var cIm0,
                    out var cIm1
                );
                c = ref Unsafe.Add(ref c, 4 * (TEcho.Value + 1));

                var re0 = Fma(w0, back0, Fma(b0, on0, -Fma(wIm0, backIm0, bIm0 * onIm0)));
                var re1 = Fma(w1, back1, Fma(b1, on1, -Fma(wIm1, backIm1, bIm1 * onIm1)));
                var im0 = Fma(w0, backIm0, Fma(wIm0, back0, Fma(b0, onIm0, bIm0 * on0)));
                var im1 = Fma(w1, backIm1, Fma(wIm1, back1, Fma(b1, onIm1, bIm1 * on1)));
                on0 = Fma(c0, back0, Fma(-cIm0, backIm0, on0));
                on1 = Fma(c1, back1, Fma(-cIm1, backIm1, on1));
                onIm0 = Fma(c0, backIm0, Fma(cIm0, back0, onIm0));
                onIm1 = Fma(c1, backIm1, Fma(cIm1, back1, onIm1));
                (back0, back1, backIm0, backIm1) = (re0, re1, im0, im1);
            }
            else
            {
                // Copies, so that the state itself stays in registers.
                var (x0, xIm0, y0, yIm0) = (back0, backIm0, on0, onIm0);
                var (x1, xIm1, y1, yIm1) = (back1, backIm1, on1, onIm1);
                General<TWave>(ref c, t0, ref x0, ref xIm0, ref y0, ref yIm0);
                General<TWave>(ref c, t1, ref x1, ref xIm1, ref y1, ref yIm1);
                c = ref Unsafe.Add(ref c, 8 * (TWave.Value + 1));
                (back0, backIm0, on0, onIm0) = (x0, xIm0, y0, yIm0);
                (back1, backIm1, on1, onIm1) = (x1, xIm1, y1, yIm1);
            }
        }

        var z0 = All(block.Impedance);
        Divide(back0, backIm0, on0, onIm0, z0, ref real, ref imaginary, 0);
        Divide(back1, backIm1, on1, onIm1, z0, ref real, ref imaginary, Width);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void One<TWave, TEcho>(
        WaveBlock block,
        ref double hertz,
        ref double real,
        ref double imaginary
    )
        where TWave : IDegree
        where TEcho : IDegree
    {
        var t = Fma(Root(Load(ref hertz, 0)), All(block.Scale), All(block.Shift));
        ref var c = ref MemoryMarshal.GetArrayDataReference(block.Table);
        var back = Horner<TWave>(ref c, t);
        var backIm = Horner<TWave>(ref Unsafe.Add(ref c, TWave.Value + 1), t);
        c = ref Unsafe.Add(ref c, 2 * (TWave.Value + 1));
        var on = block.IsWhole ? Horner<TWave>(ref c, t) : All(1);
        var onIm = block.IsWhole ? Horner<TWave>(ref Unsafe.Add(ref c, TWave.Value + 1), t) : All(0);
        foreach (var isGeneral in block.IsGeneral)
        {
            if (!isGeneral)
            {
                var w = Horner<TWave>(ref c, t);
                var wIm = Horner<TWave>(ref Unsafe.Add(ref c, TWave.Value + 1), t);
                c = ref Unsafe.Add(ref c, 2 * (TWave.Value + 1));
                var b = Horner<TEcho>(ref c, t);
                var bIm = Horner<TEcho>(ref Unsafe.Add(ref c, TEcho.Value + 1), t);
                var e = Horner<TEcho>(ref Unsafe.Add(ref c, 2 * (TEcho.Value + 1)), t);
                var eIm = Horner<TEcho>(ref Unsafe.Add(ref c, 3 * (TEcho.Value + 1)), t);
                c = ref Unsafe.Add(ref c, 4 * (TEcho.Value + 1));
                var re = Fma(w, back, Fma(b, on, -Fma(wIm, backIm, bIm * onIm)));
                var im = Fma(w, backIm, Fma(wIm, back, Fma(b, onIm, bIm * on)));
                on = Fma(e, back, Fma(-eIm, backIm, on));
                onIm = Fma(e, backIm, Fma(eIm, back, onIm));
                (back, backIm) = (re, im);
            }
            else
            {
                var (x, xIm, y, yIm) = (back, backIm, on, onIm);
                General<TWave>(ref c, t, ref x, ref xIm, ref y, ref yIm);
                c = ref Unsafe.Add(ref c, 8 * (TWave.Value + 1));
                (back, backIm, on, onIm) = (x, xIm, y, yIm);
            }
        }

        Divide(back, backIm, on, onIm, All(block.Impedance), ref real, ref imaginary, 0);
    }

    // A stretch with all four entries.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void General<TWave>(
        ref double c,
        Lanes t,
        ref Lanes back,
        ref Lanes backIm,
        ref Lanes on,
        ref Lanes onIm
    )
        where TWave : IDegree
    {
        var next = TWave.Value + 1;
        var a = Horner<TWave>(ref c, t);
        var aIm = Horner<TWave>(ref Unsafe.Add(ref c, next), t);
        var b = Horner<TWave>(ref Unsafe.Add(ref c, 2 * next), t);
        var bIm = Horner<TWave>(ref Unsafe.Add(ref c, 3 * next), t);
        var e = Horner<TWave>(ref Unsafe.Add(ref c, 4 * next), t);
        var eIm = Horner<TWave>(ref Unsafe.Add(ref c, 5 * next), t);
        var d = Horner<TWave>(ref Unsafe.Add(ref c, 6 * next), t);
        var dIm = Horner<TWave>(ref Unsafe.Add(ref c, 7 * next), t);
        var re = Fma(a, back, Fma(b, on, -Fma(aIm, backIm, bIm * onIm)));
        var im = Fma(a, backIm, Fma(aIm, back, Fma(b, onIm, bIm * on)));
        var onRe = Fma(e, back, Fma(d, on, -Fma(eIm, backIm, dIm * onIm)));
        onIm = Fma(e, backIm, Fma(eIm, back, Fma(d, onIm, dIm * on)));
        (back, backIm, on) = (re, im, onRe);
    }

    // Z = Z0·(p⁺ + p⁻)/(p⁺ − p⁻).
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Divide(
        Lanes back,
        Lanes backIm,
        Lanes on,
        Lanes onIm,
        Lanes z0,
        ref double real,
        ref double imaginary,
        int index
    )
    {
        var p = on + back;
        var pIm = onIm + backIm;
        var u = on - back;
        var uIm = onIm - backIm;
        var scale = z0 / Fma(u, u, uIm * uIm);
        Store(Fma(p, u, pIm * uIm) * scale, ref real, index);
        Store(Fma(pIm, u, -(p * uIm)) * scale, ref imaginary, index);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Horner<TDegree>(ref double c, Lanes t0, Lanes t1, out Lanes value0, out Lanes value1)
        where TDegree : IDegree
    {
        var next = All(Unsafe.Add(ref c, TDegree.Value));
        value0 = next;
        value1 = next;
        if (TDegree.Value > 13)
        {
            next = All(Unsafe.Add(ref c, 13));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        if (TDegree.Value > 12)
        {
            next = All(Unsafe.Add(ref c, 12));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        if (TDegree.Value > 11)
        {
            next = All(Unsafe.Add(ref c, 11));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        if (TDegree.Value > 10)
        {
            next = All(Unsafe.Add(ref c, 10));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        if (TDegree.Value > 9)
        {
            next = All(Unsafe.Add(ref c, 9));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        if (TDegree.Value > 8)
        {
            next = All(Unsafe.Add(ref c, 8));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        if (TDegree.Value > 7)
        {
            next = All(Unsafe.Add(ref c, 7));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        if (TDegree.Value > 6)
        {
            next = All(Unsafe.Add(ref c, 6));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        if (TDegree.Value > 5)
        {
            next = All(Unsafe.Add(ref c, 5));
            value0 = Fma(value0, t0, next);
            value1 = Fma(value1, t1, next);
        }

        next = All(Unsafe.Add(ref c, 4));
        value0 = Fma(value0, t0, next);
        value1 = Fma(value1, t1, next);
        next = All(Unsafe.Add(ref c, 3));
        value0 = Fma(value0, t0, next);
        value1 = Fma(value1, t1, next);
        next = All(Unsafe.Add(ref c, 2));
        value0 = Fma(value0, t0, next);
        value1 = Fma(value1, t1, next);
        next = All(Unsafe.Add(ref c, 1));
        value0 = Fma(value0, t0, next);
        value1 = Fma(value1, t1, next);
        next = All(Unsafe.Add(ref c, 0));
        value0 = Fma(value0, t0, next);
        value1 = Fma(value1, t1, next);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Horner<TDegree>(ref double c, Lanes t)
        where TDegree : IDegree
    {
        var value = All(Unsafe.Add(ref c, TDegree.Value));
        if (TDegree.Value > 13)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 13)));
        }

        if (TDegree.Value > 12)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 12)));
        }

        if (TDegree.Value > 11)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 11)));
        }

        if (TDegree.Value > 10)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 10)));
        }

        if (TDegree.Value > 9)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 9)));
        }

        if (TDegree.Value > 8)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 8)));
        }

        if (TDegree.Value > 7)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 7)));
        }

        if (TDegree.Value > 6)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 6)));
        }

        if (TDegree.Value > 5)
        {
            value = Fma(value, t, All(Unsafe.Add(ref c, 5)));
        }

        value = Fma(value, t, All(Unsafe.Add(ref c, 4)));
        value = Fma(value, t, All(Unsafe.Add(ref c, 3)));
        value = Fma(value, t, All(Unsafe.Add(ref c, 2)));
        value = Fma(value, t, All(Unsafe.Add(ref c, 1)));
        return Fma(value, t, All(c));
    }
}
