using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// A column for the number of modes that is asked for or needed, and for another number to compare it with. Safe to share between
/// threads.
/// </summary>
internal sealed class ModalFamily
{
    // Cents by which more modes may be estimated to move what is at the frequencies that count; the aim is a tenth.
    private const double Enough = 0.07;

    private const int SampleCount = 4;
    private const double CountedResonances = 12;
    private const double Step = 1e-4; // of the frequency, for the change of phase with it

    // Error over number of modes to this power: edges and corners make it fall at least as the square. A faster fall is believed where it was seen.
    private const double SlowestFall = 2;
    private const double FastestFall = 4;

    private static readonly int[] Counts = [3, 4, 6, 8, 10, 12];

    private readonly ColumnModel column;
    private readonly MouthStore mouths;
    private ModalColumn? other; // made when first asked for

    public ModalFamily(ColumnModel column, MouthStore mouths, CancellationToken cancellationToken)
    {
        (this.column, this.mouths) = (column, mouths);
        if (column.Options.Modes is { } asked)
        {
            Chosen = new ModalColumn(column, asked, mouths, cancellationToken);
            return;
        }

        var samples = Samples();
        var tried = new List<(ModalColumn Column, ComplexVector[] Answer)>();
        var (before, fall) = (0.0, SlowestFall);
        foreach (var modes in Counts)
        {
            var made = new ModalColumn(column, modes, mouths, cancellationToken);
            tried.Add((made, Reflections(made, samples, cancellationToken)));
            if (tried.Count == 1)
            {
                continue;
            }

            var moved = Shift(tried[^2].Answer, tried[^1].Answer, samples, SampleCount);
            fall = tried.Count == 2 ? SlowestFall : Fall(tried, before / moved);
            before = moved;
            if (moved * Share(tried[^2].Column.Modes, modes, fall) <= Enough)
            {
                break;
            }
        }

        Chosen = tried[^1].Column;
        other = tried.Find(fewer => fewer.Column.Modes == Chosen.Modes - 2).Column;
    }

    // What is left with more modes over what it has moved by from fewer on, errors falling as a power.
    private static double Share(int fewer, int more, double fall) =>
        1 / (Math.Pow((double)more / fewer, fall) - 1);

    // The power that explains by how much less the last step moved than the one before.
    private static double Fall(List<(ModalColumn Column, ComplexVector[] Answer)> tried, double ratio)
    {
        var (first, second, third) = (tried[^3].Column.Modes, tried[^2].Column.Modes, tried[^1].Column.Modes);
        var (low, high) = (SlowestFall, FastestFall);
        for (var i = 0; i < 20; i++)
        {
            var middle = 0.5 * (low + high);
            var explained =
                (Math.Pow(first, -middle) - Math.Pow(second, -middle))
                / (Math.Pow(second, -middle) - Math.Pow(third, -middle));
            (low, high) = explained < ratio ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The column for as many modes as are carried.</summary>
    public ModalColumn Chosen { get; }

    /// <summary>
    /// The largest shift, in cents, of what is at any of the frequencies, Hz, between the modes that are carried and two fewer (or, if
    /// there are not as many, two more).
    /// </summary>
    public double ConvergenceAt(ReadOnlySpan<double> hertz, CancellationToken cancellationToken)
    {
        var (modes, compared) = (Chosen.Modes, other);
        // Two fewer; or where there are not as many, two more.
        compared ??=
            Interlocked.CompareExchange(
                ref other,
                new ModalColumn(column, modes > 2 ? modes - 2 : modes + 2, mouths, cancellationToken),
                null
            ) ?? other;
        var pairs = Pairs(hertz);
        return Shift(
            Reflections(compared, pairs, cancellationToken),
            Reflections(Chosen, pairs, cancellationToken),
            pairs,
            hertz.Length
        );
    }

    /// <summary>The same at eight of the frequencies of a grid.</summary>
    public double ConvergenceOver(ReadOnlySpan<double> hertz, CancellationToken cancellationToken)
    {
        var some = new double[Math.Min(8, hertz.Length)];
        for (var i = 0; i < some.Length; i++)
        {
            some[i] = hertz[(int)((long)i * (hertz.Length - 1) / Math.Max(1, some.Length - 1))];
        }

        return ConvergenceAt(some, cancellationToken);
    }

    // Up to half of where the column answers, or to where a dozen resonances lie: the highest frequencies ask for more modes than the resonances
    // there are worth.
    private FrequencyVector[] Samples()
    {
        var first = column.Gas.SpeedOfSound / (4 * column.Bore.LengthMetres);
        var high = Math.Min(
            0.5 * Math.Min(column.HighestHertz, column.CutOnHertz),
            2 * CountedResonances * first
        );
        var low = Math.Min(first, 0.5 * high);
        return Pairs([
            .. Enumerable
                .Range(0, SampleCount)
                .Select(i => low * Math.Pow(high / low, i / (SampleCount - 1.0))),
        ]);
    }

    // Each frequency and one a little higher.
    private FrequencyVector[] Pairs(ReadOnlySpan<double> hertz)
    {
        var all = new double[2 * hertz.Length];
        for (var i = 0; i < hertz.Length; i++)
        {
            all[2 * i] = Math.Min(hertz[i], column.HighestHertz * (1 - Step));
            all[2 * i + 1] = all[2 * i] * (1 + Step);
        }

        var vectors = new FrequencyVector[(all.Length + RealVectors.Count - 1) / RealVectors.Count];
        for (var v = 0; v < vectors.Length; v++)
        {
            var from = v * RealVectors.Count;
            vectors[v] = FrequencyVector.OfHertz(
                all.AsSpan(from, Math.Min(RealVectors.Count, all.Length - from))
            );
        }

        return vectors;
    }

    // The phase of what comes back at the blown end, and by how many cents the frequency has to change to make up for the difference.
    private double Shift(ComplexVector[] a, ComplexVector[] b, FrequencyVector[] pairs, int frequencies)
    {
        var (worst, count) = (0.0, RealVectors.Count);
        for (var i = 0; i < 2 * frequencies; i += 2)
        {
            var change = (At(a, i) / At(b, i)).Phase;
            var rate = (At(b, i + 1) / At(b, i)).Phase / Step;
            // Between resonances the phase hardly moves, and a shift of it is none of theirs: not less than that of the plain tube.
            var omega = pairs[i / count].Omega[i % count];
            var least = omega * column.Bore.LengthMetres / column.Gas.SpeedOfSound;
            worst = Math.Max(worst, Math.Abs(change) / Math.Max(Math.Abs(rate), least));
        }

        return 1200 / Math.Log(2) * worst;

        Complex At(ComplexVector[] values, int i) => values[i / count].At(i % count);
    }

    private ComplexVector[] Reflections(
        ModalColumn modes,
        FrequencyVector[] frequencies,
        CancellationToken cancellationToken
    ) =>
        [
            .. frequencies.Select(frequency =>
            {
                var (p, u) = modes.InputAt(frequency, cancellationToken);
                var wave = column.Impedance * u;
                return (p - wave) / (p + wave);
            }),
        ];
}
