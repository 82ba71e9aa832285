using UnitsNet;

namespace AirColumn;

/// <summary>A stretch of a smooth section, where something divides it: a hole, a change of the air.</summary>
internal sealed record SectionSlice : Section
{
    private readonly Section whole;
    private readonly double from;

    /// <summary>The stretch of <paramref name="whole"/> between two places, m from its inlet.</summary>
    public SectionSlice(Section whole, double from, double to)
        : base(to - from)
    {
        this.whole = whole;
        this.from = from;
    }

    // Smooth sections widen or narrow throughout.
    internal override double LargestRadius => Math.Max(WallAt(0).Radius, WallAt(LengthMetres).Radius);

    /// <inheritdoc/>
    public override Section WithLength(Length length) =>
        throw new NotSupportedException("A slice of a section has the length it was cut to.");

    internal override Section WithEnds(double inlet, double outlet) =>
        throw new NotSupportedException("A slice of a section has the ends it was cut to.");

    internal override Section Slice(double from, double to) => whole.Slice(this.from + from, this.from + to);

    internal override Wall WallAt(double x) => whole.WallAt(Math.Min(from + x, whole.LengthMetres));
}
