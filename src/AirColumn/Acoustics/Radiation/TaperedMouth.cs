using System.Numerics;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// What a sloping wall adds to the impedance of an open end. In a straight pipe the flow crowds towards the rim before it leaves;
/// where the bore is narrower behind its mouth, that crowd has less room than the same length of pipe would give it.
/// </summary>
/// <remarks>
/// To first order in the slope it is Hadamard's variation of the impedance with the place of the wall, less what the plane wave alone
/// would give: z = z₀ + jka·κ·a', κ = 2∫[(v² + p²) − (v₀² + p₀²)]·s ds along the wall behind the end, s the distance over the
/// radius, v and p in units of the plane wave at the end (p over ρc), from the evanescent modes of a straight pipe. In a baffle κ is
/// 0.0780 at low frequency. For rims only the static value is computed; its course with ka is taken to be that of the baffle. The
/// curvature of the wall, a·a'', counts by the next moment, −∫…·s² ds. Beyond a slope of 45° none of this holds, and it fades out
/// towards there.
/// </remarks>
internal sealed class TaperedMouth
{
    /// <summary>From where the course is held.</summary>
    public const double HighestKa = 3.5; // towards the cut-on the first radial mode is no longer evanescent

    private static readonly double StaticBaffled = TaperTable.Real[0];

    private static readonly RationalInterpolant Real = new(
        [.. Enumerable.Range(0, TaperTable.Real.Length).Select(i => TaperTable.Step * i)],
        TaperTable.Real.ToArray(),
        4
    );

    private static readonly RationalInterpolant Imaginary = Real.WithValues(TaperTable.Imaginary);

    private static readonly RationalInterpolant[] Both = [Real, Imaginary];

    // In a variable in which the singularity of the rim is smooth, from a thin edge to a baffle.
    private static readonly RationalInterpolant Rims = new(
        [.. TaperTable.OuterOverInner.ToArray().Append(double.PositiveInfinity).Select(Variable)],
        [.. TaperTable.RimSlope, StaticBaffled],
        2
    );

    private readonly double strength;

    /// <summary>A mouth with this wall behind it and this ratio of outer to inner radius (infinite: a baffle).</summary>
    public TaperedMouth(in Wall wall, double outerOverInner)
    {
        var fade = Math.Max(0, 1 - wall.Slope * wall.Slope);
        var ratio = TaperTable.Curvature / StaticBaffled;
        strength =
            fade
            * (wall.Slope + ratio * Math.Clamp(wall.Radius * wall.Curvature, -1, 1))
            * StaticSlope(outerOverInner)
            / StaticBaffled;
    }

    /// <summary>κ at low frequency.</summary>
    public static double StaticSlope(double outerOverInner) => Rims.At(Variable(outerOverInner));

    /// <summary>The reflection of the straight pipe's end with the taper behind it.</summary>
    public EndReflection Of(EndReflection straight, double ka)
    {
        if (strength == 0 || ka == 0)
        {
            return straight;
        }

        var x = Math.Min(ka, HighestKa);
        var z =
            straight.RelativeImpedance(ka)
            + new Complex(0, ka * strength) * new Complex(Real.At(x), Imaginary.At(x));
        // R = (z − 1)/(z + 1); |R|² = 1 − 4·Re z/|z + 1|², without cancellation.
        var distance = z + 1;
        var lost = 4 * z.Real / (distance.Real * distance.Real + distance.Imaginary * distance.Imaginary);
        return new EndReflection(0.5 * double.LogP1(-lost), -((1 - z) / distance).Phase / (2 * ka));
    }

    /// <summary>What it adds at some ka to the impedance over ρc/S.</summary>
    public ComplexVector Added(RealVector ka)
    {
        Span<RealVector> course = stackalloc RealVector[2];
        RationalInterpolant.At(Vector.Min(ka, Vector.Create(HighestKa)), Both, course);
        return strength * ka * new ComplexVector(-course[1], course[0]);
    }

    private static double Variable(double outerOverInner) => Math.Pow(1 - 1 / outerOverInner, 2.0 / 3);
}
