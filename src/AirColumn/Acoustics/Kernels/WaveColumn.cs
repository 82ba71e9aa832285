using System.Numerics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// A column as waves: stretches of bore between a load and the blown end, compiled for many frequencies in bands and in
/// segments. Safe to share between threads.
/// </summary>
internal sealed class WaveColumn
{
    // Below this many radians along the bore waves cancel to what is asked for; the plain elements do not mind.
    private const double LeastPhase = 0.02;

    // Stretches of a bore: fewer make the bands narrow, more make the sum long.
    private const int LeastStretches = 3;

    // So few frequencies are computed one by one, where a segment would have to be made for them.
    private const int FewForSegment = 4;

    private readonly Column column;

    public WaveColumn(Column column)
    {
        this.column = column;
        Load = column.Load;
        Tolerance = Math.Max(1e-4 * column.Options.Tolerance, 1e-14);
        var reference = Load.Reference;
        Length = column.Elements.OfType<SectionElement>().Sum(e => e.Section.LengthMetres);
        var longest = Length / LeastStretches;
        var pieces = WavePiece.Of(column.Elements, ref reference, longest);
        if (column.Options.BlownEnd.IsOpen)
        {
            pieces.Add(new BlownPiece(column.Blown, reference));
        }

        Stretches = Stretch.Gather(pieces, longest);
        Impedance = 1 / reference.Admittance;
        Corners = [.. Stretches.SelectMany(stretch => stretch.Corners), .. Load.Corners];

        Lowest = LeastPhase * column.Gas.SpeedOfSound / (2 * Math.PI * Length);
        Bands = new WaveBands(this, column.Gas.SpeedOfSound, column.HighestHertz);
        Segments = new WaveSegments(this, column.Gas.SpeedOfSound, column.Options.Tolerance);
    }

    public FarEndLoad Load { get; }

    public Stretch[] Stretches { get; }

    public double Tolerance { get; }

    /// <summary>Frequencies, Hz, where something is not smooth: ends of blocks.</summary>
    public double[] Corners { get; }

    /// <summary>Of the whole bore, m.</summary>
    public double Length { get; }

    /// <summary>Hz; below it waves do not serve.</summary>
    public double Lowest { get; }

    /// <summary>c, m/s, at the blown end.</summary>
    public double SpeedOfSound => column.Gas.SpeedOfSound;

    /// <summary>Series of stretches of this column or of one before it.</summary>
    public SeriesStore Series => column.Compiled.Series;

    /// <summary>For impedances once compiled.</summary>
    public WaveBands Bands { get; }

    /// <summary>For resonances and dense curves of a new column.</summary>
    public WaveSegments Segments { get; }

    /// <summary>What sound takes from end to end, s.</summary>
    public double Delay => Length / SpeedOfSound;

    /// <summary>ρc/S at the blown end.</summary>
    public double Impedance { get; }

    /// <summary>Z at frequencies that the column answers; the three spans of one length.</summary>
    public void Impedances(ReadOnlySpan<double> hertz, Span<double> real, Span<double> imaginary)
    {
        if (column.Modal is not null)
        {
            ModalImpedances(hertz, real, imaginary);
            return;
        }

        var areMany = Bands.AreMany(hertz);
        var i = 0;
        while (i < hertz.Length)
        {
            var block = hertz[i] < Lowest || !Load.IsSmooth ? null : Bands.At(hertz[i], areMany);
            if (block is null || block.IsDirect)
            {
                var z = column.InputImpedance(2 * Math.PI * hertz[i]);
                (real[i], imaginary[i]) = (z.Real, z.Imaginary);
                i++;
                continue;
            }

            var end = i + 1;
            while (end < hertz.Length && hertz[end] >= block.Low && hertz[end] < block.High)
            {
                end++;
            }

            WaveKernel.Run(block, hertz[i..end], real[i..end], imaginary[i..end]);
            i = end;
        }
    }

    // From the segments, where there are frequencies enough to make one or it is there already.
    private void ModalImpedances(ReadOnlySpan<double> hertz, Span<double> real, Span<double> imaginary)
    {
        var i = 0;
        while (i < hertz.Length)
        {
            var end = i + 1;
            if (Segments.SmoothAround(hertz[i]) is var (_, high))
            {
                while (end < hertz.Length && hertz[end] < high && hertz[end] >= hertz[i])
                {
                    end++;
                }

                if (
                    (end - i > FewForSegment || Segments.Has(hertz[i]))
                    && Segments.At(hertz[i]) is { } segment
                )
                {
                    _ = segment.Impedances(hertz[i..end], real[i..end], imaginary[i..end]);
                    i = end;
                    continue;
                }
            }

            for (; i < end; i++)
            {
                var z = column.InputImpedance(2 * Math.PI * hertz[i]);
                (real[i], imaginary[i]) = (z.Real, z.Imaginary);
            }
        }
    }

    /// <summary>Z at one frequency that the column answers.</summary>
    public Complex At(double hertz)
    {
        var (real, imaginary) = (0.0, 0.0);
        Impedances(new(in hertz), new(ref real), new(ref imaginary));
        return new Complex(real, imaginary);
    }

    /// <summary>
    /// (p⁻, p⁺)·a at the blown end for p⁺ = 1 at the far end, at eight frequencies: entire functions of frequency but for the loss functions,
    /// nothing being divided by what may vanish off the axis.
    /// </summary>
    public (ComplexLanes Back, ComplexLanes On) Waves(in FrequencyLanes frequencies, double tolerance)
    {
        if (column.Modal is { } modes)
        {
            var (pressure, flow) = modes.InputAt(frequencies);
            return (0.5 * (pressure - Impedance * flow), 0.5 * (pressure + Impedance * flow));
        }

        var back = Load.ReflectionAt(frequencies.Omega);
        var on = ComplexLanes.One;
        foreach (var stretch in Stretches)
        {
            foreach (var piece in stretch.Pieces)
            {
                piece.Carry(frequencies, tolerance, ref back, ref on);
            }
        }

        return (back, on);
    }
}
