using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>For each stretch of a column a series over a group of bands, or null where the stretch is better asked itself.</summary>
internal sealed class BandSeries
{
    private readonly double scale;
    private readonly double shift;
    private readonly StretchSeries?[] stretches;

    /// <summary>Fits them between two frequencies, Hz.</summary>
    public BandSeries(WaveColumn column, double low, double high)
    {
        (scale, shift) = WaveSegment.Variable(low, high);
        stretches = Array.ConvertAll(
            column.Stretches,
            stretch => stretch.IsCostly ? column.Series.Of(stretch, column, low, high) : null
        );
        Terms = stretches.Max(series => series?.Terms ?? 0);
    }

    /// <summary>The most terms of any.</summary>
    public int Terms { get; }

    /// <summary>That of a stretch.</summary>
    public StretchSeries? this[int stretch] => stretches[stretch];

    /// <summary>Polynomials that they are sums of, at eight √f.</summary>
    public void Polynomials(Vector512<double> root, Span<Vector512<double>> polynomials) =>
        StretchSeries.Polynomials(root * scale + Vector512.Create(shift), polynomials);
}
