using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>One part of a tube as it lies on the bench. Immutable.</summary>
public abstract record TubePart
{
    private readonly double? price;

    private protected TubePart(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name.Trim();
    }

    /// <summary>The maker's name for it.</summary>
    public string Name { get; }

    /// <summary>The price in the user's money, 0 or more; null if not given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The price is negative or not a number.</exception>
    public double? Price
    {
        get => price;
        init => price = value is { } given ? Require.NotNegative(given, "", nameof(Price)) : null;
    }
}

/// <summary>A straight piece of pipe. Its bore runs to its very ends, even inside sockets.</summary>
public sealed record PipePart : TubePart
{
    /// <summary>Describes a piece of pipe.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="inside">Inside diameter, by caliper: 5 mm to 500 mm.</param>
    /// <param name="outside">Outside diameter, above the inside one, up to 600 mm.</param>
    /// <param name="cut">The length to which it is cut, 0.1 mm to 10 m; null if it is to be found.</param>
    /// <exception cref="ArgumentException">The name is empty, or there is no wall between inside and outside.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public PipePart(string name, Length inside, Length outside, Length? cut)
        : base(name)
    {
        Inside = Caliper.Diameter(inside);
        Outside = Caliper.Outside(outside, Inside, name);
        Cut = cut is { } length ? Caliper.AxialLength(length, nameof(cut)) : null;
    }

    /// <summary>Inside diameter.</summary>
    public Length Inside { get; }

    /// <summary>Outside diameter.</summary>
    public Length Outside { get; }

    /// <summary>The length to which it is cut; null if it is to be found.</summary>
    public Length? Cut { get; }

    /// <summary>
    /// The tolerance of the inside diameter: half the distance between its limits. Default: 0.3 mm, for a caliper in a bore that is out of round.
    /// </summary>
    public Length InsidePlusMinus { get; init; } = Length.FromMillimeters(0.3);

    /// <summary>
    /// The tolerance of the outside diameter. From a catalogue: as stated there, or 0.15 mm (our choice). Default: 0.05 mm, for a caliper.
    /// </summary>
    public Length OutsidePlusMinus { get; init; } = Length.FromMillimeters(0.05);

    /// <summary>The pipe of a catalogue, if it was taken from one.</summary>
    public StockPipe? Stock { get; init; }

    /// <summary>True if its inside diameter was measured, not taken from the catalogue.</summary>
    public bool IsMeasured { get; init; } = true;

    /// <summary>Thickness of its wall.</summary>
    public Length Wall => Length.FromMillimeters((Outside.Millimeters - Inside.Millimeters) / 2);

    /// <summary>Whether it can be from the same length of pipe: the same kind, with the same reading of the inside diameter.</summary>
    internal bool IsOfTheSame(PipePart other) =>
        Stock == other.Stock
        && IsMeasured == other.IsMeasured
        && Inside.Millimeters == other.Inside.Millimeters
        && Outside.Millimeters == other.Outside.Millimeters
        && InsidePlusMinus.Millimeters == other.InsidePlusMinus.Millimeters;

    /// <summary>A piece of a pipe of a catalogue.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="stock">The pipe of the catalogue.</param>
    /// <param name="measured">The inside diameter by caliper, which takes precedence over the table; null takes the diameter of the table.</param>
    /// <param name="cut">The length to which it is cut; null if it is to be found.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentException">The name is empty, or the measured diameter leaves no wall.</exception>
    public static PipePart Of(string name, StockPipe stock, Length? measured, Length? cut)
    {
        ArgumentNullException.ThrowIfNull(stock);
        return new PipePart(name, measured ?? stock.Inside, stock.Outside, cut)
        {
            Stock = stock,
            IsMeasured = measured is not null,
            OutsidePlusMinus = stock.OutsideTolerance ?? Length.FromMillimeters(0.15),
            InsidePlusMinus = measured is null ? stock.InsideUnsure : Length.FromMillimeters(0.3),
        };
    }
}

/// <summary>
/// A tube pushed into the end of a pipe, such as a mouthpiece: inside the pipe its bore takes the place of the pipe's bore.
/// </summary>
public sealed record InsertPart : TubePart
{
    /// <summary>Describes an insert.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="inside">Inside diameter: 5 mm to 500 mm.</param>
    /// <param name="outside">Outside diameter of the inserted end, above the inside one.</param>
    /// <param name="inserted">The length that is pushed in: 0.1 mm to 10 m.</param>
    /// <param name="protrudes">The length that stands out: 0 to 10 m.</param>
    /// <exception cref="ArgumentException">The name is empty, or there is no wall between inside and outside.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public InsertPart(string name, Length inside, Length outside, Length inserted, Length protrudes)
        : base(name)
    {
        Inside = Caliper.Diameter(inside);
        Outside = Caliper.Outside(outside, Inside, name);
        Inserted = Caliper.AxialLength(inserted);
        Protrudes = Caliper.LengthOrNone(protrudes);
    }

    /// <summary>Inside diameter.</summary>
    public Length Inside { get; }

    /// <summary>Outside diameter of the inserted end.</summary>
    public Length Outside { get; }

    /// <summary>The length that is pushed in.</summary>
    public Length Inserted { get; }

    /// <summary>The length that stands out.</summary>
    public Length Protrudes { get; }
}

/// <summary>
/// A fitting with sockets on both sides or on one side: coupling, reducer, adapter, elbow. Pipes go in up to the stops of the fitting, less a
/// gap. Between the stops is the fitting's own bore. An empty socket is part of the bore too.
/// </summary>
public sealed record JoinPart : TubePart
{
    private JoinPart(
        string name,
        FittingSocket? before,
        FittingSocket? after,
        Length inside,
        Length between,
        Length? bend
    )
        : base(name)
    {
        (Before, After, Inside, Between, BendRadius) = (before, after, inside, between, bend);
    }

    /// <summary>The socket on the side of the blown end, if there is one.</summary>
    public FittingSocket? Before { get; }

    /// <summary>The socket on the side of the far end, if there is one.</summary>
    public FittingSocket? After { get; }

    /// <summary>Inside diameter between the stops, the step that the air meets.</summary>
    public Length Inside { get; }

    /// <summary>Distance between the stops, along the centreline.</summary>
    public Length Between { get; }

    /// <summary>Radius of the centreline of an elbow; null if the fitting is straight.</summary>
    public Length? BendRadius { get; }

    /// <summary>The same fitting with other gaps at its stops.</summary>
    internal JoinPart WithGaps(Length before, Length after) =>
        new(Name, Before?.WithGap(before), After?.WithGap(after), Inside, Between, BendRadius)
        {
            Price = Price,
        };

    /// <summary>A straight fitting.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="before">The socket on the side of the blown end; null if there is none.</param>
    /// <param name="after">
    /// The socket on the side of the far end; null if there is none. At least one of the two sockets must be given.
    /// </param>
    /// <param name="inside">Inside diameter between the stops, to be measured: 5 mm to 500 mm.</param>
    /// <param name="between">Distance between the stops, or thickness of a stop shared by two sockets: 0.1 mm to 10 m.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentException">The name is empty, or there is no socket.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static JoinPart Straight(
        string name,
        FittingSocket? before,
        FittingSocket? after,
        Length inside,
        Length between
    ) =>
        before is null && after is null
            ? throw new ArgumentException(
                $"The fitting '{name}' has no socket; give it a socket, or describe it by the length that it adds.",
                nameof(after)
            )
            : new(name, before, after, Caliper.Diameter(inside), Caliper.AxialLength(between), null);

    /// <summary>An elbow.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="before">The socket on the side of the blown end.</param>
    /// <param name="after">The socket on the side of the far end.</param>
    /// <param name="inside">Inside diameter between the stops: 5 mm to 500 mm.</param>
    /// <param name="radius">Radius of its centreline: at least half the inside diameter, to 10 m.</param>
    /// <param name="angle">The angle of the turn: above 0, up to 360°.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentException">The name is empty, or the bend is shorter than 0.1 mm or longer than 10 m.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static JoinPart Elbow(
        string name,
        FittingSocket before,
        FittingSocket after,
        Length inside,
        Length radius,
        Angle angle
    )
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var diameter = Caliper.Diameter(inside);
        Require.InRange(radius.Millimeters, diameter.Millimeters / 2, 10_000, "mm", nameof(radius));
        Require.InRange(angle.Degrees, 1e-3, 360, "°", nameof(angle));
        var between = Length.FromMillimeters(radius.Millimeters * angle.Radians);
        if (between.Millimeters is < 0.1 or > 10_000)
        {
            throw new ArgumentException(
                $"The elbow '{name}' would be {Wording.Size(between)} long between its stops, its radius times its angle; allowed is 0.1 mm to 10000 mm. Check the radius and the angle.",
                nameof(angle)
            );
        }

        return new(name, before, after, diameter, Caliper.AxialLength(between), radius);
    }
}

/// <summary>A bell, formed by heating and widening the end of the pipe before it. Immutable.</summary>
public sealed record BellPart : TubePart
{
    /// <summary>Describes a bell.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="endInside">Inside diameter at its end: 5 mm to 500 mm.</param>
    /// <param name="formed">Its length along the axis: 0.1 mm to 10 m.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public BellPart(string name, Length endInside, Length formed)
        : base(name)
    {
        EndInside = Caliper.Diameter(endInside);
        Formed = Caliper.AxialLength(formed);
    }

    /// <summary>Inside diameter at its end.</summary>
    public Length EndInside { get; }

    /// <summary>Its length along the axis.</summary>
    public Length Formed { get; }
}

/// <summary>A bend, formed by heating the pipe before it, which goes on straight after the bend. Immutable.</summary>
public sealed record BendPart : TubePart
{
    /// <summary>Describes a bend.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="radius">Radius of its centreline: 10 mm to 10 m.</param>
    /// <param name="angle">The angle of the turn: above 0, up to 3600°.</param>
    /// <param name="straightAfter">The length of straight pipe after the bend: 0 to 10 m.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public BendPart(string name, Length radius, Angle angle, Length straightAfter)
        : base(name)
    {
        Require.InRange(radius.Millimeters, 10, 10_000, "mm", nameof(radius));
        Require.InRange(angle.Degrees, 1e-3, 3600, "°", nameof(angle));
        Radius = radius;
        Angle = angle;
        StraightAfter = Caliper.LengthOrNone(straightAfter);
    }

    /// <summary>Radius of its centreline.</summary>
    public Length Radius { get; }

    /// <summary>The angle of the turn.</summary>
    public Angle Angle { get; }

    /// <summary>The length of straight pipe after the bend.</summary>
    public Length StraightAfter { get; }
}

/// <summary>A fitting as a maker measures it: the length that it adds to the tube, and its inside diameter there. Immutable.</summary>
public sealed record AddedPart : TubePart
{
    /// <summary>Describes a fitting.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="adds">The length of the tube with it minus the length without it: 0.1 mm to 10 m.</param>
    /// <param name="inside">Inside diameter of the added length: 5 mm to 500 mm.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public AddedPart(string name, Length adds, Length inside)
        : base(name)
    {
        Adds = Caliper.AxialLength(adds);
        Inside = Caliper.Diameter(inside);
    }

    /// <summary>The length it adds to the tube.</summary>
    public Length Adds { get; }

    /// <summary>Inside diameter of the added length.</summary>
    public Length Inside { get; }
}
