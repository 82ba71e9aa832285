using UnitsNet;

namespace AirColumn;

/// <summary>A smooth horn, opening or narrowing, whose radius follows a law from its narrow end.</summary>
public sealed record HornSection : Section
{
    /// <summary>Makes a horn.</summary>
    /// <param name="law">The law by which the radius grows. For a Bessel horn use the constructor that takes its exponent.</param>
    /// <param name="from">Inside diameter nearer the blown end: 0.01 mm to 10 m.</param>
    /// <param name="to">Inside diameter nearer the far end: 0.01 mm to 10 m, not equal to <paramref name="from"/>.</param>
    /// <param name="length">Axial length: 1 µm to 1 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number, or the law is not a defined value.</exception>
    /// <exception cref="ArgumentException">The diameters are equal, or the law is Bessel.</exception>
    public HornSection(HornLaw law, Length from, Length to, Length length)
        : this(law, from, to, length, null) { }

    /// <summary>Makes a Bessel horn.</summary>
    /// <param name="from">Inside diameter nearer the blown end: 0.01 mm to 10 m.</param>
    /// <param name="to">Inside diameter nearer the far end: 0.01 mm to 10 m, not equal to <paramref name="from"/>.</param>
    /// <param name="length">Axial length: 1 µm to 1 km.</param>
    /// <param name="exponent">
    /// The exponent, 0.1 to 10. With a larger exponent the horn flares nearer to its wide end. No <c>ColumnParameter</c> varies it.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension or the exponent is outside its range or not a number.</exception>
    /// <exception cref="ArgumentException">The diameters are equal.</exception>
    public HornSection(Length from, Length to, Length length, double exponent)
        : this(HornLaw.Bessel, from, to, length, exponent) { }

    private HornSection(HornLaw law, Length from, Length to, Length length, double? exponent)
        : base(Dimension.AxialLength(length))
    {
        InletRadius = Dimension.RadiusOf(from);
        OutletRadius = Dimension.RadiusOf(to);
        Require.Named(law);
        if ((law == HornLaw.Bessel) != exponent.HasValue)
        {
            throw new ArgumentException(
                "A Bessel horn needs its exponent: use new HornSection(from, to, length, exponent) or Bore.Build().Horn(from, to, length, exponent).",
                nameof(law)
            );
        }

        if (InletRadius == OutletRadius)
        {
            throw new ArgumentException(
                $"from and to are both {Dimension.Text(from)}; a horn changes its diameter. Use a cylinder.",
                nameof(to)
            );
        }

        Law = law;
        Exponent = exponent is { } value ? Require.InRange(value, 0.1, 10, "", nameof(exponent)) : null;
    }

    /// <summary>The law by which the radius grows.</summary>
    public HornLaw Law { get; }

    /// <summary>The exponent of a Bessel horn; null for other laws.</summary>
    public double? Exponent { get; }

    internal double InletRadius { get; }

    internal double OutletRadius { get; }

    internal override double LargestRadius => Math.Max(InletRadius, OutletRadius);

    /// <inheritdoc/>
    public override HornSection WithLength(Length length) =>
        new(Law, Length.FromMeters(2 * InletRadius), Length.FromMeters(2 * OutletRadius), length, Exponent);

    internal override HornSection WithEnds(double inlet, double outlet) =>
        new(
            Law,
            Length.FromMeters(2 * inlet),
            Length.FromMeters(2 * outlet),
            Length.FromMeters(LengthMetres),
            Exponent
        );

    internal override Wall WallAt(double x)
    {
        // Laws are told from the narrow end; a narrowing horn is seen from behind.
        var opens = OutletRadius > InletRadius;
        var (narrow, wide) = opens ? (InletRadius, OutletRadius) : (OutletRadius, InletRadius);
        var wall = Law switch
        {
            HornLaw.Exponential => Exponential(opens ? x : LengthMetres - x, narrow, wide),
            HornLaw.Catenoidal => Catenoidal(opens ? x : LengthMetres - x, narrow, wide),
            HornLaw.Parabolic => Parabolic(opens ? x : LengthMetres - x, narrow, wide),
            HornLaw.Bessel => Bessel(opens ? x : LengthMetres - x, narrow, wide),
            _ => Cosine(opens ? x : LengthMetres - x, narrow, wide),
        };
        return opens ? wall : wall with { Slope = -wall.Slope };
    }

    private Wall Exponential(double x, double narrow, double wide)
    {
        var m = Math.Log(wide / narrow) / LengthMetres;
        var a = narrow * Math.Exp(m * x);
        return new Wall(a, m * a, m * m * a);
    }

    private Wall Catenoidal(double x, double narrow, double wide)
    {
        var m = Math.Acosh(wide / narrow) / LengthMetres;
        var a = narrow * Math.Cosh(m * x);
        return new Wall(a, m * narrow * Math.Sinh(m * x), m * m * a);
    }

    private Wall Parabolic(double x, double narrow, double wide)
    {
        var g = (wide / narrow * (wide / narrow) - 1) / LengthMetres;
        var a = narrow * Math.Sqrt(1 + g * x);
        var slope = g * narrow * narrow / (2 * a);
        return new Wall(a, slope, -slope * slope / a);
    }

    private Wall Bessel(double x, double narrow, double wide)
    {
        var alpha = Exponent!.Value;
        var focus = LengthMetres / (1 - Math.Pow(narrow / wide, 1 / alpha));
        var a = narrow * Math.Pow(focus / (focus - x), alpha);
        var slope = alpha * a / (focus - x);
        return new Wall(a, slope, (alpha + 1) * slope / (focus - x));
    }

    private Wall Cosine(double x, double narrow, double wide)
    {
        var k = Math.PI / (2 * LengthMetres);
        var (sin, cos) = Math.SinCos(k * x);
        var rise = wide - narrow;
        return new Wall(narrow + rise * (1 - cos), rise * k * sin, rise * k * k * cos);
    }
}
