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

    private readonly Column column;
    private readonly double lowest; // Hz
    private readonly double turn; // from ratio to width
    private readonly double width; // Hz
    private readonly int turnIndex;
    private readonly WaveBlock?[] blocks;

    public WaveColumn(Column column)
    {
        this.column = column;
        Load = column.Load;
        Tolerance = Math.Min(0.1 * column.Options.Tolerance, 1e-14);
        var reference = Load.Reference;
        var total = column.Elements.OfType<SectionElement>().Sum(e => e.Section.LengthMetres);
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
        var highest = Math.Min(column.HighestHertz, 1e6);
        blocks = new WaveBlock?[turnIndex + Math.Max(0, (int)Math.Ceiling((highest - turn) / width)) + 1];
    }

    public FarEndLoad Load { get; }

    public Stretch[] Stretches { get; }

    public double Tolerance { get; }

    /// <summary>Frequencies, Hz, where something is not smooth: ends of blocks.</summary>
    public double[] Corners { get; }

    /// <summary>ρc/S at the blown end.</summary>
    public double Impedance { get; }

    /// <summary>Z at frequencies that the column answers; only as many spans as are long.</summary>
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

    /// <summary>The block that holds a frequency; null beyond them.</summary>
    public WaveBlock? BlockAt(double hertz)
    {
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

        if (index >= blocks.Length)
        {
            return null;
        }

        var block = Volatile.Read(ref blocks[index]);
        if (block is null)
        {
            var highest = Math.Min(column.HighestHertz, 1e6);
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

    private double LowOf(int index) =>
        index <= turnIndex ? lowest * Math.Pow(WidestRatio, index) : turn + (index - turnIndex) * width;
}
