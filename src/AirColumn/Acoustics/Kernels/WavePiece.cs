using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Radiation;
using AirColumn.Bores;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// One piece of a column between waves: (p⁻, p⁺)·a on its near side from those on its far side, up to a factor; in the order in
/// which the state is carried.
/// </summary>
internal abstract class WavePiece
{
    /// <summary>What it takes from one end to the other, m; of a side branch, its depth.</summary>
    public virtual double Length => 0;

    /// <summary>Whether transmission through it may vanish, so that its matrix has no entry to divide by.</summary>
    public virtual bool MayStop => false;

    /// <summary>Frequencies, Hz, where it is not smooth.</summary>
    public virtual IEnumerable<double> Corners => [];

    /// <summary>What it does is the same where this is.</summary>
    public virtual PieceKey Key => new(this, 0, 0, 0);

    public abstract LaneMatrix At(in FrequencyLanes frequencies, double tolerance);

    /// <summary>The waves on its near side in place of those on its far side.</summary>
    public virtual void Carry(
        in FrequencyLanes frequencies,
        double tolerance,
        ref ComplexLanes back,
        ref ComplexLanes on
    )
    {
        var m = At(frequencies, tolerance);
        (back, on) = (
            ComplexLanes.MultiplyAdd(m.A, back, m.B * on),
            ComplexLanes.MultiplyAdd(m.C, back, m.D * on)
        );
    }

    /// <summary>The pieces of elements from the far end, and the reference at the near side of the first.</summary>
    public static List<WavePiece> Of(
        IReadOnlyList<Element> elements,
        ref WaveReference reference,
        double longest
    )
    {
        var pieces = new List<WavePiece>();
        for (var i = elements.Count - 1; i >= 0; i--)
        {
            switch (elements[i])
            {
                case SectionElement section:
                    var (length, gas) = (section.Section.LengthMetres, section.Gas);
                    var count = Math.Max(1, (int)Math.Ceiling(length / longest * (1 - 1e-9)));
                    for (var n = count - 1; n >= 0; n--)
                    {
                        var (from, to) = (
                            length * n / count,
                            n == count - 1 ? length : length * (n + 1) / count
                        );
                        var rho = gas.Density * gas.SpeedOfSound;
                        var far = new WaveReference(section.Section.WallAt(to).Radius, rho);
                        pieces.Add(new SectionPiece(section, from, to, far.ReflectionTo(reference)));
                        reference = new WaveReference(section.Section.WallAt(from).Radius, rho);
                    }

                    break;
                case InertanceElement mass:
                    pieces.Add(new MassPiece(mass, reference));
                    break;
                case SideElement side:
                    pieces.Add(new SidePiece(side, reference));
                    break;
                default:
                    throw new InvalidOperationException($"No waves for {elements[i].GetType().Name}.");
            }
        }

        return pieces;
    }

    // An impedance in series, over ρc/S: ψ grows by y·w.
    private protected static LaneMatrix InSeries(ComplexLanes y) =>
        new LaneMatrix(ComplexLanes.One, y, ComplexLanes.Zero, ComplexLanes.One).OfWaves();
}

/// <summary>A compiled element and what else decides what a piece does to waves.</summary>
internal readonly record struct PieceKey(object Of, double First, double Second, double Third);

/// <summary>A stretch of a section.</summary>
internal sealed class SectionPiece : WavePiece
{
    private readonly double from;
    private readonly double to;
    private ThinCone? cone;

    public SectionPiece(SectionElement element, double from, double to, double reflection)
    {
        (Element, this.from, this.to, Reflection) = (element, from, to, reflection);
    }

    public override double Length => to - from;

    public SectionElement Element { get; }

    public override PieceKey Key => new(Element, from, to, Reflection);

    /// <summary>Of the change of reference at its far side; 0 where nothing changes.</summary>
    public double Reflection { get; }

    /// <summary>The same where boundary layers are thin; null if it is no cone.</summary>
    public ThinCone? Cone => Element.Section is ConeSection ? cone ??= new ThinCone(Element, from, to) : null;

    public override LaneMatrix At(in FrequencyLanes frequencies, double tolerance) =>
        Reflected(new SectionLanes(Element, frequencies, tolerance).Between(from, to));

    /// <summary>With what comes back at its far side.</summary>
    public LaneMatrix Reflected(in LaneMatrix m) =>
        Reflection == 0
            ? m
            : new LaneMatrix(
                m.A + Reflection * m.B,
                m.B + Reflection * m.A,
                m.C + Reflection * m.D,
                m.D + Reflection * m.C
            );
}

/// <summary>A mass in series.</summary>
internal sealed class MassPiece(InertanceElement mass, WaveReference reference) : WavePiece
{
    public override PieceKey Key => new(mass, reference.Radius, reference.Impedance, 0);

    public override IEnumerable<double> Corners => mass.Corner is { } omega ? [omega / (2 * Math.PI)] : [];

    public override LaneMatrix At(in FrequencyLanes frequencies, double tolerance)
    {
        var omega = frequencies.Omega;
        var y = ComplexLanes.Each(i =>
            new(0, omega.GetElement(i) * mass.InertanceAt(omega.GetElement(i)) * reference.Admittance)
        );
        return InSeries(y);
    }
}

/// <summary>What lies outside an open blown end.</summary>
internal sealed class BlownPiece(BlownLoad blown, WaveReference reference) : WavePiece
{
    public override PieceKey Key => new(blown, reference.Radius, reference.Impedance, 0);

    public override IEnumerable<double> Corners => blown.Loads.SelectMany(load => load.Corners);

    public override LaneMatrix At(in FrequencyLanes frequencies, double tolerance)
    {
        var omega = frequencies.Omega;
        return InSeries(ComplexLanes.Each(i => reference.Admittance * blown.Impedance(omega.GetElement(i))));
    }
}

/// <summary>
/// A hole or branch, times the pressure at its foot, which leaves all entries free of poles: but nothing passes where that
/// vanishes.
/// </summary>
internal sealed class SidePiece : WavePiece
{
    private readonly SideElement side;
    private readonly WaveReference reference;
    private readonly WaveReference foot;
    private readonly WavePiece[] branch;

    public SidePiece(SideElement side, in WaveReference reference)
    {
        this.side = side;
        this.reference = reference;
        foot = side.Load.Reference;
        branch = ThinRun.Gather(Of(side.Elements, ref foot, double.PositiveInfinity));
        Length = branch.Sum(piece => piece.Length);
    }

    public override double Length { get; }

    public override bool MayStop => true;

    public override PieceKey Key => new(side, reference.Radius, reference.Impedance, 0);

    public override IEnumerable<double> Corners =>
        [.. branch.SelectMany(p => p.Corners), .. side.Load.Corners];

    public override LaneMatrix At(in FrequencyLanes frequencies, double tolerance)
    {
        var omega = frequencies.Omega;
        var back = side.Load.ReflectionAt(omega);
        var on = ComplexLanes.One;
        foreach (var piece in branch)
        {
            piece.Carry(frequencies, tolerance, ref back, ref on);
        }

        // Pressure and flow there, each over a common factor.
        var pressure = back + on;
        var flow = foot.Admittance * (on - back);
        var arm = new ComplexLanes(Vector512<double>.Zero, (0.5 * side.SeriesMass) * omega);
        var shunt = pressure + arm * flow;
        return new LaneMatrix(
            shunt,
            reference.Admittance * (arm * (pressure + shunt)),
            (1 / reference.Admittance) * flow,
            shunt
        ).OfWaves();
    }
}
