using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>Eight complex numbers, side by side: one for each of eight frequencies.</summary>
internal readonly struct ComplexLanes(Vector512<double> re, Vector512<double> im)
{
    public const int Count = 8;

    public readonly Vector512<double> Re = re;
    public readonly Vector512<double> Im = im;

    public static ComplexLanes One => new(Vector512<double>.One, Vector512<double>.Zero);

    public static ComplexLanes Zero => new(Vector512<double>.Zero, Vector512<double>.Zero);

    /// <summary>The squared moduli.</summary>
    public Vector512<double> Norm
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => Vector512.FusedMultiplyAdd(Re, Re, Im * Im);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator +(ComplexLanes a, ComplexLanes b) => new(a.Re + b.Re, a.Im + b.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator -(ComplexLanes a, ComplexLanes b) => new(a.Re - b.Re, a.Im - b.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator -(ComplexLanes a) => new(-a.Re, -a.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator *(ComplexLanes a, ComplexLanes b) =>
        new(
            Vector512.FusedMultiplyAdd(a.Re, b.Re, -(a.Im * b.Im)),
            Vector512.FusedMultiplyAdd(a.Re, b.Im, a.Im * b.Re)
        );

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator *(Vector512<double> factor, ComplexLanes a) =>
        new(factor * a.Re, factor * a.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator *(double factor, ComplexLanes a) => new(factor * a.Re, factor * a.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator +(double a, ComplexLanes b) => new(Vector512.Create(a) + b.Re, b.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator -(ComplexLanes a, Vector512<double> b) => new(a.Re - b, a.Im);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes operator /(ComplexLanes a, ComplexLanes b) => a * b.Inverse();

    /// <summary>a·b + c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes MultiplyAdd(ComplexLanes a, ComplexLanes b, ComplexLanes c) =>
        new(
            Vector512.FusedMultiplyAdd(a.Re, b.Re, Vector512.FusedMultiplyAdd(-a.Im, b.Im, c.Re)),
            Vector512.FusedMultiplyAdd(a.Re, b.Im, Vector512.FusedMultiplyAdd(a.Im, b.Re, c.Im))
        );

    /// <summary>Where the mask is set the first, else the second.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ComplexLanes Select(Vector512<double> mask, ComplexLanes yes, ComplexLanes no) =>
        new(
            Vector512.ConditionalSelect(mask, yes.Re, no.Re),
            Vector512.ConditionalSelect(mask, yes.Im, no.Im)
        );

    /// <summary>The same number in every lane.</summary>
    public static ComplexLanes All(Complex z) => new(Vector512.Create(z.Real), Vector512.Create(z.Imaginary));

    /// <summary>From a function of the lane.</summary>
    public static ComplexLanes Each(Func<int, Complex> value)
    {
        Span<Complex> values = stackalloc Complex[Count];
        for (var i = 0; i < Count; i++)
        {
            values[i] = value(i);
        }

        return Of(values);
    }

    /// <summary>Eight numbers side by side.</summary>
    public static ComplexLanes Of(ReadOnlySpan<Complex> values)
    {
        Span<double> re = stackalloc double[Count];
        Span<double> im = stackalloc double[Count];
        for (var i = 0; i < Count; i++)
        {
            (re[i], im[i]) = (values[i].Real, values[i].Imaginary);
        }

        return new ComplexLanes(Vector512.Create<double>(re), Vector512.Create<double>(im));
    }

    /// <summary>Times j.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ComplexLanes TimesJ() => new(-Im, Re);

    /// <summary>One over it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ComplexLanes Inverse()
    {
        var scale = Vector512<double>.One / Norm;
        return new ComplexLanes(Re * scale, -Im * scale);
    }

    public Complex Lane(int i) => new(Re.GetElement(i), Im.GetElement(i));

    /// <summary>The root whose real part is not negative.</summary>
    public ComplexLanes Root()
    {
        var modulus = Vector512.Sqrt(Norm);
        var larger = Vector512.Sqrt(0.5 * (modulus + Vector512.Abs(Re)));
        var smaller = Vector512.ConditionalSelect(
            Vector512.Equals(larger, Vector512<double>.Zero),
            Vector512<double>.Zero,
            0.5 * Im / larger
        );
        var positive = Vector512.GreaterThanOrEqual(Re, Vector512<double>.Zero);
        var sign = Vector512.CopySign(Vector512<double>.One, Im);
        return Select(
            positive,
            new ComplexLanes(larger, smaller),
            new ComplexLanes(Vector512.Abs(smaller), sign * larger)
        );
    }

    /// <summary>The larger of |Re| and |Im| in any lane.</summary>
    public double Largest() => Largest(Vector512.Max(Vector512.Abs(Re), Vector512.Abs(Im)));

    /// <summary>The largest of eight numbers.</summary>
    public static double Largest(Vector512<double> each)
    {
        var four = Vector256.Max(each.GetLower(), each.GetUpper());
        var two = Vector128.Max(four.GetLower(), four.GetUpper());
        return Math.Max(two.ToScalar(), two.GetElement(1));
    }
}
