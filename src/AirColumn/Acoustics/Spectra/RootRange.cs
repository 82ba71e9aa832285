using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Spectra;

/// <summary>A range of frequencies, Hz, and the variable of series over it: t = Scale·√f + Shift, from −1 to 1.</summary>
internal readonly record struct RootRange
{
    public RootRange(double low, double high)
    {
        (Low, High) = (low, high);
        var (from, to) = (Math.Sqrt(low), Math.Sqrt(high));
        (Scale, Shift) = (2 / (to - from), -(to + from) / (to - from));
    }

    public double Low { get; }

    public double High { get; }

    public double Scale { get; }

    public double Shift { get; }

    /// <summary>The frequency half way in √f.</summary>
    public double Middle => HertzAt(0);

    /// <summary>Whether a frequency lies in it.</summary>
    public bool Holds(double hertz) => hertz >= Low && hertz <= High;

    /// <summary>The variable at a frequency.</summary>
    public double Place(double hertz) => Math.Sqrt(hertz) * Scale + Shift;

    /// <summary>The variable at some frequencies.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public RealVector Place(RealVector hertz) =>
        RealVectors.MultiplyAdd(Vector.SquareRoot(hertz), Vector.Create(Scale), Vector.Create(Shift));

    /// <summary>The frequency at a place.</summary>
    public double HertzAt(double t)
    {
        var root = (t - Shift) / Scale;
        return root * root;
    }

    /// <summary>The complex frequency at a complex place.</summary>
    public Complex HertzAt(Complex t)
    {
        var root = (t - Shift) / Scale;
        return root * root;
    }

    /// <summary>Nodes of a series over it, some at a time.</summary>
    public FrequencyVector NodesFrom(int first, int n)
    {
        Span<double> omega = stackalloc double[RealVectors.Count];
        for (var i = 0; i < omega.Length; i++)
        {
            omega[i] = 2 * Math.PI * HertzAt(Chebyshev.Node(Math.Min(first + i, n - 1), n));
        }

        return new FrequencyVector(Vector.Create<double>(omega));
    }

    /// <summary>Radians by which what takes so long, s, turns for each unit of the variable, where it does so fastest.</summary>
    public double Turns(double delay) => 2 * Math.PI * delay * Math.Sqrt(High) * 2 / Scale;
}
