namespace AirColumn;

/// <summary>The law by which the radius of a smooth horn grows with the distance x from its narrow end, of radius a₀.</summary>
public enum HornLaw
{
    /// <summary>a = a₀·exp(mx).</summary>
    Exponential,

    /// <summary>a = a₀·cosh(mx): no corner towards a cylinder at the narrow end.</summary>
    Catenoidal,

    /// <summary>a = a₀·√(1 + gx): the area grows in proportion to the distance.</summary>
    Parabolic,

    /// <summary>a = b·(x₀ − x)^(−exponent), x₀ beyond the wide end: the Bessel horn (source: fletcher1998, ch. 8).</summary>
    Bessel,

    /// <summary>A quarter of a cosine, flat at the narrow end and steepest at the wide one.</summary>
    Cosine,
}
