using AirColumn.Bores;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// Neighbouring pieces taken together: what counts for the work of a spectrum is how long a stretch is in wavelengths, not how
/// many sections describe it.
/// </summary>
internal sealed class Stretch(WavePiece[] pieces)
{
    private readonly WavePiece[] gathered = ThinRun.Gather(pieces);

    /// <summary>In the order of the state.</summary>
    public WavePiece[] Pieces => gathered;

    /// <summary>What it does is the same where these are.</summary>
    public PieceKey[] Keys => Array.ConvertAll(pieces, piece => piece.Key);

    /// <summary>m.</summary>
    public double Length { get; } = pieces.Sum(piece => piece.Length);

    /// <summary>Whether its matrix has all four entries; else the last is 1.</summary>
    public bool IsGeneral { get; } = Array.Exists(pieces, piece => piece.MayStop);

    /// <summary>Whether its matrix takes longer than a sum of a series.</summary>
    public bool IsCostly { get; } =
        Array.Exists(
            pieces,
            piece =>
                piece is SidePiece or SectionPiece { Element.Section: not (CylinderSection or BendSection) }
        );

    public IEnumerable<double> Corners => pieces.SelectMany(piece => piece.Corners);

    /// <summary>Pieces in the order of the state, gathered up to a length, those that may stop each by itself.</summary>
    public static Stretch[] Gather(IReadOnlyList<WavePiece> pieces, double longest)
    {
        var stretches = new List<Stretch>();
        var group = new List<WavePiece>();
        var length = 0.0;
        foreach (var piece in pieces)
        {
            if (group.Count > 0 && (piece.MayStop || length + piece.Length > longest * (1 + 1e-9)))
            {
                Close();
            }

            group.Add(piece);
            length += piece.Length;
            if (piece.MayStop)
            {
                Close();
            }
        }

        if (group.Count > 0)
        {
            Close();
        }

        return [.. stretches];

        void Close()
        {
            stretches.Add(new Stretch([.. group]));
            group.Clear();
            length = 0;
        }
    }

    /// <summary>W, b and c of [W, b; c, 1]; all four entries where it is general.</summary>
    public LaneMatrix At(in FrequencyLanes frequencies, double tolerance)
    {
        var m = gathered[0].At(frequencies, tolerance);
        if (IsGeneral)
        {
            return m;
        }

        m = m.Normalised();
        for (var i = 1; i < gathered.Length; i++)
        {
            m = (gathered[i].At(frequencies, tolerance).Normalised() * m).Normalised();
        }

        return m;
    }

    /// <summary>All four entries, nothing divided by what may vanish off the axis.</summary>
    public LaneMatrix EntriesAt(in FrequencyLanes frequencies, double tolerance)
    {
        var m = gathered[0].At(frequencies, tolerance);
        for (var i = 1; i < gathered.Length; i++)
        {
            m = gathered[i].At(frequencies, tolerance) * m;
        }

        return m;
    }
}
