using System.Numerics;
using System.Runtime.CompilerServices;

namespace AirColumn.Acoustics.Vectors;

/// <summary>Complex numbers side by side, one for each of some frequencies.</summary>
internal readonly struct ComplexVector(RealVector re, RealVector im)
{
    private const MethodImplOptions Inline = MethodImplOptions.AggressiveInlining;

    public readonly RealVector Re = re;
    public readonly RealVector Im = im;

    /// <summary>How many numbers lie side by side.</summary>
    public static int Count => Vector<double>.Count;

    public static ComplexVector One => new(RealVector.One, RealVector.Zero);

    public static ComplexVector Zero => new(RealVector.Zero, RealVector.Zero);

    /// <summary>The squared moduli.</summary>
    public RealVector Norm
    {
        [MethodImpl(Inline)]
        get => RealVectors.MultiplyAdd(Re, Re, Im * Im);
    }

    [MethodImpl(Inline)]
    public static ComplexVector operator +(ComplexVector a, ComplexVector b) => new(a.Re + b.Re, a.Im + b.Im);

    [MethodImpl(Inline)]
    public static ComplexVector operator -(ComplexVector a, ComplexVector b) => new(a.Re - b.Re, a.Im - b.Im);

    [MethodImpl(Inline)]
    public static ComplexVector operator -(ComplexVector a) => new(-a.Re, -a.Im);

    [MethodImpl(Inline)]
    public static ComplexVector operator *(ComplexVector a, ComplexVector b) =>
        new(
            RealVectors.MultiplyAdd(a.Re, b.Re, -(a.Im * b.Im)),
            RealVectors.MultiplyAdd(a.Re, b.Im, a.Im * b.Re)
        );

    [MethodImpl(Inline)]
    public static ComplexVector operator *(RealVector factor, ComplexVector a) =>
        new(factor * a.Re, factor * a.Im);

    [MethodImpl(Inline)]
    public static ComplexVector operator *(double factor, ComplexVector a) =>
        new(factor * a.Re, factor * a.Im);

    [MethodImpl(Inline)]
    public static ComplexVector operator +(double a, ComplexVector b) => new(Vector.Create(a) + b.Re, b.Im);

    [MethodImpl(Inline)]
    public static ComplexVector operator -(double a, ComplexVector b) => new(Vector.Create(a) - b.Re, -b.Im);

    [MethodImpl(Inline)]
    public static ComplexVector operator -(ComplexVector a, RealVector b) => new(a.Re - b, a.Im);

    [MethodImpl(Inline)]
    public static ComplexVector operator /(ComplexVector a, ComplexVector b) => a * b.Inverse();

    /// <summary>a·b + c.</summary>
    [MethodImpl(Inline)]
    public static ComplexVector MultiplyAdd(ComplexVector a, ComplexVector b, ComplexVector c) =>
        new(
            RealVectors.MultiplyAdd(a.Re, b.Re, RealVectors.MultiplyAdd(-a.Im, b.Im, c.Re)),
            RealVectors.MultiplyAdd(a.Re, b.Im, RealVectors.MultiplyAdd(a.Im, b.Re, c.Im))
        );

    /// <summary>Where the mask is set the first, else the second.</summary>
    [MethodImpl(Inline)]
    public static ComplexVector Select(Vector<long> mask, ComplexVector yes, ComplexVector no) =>
        new(Vector.ConditionalSelect(mask, yes.Re, no.Re), Vector.ConditionalSelect(mask, yes.Im, no.Im));

    /// <summary>The same number everywhere.</summary>
    public static ComplexVector All(Complex z) => new(Vector.Create(z.Real), Vector.Create(z.Imaginary));

    /// <summary>From a function of the place in the vector.</summary>
    public static ComplexVector Each(Func<int, Complex> value)
    {
        Span<Complex> values = stackalloc Complex[Count];
        for (var i = 0; i < Count; i++)
        {
            values[i] = value(i);
        }

        return Of(values);
    }

    /// <summary>Of as many numbers as lie side by side.</summary>
    public static ComplexVector Of(ReadOnlySpan<Complex> values)
    {
        Span<double> re = stackalloc double[Count];
        Span<double> im = stackalloc double[Count];
        for (var i = 0; i < Count; i++)
        {
            (re[i], im[i]) = (values[i].Real, values[i].Imaginary);
        }

        return new ComplexVector(Vector.Create<double>(re), Vector.Create<double>(im));
    }

    /// <summary>Times j.</summary>
    [MethodImpl(Inline)]
    public ComplexVector TimesJ() => new(-Im, Re);

    /// <summary>One over it.</summary>
    [MethodImpl(Inline)]
    public ComplexVector Inverse()
    {
        var scale = RealVector.One / Norm;
        return new ComplexVector(Re * scale, -Im * scale);
    }

    /// <summary>One of the numbers.</summary>
    public Complex At(int i) => new(Re[i], Im[i]);

    /// <summary>The root whose real part is not negative.</summary>
    public ComplexVector Root()
    {
        var modulus = Vector.SquareRoot(Norm);
        var larger = Vector.SquareRoot(0.5 * (modulus + Vector.Abs(Re)));
        var smaller = Vector.ConditionalSelect(
            Vector.Equals(larger, RealVector.Zero),
            RealVector.Zero,
            0.5 * Im / larger
        );
        var positive = Vector.GreaterThanOrEqual(Re, RealVector.Zero);
        var sign = Vector.CopySign(RealVector.One, Im);
        return Select(
            positive,
            new ComplexVector(larger, smaller),
            new ComplexVector(Vector.Abs(smaller), sign * larger)
        );
    }

    /// <summary>The root of a number whose real part is positive, and one over it.</summary>
    [MethodImpl(Inline)]
    public void Roots(out ComplexVector root, out ComplexVector inverse)
    {
        var modulus = Vector.SquareRoot(Norm);
        var re = Vector.SquareRoot(0.5 * (modulus + Re));
        root = new ComplexVector(re, 0.5 * Im / re);
        var scale = RealVector.One / modulus;
        inverse = new ComplexVector(root.Re * scale, -(root.Im * scale));
    }

    /// <summary>The larger of |Re| and |Im| of any of the numbers.</summary>
    public double Largest() => RealVectors.Largest(Vector.Max(Vector.Abs(Re), Vector.Abs(Im)));
}
