namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// Cones one after the other without a step between them, carried in φ and φ' of <see cref="ConeLanes"/> where boundary layers are thin, which
/// saves the way to waves and back at every joint; section by section elsewhere.
/// </summary>
internal sealed class ThinRun : WavePiece
{
    private readonly SectionPiece[] pieces; // from the far end
    private readonly ThinCone[] cones;
    private readonly double lowest; // rad/s, from where on layers are thin
    private ThinRange? last;

    private ThinRun(SectionPiece[] pieces)
    {
        this.pieces = pieces;
        cones = [.. pieces.Select(piece => piece.Cone!)];
        lowest = cones.Max(cone => cone.Lowest);
        Length = pieces.Sum(piece => piece.Length);
    }

    public override double Length { get; }

    /// <summary>The same pieces, the cones among them gathered into runs.</summary>
    public static WavePiece[] Gather(IEnumerable<WavePiece> pieces)
    {
        var gathered = new List<WavePiece>();
        var run = new List<SectionPiece>();
        foreach (var piece in pieces)
        {
            var cone = piece as SectionPiece is { Cone: not null } section ? section : null;
            if (run.Count > 0 && cone is not { Reflection: 0 })
            {
                gathered.Add(new ThinRun([.. run]));
                run.Clear();
            }

            if (cone is null)
            {
                gathered.Add(piece);
            }
            else
            {
                run.Add(cone);
            }
        }

        if (run.Count > 0)
        {
            gathered.Add(new ThinRun([.. run]));
        }

        return [.. gathered];
    }

    public override LaneMatrix At(in FrequencyLanes frequencies, double tolerance) =>
        frequencies.Lowest >= lowest && RangeFor(frequencies, tolerance) is { Serves: true } range
            ? pieces[0].Reflected(range.Waves(frequencies))
            : OneByOne(frequencies, tolerance);

    public override void Carry(
        in FrequencyLanes frequencies,
        double tolerance,
        ref ComplexLanes back,
        ref ComplexLanes on
    )
    {
        if (frequencies.Lowest >= lowest && RangeFor(frequencies, tolerance) is { Serves: true } range)
        {
            var reflection = pieces[0].Reflection;
            (back, on) = (back + reflection * on, on + reflection * back);
            range.Carry(frequencies, ref back, ref on);
        }
        else
        {
            foreach (var piece in pieces)
            {
                piece.Carry(frequencies, tolerance, ref back, ref on);
            }
        }
    }

    private ThinRange RangeFor(in FrequencyLanes frequencies, double tolerance)
    {
        var bottom = Math.Max(lowest, frequencies.Bottom);
        var range = Volatile.Read(ref last);
        if (range?.Is(bottom, frequencies.Top, tolerance) != true)
        {
            range = new ThinRange(cones, bottom, frequencies.Top, tolerance);
            Volatile.Write(ref last, range);
        }

        return range;
    }

    private LaneMatrix OneByOne(in FrequencyLanes frequencies, double tolerance)
    {
        var total = pieces[0].At(frequencies, tolerance);
        foreach (var piece in pieces.AsSpan(1))
        {
            total = (piece.At(frequencies, tolerance) * total).InRange();
        }

        return total;
    }
}
