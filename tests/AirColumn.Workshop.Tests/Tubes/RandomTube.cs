using AirColumn.Workshop.Tubes;
using FsCheck;
using FsCheck.Fluent;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Tubes;

/// <summary>
/// The sizes of a tube, mm: perhaps a mouthpiece, the open pipe, perhaps a fitting and a wider pipe, perhaps a bell. Once as parts for the
/// workshop, once as the bore that a tape and a caliper find.
/// </summary>
internal sealed record RandomTube
{
    public const double Wall = 3;

    public bool HasMouth { get; private init; }
    public double MouthInside { get; init; }
    public double Inserted { get; private init; }
    public double Protrudes { get; private init; }
    public double Inside { get; init; }
    public double InsidePlusMinus { get; private init; }
    public bool HasEnd { get; private init; }
    public double FittingWider { get; init; }
    public double Between { get; private init; }
    public double Taper { get; private init; }
    public double Depth { get; private init; }
    public double GapBefore { get; private init; }
    public double GapAfter { get; private init; }
    public double EndInside { get; init; }
    public double EndCut { get; private init; }
    public bool HasBell { get; private init; }
    public double BellInside { get; init; }
    public double Formed { get; private init; }

    /// <summary>
    /// Of which this is one with other diameters, to say how those count by themselves: the fitting around the pipes is that one's, and as much
    /// of each pipe is straight as of that one's.
    /// </summary>
    public RandomTube? Like { get; init; }

    /// <summary>
    /// How its waves are computed: a search decides that once, for the tube that it begins with; half a cent may lie between one choice and another.
    /// </summary>
    public Wavefronts Fronts { get; init; } = Wavefronts.Automatic;

    private RandomTube Made => Like ?? this;

    /// <summary>How much of the open pipe is taken by what is pushed into it or formed from it.</summary>
    public double Hidden => (HasMouth ? Inserted : 0) + (HasBell && !HasEnd ? Slant(Inside) : 0);

    private double Outside => Inside + 2 * Wall;

    private double EndOutside => EndInside + 2 * Wall;

    // The wall of a bell is longer than its axis.
    private double Slant(double from) => double.Hypot(Formed, (BellInside - from) / 2);

    public TubeAssembly Parts(double? cut = null)
    {
        var parts = new List<TubePart>();
        if (HasMouth)
        {
            parts.Add(
                new InsertPart("mouthpiece", Mm(MouthInside), Mm(Inside - 0.2), Mm(Inserted), Mm(Protrudes))
            );
        }

        parts.Add(
            new PipePart("main pipe", Mm(Inside), Mm(Outside), cut is { } given ? Mm(given) : null)
            {
                InsidePlusMinus = Mm(InsidePlusMinus),
            }
        );
        if (HasEnd)
        {
            var (before, after) = (Socket(Outside, GapBefore), Socket(EndOutside, GapAfter));
            parts.Add(JoinPart.Straight("reducer", before, after, Mm(Inside + FittingWider), Mm(Between)));
            parts.Add(new PipePart("end pipe", Mm(EndInside), Mm(EndOutside), Mm(EndCut)));
        }

        if (HasBell)
        {
            parts.Add(new BellPart("bell", Mm(BellInside), Mm(Formed)));
        }

        return new TubeAssembly(parts, Mm(Wall));
    }

    /// <summary>The bore with the open pipe cut to a length and its joints home.</summary>
    /// <param name="cut">The cut, mm.</param>
    /// <param name="fittingOff">How much wider than it should be the fitting is, all of it.</param>
    public Bore Bore(double cut, double fittingOff = 0)
    {
        var sections = new List<Section>();
        void Add(double inside, double length)
        {
            if (length > 0)
            {
                sections.Add(new CylinderSection(Mm(inside), Mm(length)));
            }
        }

        if (HasMouth)
        {
            Add(MouthInside, Inserted + Protrudes);
        }

        Add(Inside, cut - Made.Hidden);
        if (HasEnd)
        {
            Add(Made.Outside - Taper + fittingOff, GapBefore);
            Add(Made.Inside + FittingWider + fittingOff, Between);
            Add(Made.EndOutside - Taper + fittingOff, GapAfter);
            Add(EndInside, EndCut - (HasBell ? Made.Slant(Made.EndInside) : 0));
        }

        if (HasBell)
        {
            sections.Add(new ConeSection(Mm(HasEnd ? EndInside : Inside), Mm(BellInside), Mm(Formed)));
        }

        return new Bore(sections, new OpenEnd(Mm(Wall)));
    }

    public Frequency First(double cut, AirProfile? air = null) => First(Bore(cut), air);

    public Frequency First(Bore bore, AirProfile? air = null) =>
        new Column(bore, air ?? Room, new ColumnOptions { Wavefronts = Fronts })
            .FirstResonances(1)[0]
            .Frequency;

    private FittingSocket Socket(double outside, double gap) =>
        new(Mm(outside + 0.2), Mm(outside - Taper), Mm(Depth), Mm(gap));

    private static RandomTube Of(int seed)
    {
        var random = new Random(seed);
        double Within(double from, double to) =>
            Math.Round(10 * (from + (to - from) * random.NextDouble())) / 10;
        var inside = Within(36, 46);
        var endInside = inside + Within(5, 15);
        var (hasEnd, hasBell) = (random.Next(3) > 0, random.Next(2) == 0);
        return new RandomTube
        {
            HasMouth = random.Next(6) > 0,
            MouthInside = Within(25, 34),
            Inserted = Within(10, 40),
            Protrudes = Within(1, 30),
            Inside = inside,
            InsidePlusMinus = Within(0.2, 0.8),
            HasEnd = hasEnd,
            FittingWider = Within(-3, 3),
            Between = Within(2, 20),
            // None: a socket that is as wide at its bottom as the pipe outside.
            Taper = random.Next(2) * Within(0.1, 0.4),
            Depth = Within(20, 40),
            GapBefore = random.Next(3) > 0 ? Within(0.5, 4) : 0,
            GapAfter = random.Next(3) > 0 ? Within(0.5, 4) : 0,
            EndInside = endInside,
            EndCut = Within(180, 400),
            HasBell = hasBell,
            BellInside = (hasEnd ? endInside : inside) * Within(1.2, 1.6),
            Formed = Within(60, 110),
        };
    }

    /// <summary>Draws them.</summary>
    public static class Drawn
    {
        public static Arbitrary<RandomTube> Tubes() => Gen.Choose(0, int.MaxValue).Select(Of).ToArbitrary();
    }
}
