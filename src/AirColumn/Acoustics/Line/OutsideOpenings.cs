using System.Numerics;
using AirColumn.Acoustics.Radiation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Line;

/// <summary>The openings of a column that hear each other outside: the open far end, if it radiates, then the open tone holes from there.</summary>
internal sealed class OutsideOpenings
{
    private readonly Termination[] ends;
    private readonly MutualImpedance[] pairs; // of i and k < i, at i·(i − 1)/2 + k
    private readonly GasConstants outside;

    private OutsideOpenings(
        bool hasFarEnd,
        Termination[] ends,
        MutualImpedance[] pairs,
        GasConstants outside
    ) => (HasFarEnd, this.ends, this.pairs, this.outside) = (hasFarEnd, ends, pairs, outside);

    /// <summary>Whether the first of them is the far end.</summary>
    public bool HasFarEnd { get; }

    /// <summary>How many there are, 2 or more.</summary>
    public int Count => ends.Length;

    /// <summary>How many pairs of them there are.</summary>
    public int Pairs => pairs.Length;

    /// <summary>Those of a line with some of its holes open; null where none hears another.</summary>
    /// <remarks>An end in a baffle has a wall round it that would send the sound of the holes back; it is not modelled.</remarks>
    public static OutsideOpenings? Of(ColumnLine line, bool[] open)
    {
        var bore = line.Parts.Bore;
        if (bore.FarEnd is BaffledEnd)
        {
            return null;
        }

        var length = bore.LengthMetres;
        var end = bore.FarEnd as OpenEnd;
        var hasFarEnd = end is not null && line.Load.IsSmooth;
        var places = new List<(double Position, double OuterRadius, Termination End)>();
        if (hasFarEnd)
        {
            var wall = bore.Sections[^1].WallAt(bore.Sections[^1].LengthMetres);
            places.Add((length, wall.Radius + end!.WallMetres, line.Load));
        }

        for (var i = bore.Holes.Count - 1; i >= 0; i--)
        {
            if (open[i])
            {
                var hole = bore.Holes[i];
                // Of a hole with a chimney the thickness of the tube is not known.
                var wall = hole.ChimneyWallMetres is null ? hole.HeightMetres : 0;
                places.Add((hole.PositionMetres, line.Holes[i].BoreRadius + wall, line.Holes[i].Open.End));
            }
        }

        if (places.Count < 2)
        {
            return null;
        }

        var pairs = new List<MutualImpedance>();
        for (var i = 1; i < places.Count; i++)
        {
            for (var k = 0; k < i; k++)
            {
                var spacing = places[k].Position - places[i].Position;
                pairs.Add(
                    k == 0 && hasFarEnd
                        ? MutualImpedance.OfHoleAndEnd(spacing, places[0].OuterRadius)
                        : MutualImpedance.OfHoles(
                            spacing,
                            (places[i].OuterRadius + places[k].OuterRadius) / 2
                        )
                );
            }
        }

        return new OutsideOpenings(
            hasFarEnd,
            [.. places.Select(place => place.End)],
            [.. pairs],
            line.Parts.Air.At(length, length).Constants
        );
    }

    /// <summary>Whether another set has the same openings in the same air.</summary>
    public bool IsLike(OutsideOpenings other) =>
        outside == other.outside
        && pairs.AsSpan().SequenceEqual(other.pairs)
        && ends.AsSpan().SequenceEqual(other.ends);

    /// <summary>The place of a pair among all of them.</summary>
    public static int PairOf(int one, int other) =>
        one > other ? one * (one - 1) / 2 + other : other * (other - 1) / 2 + one;

    /// <summary>Pressure over flow, Pa·s/m³, at some ω.</summary>
    /// <param name="omega">ω.</param>
    /// <param name="own">Receives that of each opening by itself.</param>
    /// <param name="impedances">Receives the pressure at one over the flow out of another, of each pair.</param>
    public void At(RealVector omega, Span<ComplexVector> own, Span<ComplexVector> impedances)
    {
        Span<RealVector> gains = stackalloc RealVector[ends.Length];
        var overPoint =
            4 * Math.PI * outside.SpeedOfSound / outside.Density * (RealVector.One / (omega * omega));
        for (var i = 0; i < ends.Length; i++)
        {
            own[i] = ends[i].At(omega).Pressure;
            gains[i] = Vector.SquareRoot(Vector.Max(RealVector.Zero, own[i].Re) * overPoint);
        }

        for (var i = 1; i < ends.Length; i++)
        {
            for (var k = 0; k < i; k++)
            {
                var pair = PairOf(i, k);
                impedances[pair] = pairs[pair]
                    .At(omega, outside.Density, outside.SpeedOfSound, gains[i] * gains[k]);
            }
        }
    }
}
