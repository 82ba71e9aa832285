using System.Numerics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// A column compiled for many frequencies: blocks of the frequency axis, each made when a frequency in it is first asked for,
/// then kept. Safe to share between threads: a block made twice is the same block.
/// </summary>
internal sealed class WaveColumn
{
    // Below this many radians along the bore waves cancel to what is asked for; the plain elements do not mind.
    private const double LeastPhase = 0.02;

    // Stretches of a bore: fewer make the blocks narrow, more make the sum long.
    private const int LeastStretches = 3;

    // Half the change of 2kℓ over a block, ℓ the longest stretch.
    private const double HalfPhase = 0.35;

    private const double WidestRatio = 1.25;
    private const int MostHalvings = 4;

    // Some tens of megabytes at most; a bore so long that more are needed is answered frequency by frequency above.
    private const int MostBlocks = 10_000;

    // Of the waves; beside a sharp resonance Z is some hundred times as far off.
    private const double InterpolationTolerance = 1e-13;

    private const int ModesPerSegment = 4;
    private const int MostSegments = 3000;

    private readonly Column column;
    private readonly double total; // length, m
    private readonly double lowest; // Hz
    private readonly double turn; // from ratio to width
    private readonly double width; // Hz
    private readonly double highest; // Hz
    private readonly int turnIndex;
    private readonly WaveBlock?[] blocks;
    private readonly double[] segmentEnds; // Hz, rising
    private readonly Fitted?[] segments;

    public WaveColumn(Column column)
    {
        this.column = column;
        Load = column.Load;
        Tolerance = Math.Min(0.1 * column.Options.Tolerance, 1e-14);
        var reference = Load.Reference;
        total = column.Elements.OfType<SectionElement>().Sum(e => e.Section.LengthMetres);
        var longest = total / LeastStretches;
        var pieces = WavePiece.Of(column.Elements, ref reference, longest);
        if (column.Options.BlownEnd.IsOpen)
        {
            pieces.Add(new BlownPiece(column.Blown, reference));
        }

        Stretches = Stretch.Gather(pieces, longest);
        Impedance = 1 / reference.Admittance;
        Corners = [.. Stretches.SelectMany(stretch => stretch.Corners), .. Load.Corners];

        var c = column.Gas.SpeedOfSound;
        lowest = LeastPhase * c / (2 * Math.PI * total);
        width = HalfPhase * c / (2 * Math.PI * Stretches.Max(stretch => stretch.Length));
        // A ratio until its width is that of the others.
        turnIndex = Math.Max(0, (int)Math.Ceiling(Math.Log(width / (WidestRatio - 1) / lowest, WidestRatio)));
        turn = lowest * Math.Pow(WidestRatio, turnIndex);
        highest = Math.Min(column.HighestHertz, turn + (MostBlocks - turnIndex) * width);
        segmentEnds = SegmentEnds(
            total,
            c,
            Math.Min(highest, MostSegments * ModesPerSegment * c / (2 * total))
        );
        segments = new Fitted?[segmentEnds.Length - 1];
        blocks = new WaveBlock?[turnIndex + Math.Max(0, (int)Math.Ceiling((highest - turn) / width)) + 1];
    }

    public FarEndLoad Load { get; }

    public Stretch[] Stretches { get; }

    public double Tolerance { get; }

    /// <summary>Frequencies, Hz, where something is not smooth: ends of blocks.</summary>
    public double[] Corners { get; }

    /// <summary>What sound takes from end to end, s.</summary>
    public double Delay => total / column.Gas.SpeedOfSound;

    /// <summary>ρc/S at the blown end.</summary>
    public double Impedance { get; }

    /// <summary>Z at frequencies that the column answers; the three spans of one length.</summary>
    public void Impedances(ReadOnlySpan<double> hertz, Span<double> real, Span<double> imaginary)
    {
        var i = 0;
        while (i < hertz.Length)
        {
            var block = hertz[i] < lowest || !Load.IsSmooth ? null : BlockAt(hertz[i]);
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

    /// <summary>Z at one frequency that the column answers.</summary>
    public Complex At(double hertz)
    {
        var (real, imaginary) = (0.0, 0.0);
        Impedances(new(in hertz), new(ref real), new(ref imaginary));
        return new Complex(real, imaginary);
    }

    /// <summary>(p⁻, p⁺)·a at the blown end for p⁺ near 1 at the far end, at eight frequencies.</summary>
    public (ComplexLanes Back, ComplexLanes On) Waves(in FrequencyLanes frequencies, double tolerance)
    {
        var back = Load.ReflectionAt(frequencies.Omega);
        var on = ComplexLanes.One;
        foreach (var stretch in Stretches)
        {
            var m = stretch.At(frequencies, tolerance);
            (back, on) = (
                ComplexLanes.MultiplyAdd(m.A, back, m.B * on),
                ComplexLanes.MultiplyAdd(m.C, back, stretch.IsGeneral ? m.D * on : on)
            );
        }

        return (back, on);
    }

    /// <summary>
    /// The state at the blown end around a frequency, as one smooth function that reaches beyond it by half a resonance or to a
    /// corner; null where waves do not serve.
    /// </summary>
    public WaveSegment? SegmentAt(double hertz)
    {
        if (SegmentIndex(hertz) is not { } index)
        {
            return null;
        }

        var segment = Volatile.Read(ref segments[index]);
        if (segment is null)
        {
            segment = new Fitted(Segment(segmentEnds[index], segmentEnds[index + 1]));
            Volatile.Write(ref segments[index], segment);
        }

        return segment.Segment;
    }

    /// <summary>Between which frequencies, Hz, the state is smooth enough for one series; null where waves do not serve.</summary>
    public (double Low, double High)? SmoothAround(double hertz) =>
        SegmentIndex(hertz) is { } index ? (segmentEnds[index], segmentEnds[index + 1]) : null;

    private int? SegmentIndex(double hertz)
    {
        if (hertz < lowest || hertz >= segmentEnds[^1] || !Load.IsSmooth)
        {
            return null;
        }

        var index = Array.BinarySearch(segmentEnds, hertz);
        return index >= 0 ? index : ~index - 1;
    }

    private WaveSegment? Segment(double low, double high)
    {
        var reach = 0.5 * column.Gas.SpeedOfSound / (2 * total);
        var below = Math.Max(low - Math.Min(reach, 0.3 * low), lowest);
        var above = Math.Min(high + reach, segmentEnds[^1]);
        foreach (var corner in Corners)
        {
            below = corner <= low ? Math.Max(below, corner) : below;
            above = corner >= high ? Math.Min(above, corner) : above;
        }

        return WaveSegment.Fit(this, below, above, column.Options.Tolerance, 0.1 * column.Options.Tolerance);
    }

    /// <summary>Z at rising frequencies, interpolated; how far it may be off, relative.</summary>
    public double Interpolate(ReadOnlySpan<double> hertz, Span<double> real, Span<double> imaginary)
    {
        var error = 0.0;
        var i = 0;
        while (i < hertz.Length)
        {
            var end = i + 1;
            WaveSegment? segment = null;
            if (SmoothAround(hertz[i]) is var (low, high))
            {
                while (end < hertz.Length && hertz[end] < high)
                {
                    end++;
                }

                // Fewer frequencies than nodes gain nothing.
                segment =
                    end - i < WaveSegment.FewestNodes
                        ? null
                        : WaveSegment.Fit(
                            this,
                            low,
                            high,
                            Math.Min(column.Options.Tolerance, InterpolationTolerance),
                            InterpolationTolerance
                        );
            }

            if (segment is null)
            {
                Impedances(hertz[i..end], real[i..end], imaginary[i..end]);
            }
            else
            {
                error = Math.Max(error, segment.Impedances(hertz[i..end], real[i..end], imaginary[i..end]));
            }

            i = end;
        }

        return error;
    }

    /// <summary>The block that holds a frequency; null beyond them.</summary>
    public WaveBlock? BlockAt(double hertz)
    {
        if (hertz > highest)
        {
            return null;
        }

        var index =
            hertz < turn
                ? (int)Math.Log(hertz / lowest, WidestRatio)
                : turnIndex + (int)((hertz - turn) / width);
        // Rounding of the logarithm may be one off.
        index = Math.Max(0, index);
        while (index > 0 && hertz < LowOf(index))
        {
            index--;
        }

        while (hertz >= LowOf(index + 1))
        {
            index++;
        }

        var block = Volatile.Read(ref blocks[index]);
        if (block is null)
        {
            block = WaveBlock.Compile(
                this,
                LowOf(index),
                Math.Min(LowOf(index + 1), highest * (1 + 1e-12)),
                MostHalvings
            );
            Volatile.Write(ref blocks[index], block);
        }

        return block.At(hertz);
    }

    // A few resonances each, narrower below, where √f turns; and at corners.
    private double[] SegmentEnds(double length, double c, double end)
    {
        var ends = new SortedSet<double> { lowest };
        var spacing = ModesPerSegment * c / (2 * length);
        for (var f = spacing; f < end * (1 - 1e-9); f += spacing)
        {
            ends.Add(f);
        }

        for (var f = spacing / 8; f > lowest; f /= 8)
        {
            ends.Add(f);
        }

        ends.UnionWith(Corners.Where(corner => corner > lowest && corner < end));
        ends.Add(end);
        return [.. ends];
    }

    private double LowOf(int index) =>
        index <= turnIndex ? lowest * Math.Pow(WidestRatio, index) : turn + (index - turnIndex) * width;

    // A fit, or that there is none.
    private sealed record Fitted(WaveSegment? Segment);
}
