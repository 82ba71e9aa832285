namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// The frequency axis in bands, each compiled to a block when a frequency in it is first asked for, then kept. Safe to share
/// between threads: a block made twice is the same block.
/// </summary>
internal sealed class WaveBands
{
    // Half the change of 2kℓ over a band, ℓ the longest stretch.
    private const double HalfPhase = 0.35;

    private const double WidestRatio = 1.25;
    private const int MostHalvings = 4;

    // Bands that share a series of what takes long to integrate; how many of them a question must span for it, and how many frequencies have.
    // Which it is depends on the question only, so that what is answered does not depend on what was asked before.
    private const int Group = 32;
    private const int LowGroup = 8; // where they widen, below the turn
    private const int LeastBands = 4;
    private const int LeastFrequencies = 32;

    // Less than a hundred megabytes; a bore so long that more are needed is answered frequency by frequency above.
    private const int MostBands = 10_000;

    private readonly WaveColumn waves;
    private readonly double lowest; // Hz
    private readonly double turn; // Hz, from ratio to width
    private readonly int turnIndex;
    private readonly double width; // Hz
    private readonly double highest; // Hz
    private readonly WaveBlock?[] alone;
    private readonly WaveBlock?[] together; // with the series of their group
    private readonly BandSeries?[] series; // for each group of bands

    public WaveBands(WaveColumn waves, double speedOfSound, double highestHertz)
    {
        this.waves = waves;
        lowest = waves.Lowest;
        width = HalfPhase * speedOfSound / (2 * Math.PI * waves.Stretches.Max(stretch => stretch.Length));
        // A ratio until its width is that of the others.
        turnIndex = Math.Max(0, (int)Math.Ceiling(Math.Log(width / (WidestRatio - 1) / lowest, WidestRatio)));
        turn = lowest * Math.Pow(WidestRatio, turnIndex);
        highest = Math.Min(highestHertz, turn + (MostBands - turnIndex) * width);
        var count = turnIndex + Math.Max(0, (int)Math.Ceiling((highest - turn) / width)) + 1;
        (alone, together) = (new WaveBlock?[count], new WaveBlock?[count]);
        series = new BandSeries?[GroupOf(count - 1) + 1];
    }

    /// <summary>Hz, of the last band.</summary>
    public double Highest => highest;

    /// <summary>Whether rising frequencies, Hz, are so many in so many bands that it is worth while to prepare these together.</summary>
    public bool AreMany(ReadOnlySpan<double> hertz) =>
        hertz.Length >= LeastFrequencies
        && IndexOf(Math.Min(hertz[^1], highest)) - IndexOf(Math.Min(hertz[0], highest)) >= LeastBands - 1;

    /// <summary>The block that holds a frequency; null beyond them.</summary>
    /// <param name="hertz">The frequency, Hz.</param>
    /// <param name="areMany">Whether many bands are asked for at once, see <see cref="AreMany"/>.</param>
    public WaveBlock? At(double hertz, bool areMany)
    {
        if (hertz > highest)
        {
            return null;
        }

        var index = IndexOf(hertz);
        var blocks = areMany ? together : alone;
        var block = Volatile.Read(ref blocks[index]);
        if (block is null)
        {
            block = WaveBlock.Compile(
                waves,
                LowOf(index),
                HighOf(index),
                MostHalvings,
                areMany ? SeriesFor(index) : null
            );
            Volatile.Write(ref blocks[index], block);
        }

        return block.At(hertz);
    }

    private BandSeries SeriesFor(int index)
    {
        var group = GroupOf(index);
        if (Volatile.Read(ref series[group]) is { } made)
        {
            return made;
        }

        made = new BandSeries(
            waves,
            LowOf(Math.Max(0, StartOf(group))),
            HighOf(Math.Min(StartOf(group + 1), together.Length) - 1)
        );
        Volatile.Write(ref series[group], made);
        return made;
    }

    // Counted so that one begins at the turn.
    private int LowGroups => (turnIndex + LowGroup - 1) / LowGroup;

    private int GroupOf(int index) =>
        index < turnIndex
            ? LowGroups - 1 - (turnIndex - 1 - index) / LowGroup
            : LowGroups + (index - turnIndex) / Group;

    private int StartOf(int group) =>
        turnIndex + (group - LowGroups) * (group < LowGroups ? LowGroup : Group);

    private int IndexOf(double hertz)
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

        return index;
    }

    private double HighOf(int index) => Math.Min(LowOf(index + 1), highest * (1 + 1e-12));

    private double LowOf(int index) =>
        index <= turnIndex ? lowest * Math.Pow(WidestRatio, index) : turn + (index - turnIndex) * width;
}
