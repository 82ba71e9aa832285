using AirColumn.Acoustics.Propagation;

namespace AirColumn.Acoustics.Spectra;

/// <summary>
/// The state at the blown end over a range of frequencies, in pieces that end at corners of the models and where the state changes too much
/// for one series. Which pieces there are depends on the column and the range alone. Immutable.
/// </summary>
internal sealed class Spectrum
{
    // Of the range of a piece, below which what is not smooth is left to direct evaluation.
    private const int MostHalvings = 9;

    // What a useful series leaves out is to fall to that when a range is halved; if not, it is rounding, and halving again would not help.
    private const double Helps = 0.3;

    private const double MostLeftOut = 1e-6; // of the smallest state, by a series that is of use

    private readonly SpectrumPiece?[] pieces; // null where no series serves
    private readonly double[] ends; // Hz, rising

    private Spectrum(List<SpectrumPiece?> pieces, List<double> ends, bool isSmooth) =>
        (this.pieces, this.ends, IsSmooth) = ([.. pieces], [.. ends], isSmooth);

    /// <summary>Whether there may be series at all.</summary>
    public bool IsSmooth { get; }

    /// <summary>Hz.</summary>
    public double Low => ends[0];

    /// <summary>Hz.</summary>
    public double High => ends[^1];

    /// <summary>Makes it, Hz.</summary>
    /// <param name="wave">The column's waves.</param>
    /// <param name="low">Above 0.</param>
    /// <param name="high">Above that.</param>
    /// <param name="tolerance">Of the two-port of a segment.</param>
    /// <param name="allowed">What a series may leave out of the state.</param>
    /// <param name="isSmooth">Whether there may be series at all.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public static Spectrum Of(
        InputWave wave,
        double low,
        double high,
        double tolerance,
        double allowed,
        bool isSmooth,
        CancellationToken cancellationToken
    )
    {
        var pieces = new List<SpectrumPiece?>(1);
        var ends = new List<double>(2) { low };
        foreach (var corner in wave.Corners.Where(hertz => hertz > low && hertz < high).Order())
        {
            if (corner > ends[^1] * (1 + 1e-12))
            {
                Add(ends[^1], corner, 0, double.PositiveInfinity);
            }
        }

        Add(ends[^1], high, 0, double.PositiveInfinity);
        return new Spectrum(pieces, ends, isSmooth);

        void Add(double from, double to, int halvings, double before)
        {
            var range = new RootRange(from, to);
            var piece = isSmooth
                ? SpectrumPiece.Fit(wave, range, tolerance, allowed, cancellationToken)
                : null;
            var leftOut = piece?.LeftOut ?? double.PositiveInfinity;
            if (
                isSmooth
                && leftOut > 0
                && halvings < MostHalvings
                && (leftOut > MostLeftOut || leftOut < Helps * before)
            )
            {
                Add(from, range.Middle, halvings + 1, leftOut);
                Add(range.Middle, to, halvings + 1, leftOut);
                return;
            }

            pieces.Add(leftOut <= MostLeftOut ? piece : null);
            ends.Add(to);
        }
    }

    /// <summary>The piece that holds a frequency, Hz; null where no series serves, or outside.</summary>
    public SpectrumPiece? PieceAt(double hertz) =>
        hertz >= Low && hertz <= High ? pieces[IndexOf(hertz)] : null;

    /// <summary>Where the piece that holds a frequency ends, Hz.</summary>
    public double EndOf(double hertz) => ends[IndexOf(hertz) + 1];

    private int IndexOf(double hertz)
    {
        var index = Array.BinarySearch(ends, hertz);
        return Math.Clamp(index >= 0 ? index : ~index - 1, 0, pieces.Length - 1);
    }
}
