using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// A column for the number of modes that is asked for or needed, and for another number to compare it with. Safe to share between
/// threads.
/// </summary>
internal sealed class ModalFamily
{
    // Of the estimate of what more modes would change, cents.
    private const double Enough = 0.05;

    private const int Most = 12;
    private const int SampleCount = 4;
    private const double Step = 1e-4; // of the frequency, for the change of phase with it

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
        var fewer = new ModalColumn(column, 2, mouths, cancellationToken);
        for (var modes = 4; ; modes += 2)
        {
            var more = new ModalColumn(column, modes, mouths, cancellationToken);
            // The rest falls as one over the square of the number, or faster: edges and corners see to that.
            var ratio = (double)modes / (modes - 2);
            if (
                Shift(fewer, more, samples, cancellationToken) <= Enough * (ratio * ratio - 1)
                || modes == Most
            )
            {
                (Chosen, other) = (more, fewer);
                return;
            }

            fewer = more;
        }
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
        return Shift(compared, Chosen, hertz, cancellationToken);
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

    // Up to half of where the column answers: the highest frequencies ask for more modes than the resonances there are worth.
    private double[] Samples()
    {
        var low = column.Gas.SpeedOfSound / (4 * column.Bore.LengthMetres);
        var high = 0.5 * Math.Min(column.HighestHertz, column.CutOnHertz);
        low = Math.Min(low, 0.5 * high);
        return
        [
            .. Enumerable
                .Range(0, SampleCount)
                .Select(i => low * Math.Pow(high / low, i / (SampleCount - 1.0))),
        ];
    }

    // The phase of what comes back at the blown end, and by how many cents the frequency has to change to make up for the difference.
    private double Shift(
        ModalColumn a,
        ModalColumn b,
        ReadOnlySpan<double> hertz,
        CancellationToken cancellationToken
    )
    {
        var worst = 0.0;
        Span<double> pairs = stackalloc double[RealVectors.Count];
        for (var i = 0; i < hertz.Length; i += pairs.Length / 2)
        {
            for (var n = 0; n < pairs.Length; n += 2)
            {
                var highest = column.HighestHertz * (1 - Step);
                pairs[n] = Math.Min(hertz[Math.Min(i + n / 2, hertz.Length - 1)], highest);
                pairs[n + 1] = pairs[n] * (1 + Step);
            }

            worst = Math.Max(worst, ShiftOfPairs(a, b, pairs, cancellationToken));
        }

        return 1200 / Math.Log(2) * worst;
    }

    private double ShiftOfPairs(
        ModalColumn a,
        ModalColumn b,
        ReadOnlySpan<double> pairs,
        CancellationToken cancellationToken
    )
    {
        var frequencies = FrequencyVector.OfHertz(pairs);
        var (first, second) = (
            Reflections(a, frequencies, cancellationToken),
            Reflections(b, frequencies, cancellationToken)
        );
        var worst = 0.0;
        for (var i = 0; i < pairs.Length; i += 2)
        {
            var change = (first.At(i) / second.At(i)).Phase;
            var rate = (second.At(i + 1) / second.At(i)).Phase / Step;
            // Between resonances the phase hardly moves, and a shift of it is none of theirs: not less than that of the plain tube.
            var least = 2 * Math.PI * pairs[i] * column.Bore.LengthMetres / column.Gas.SpeedOfSound;
            worst = Math.Max(worst, Math.Abs(change) / Math.Max(Math.Abs(rate), least));
        }

        return worst;
    }

    private ComplexVector Reflections(
        ModalColumn modes,
        in FrequencyVector frequencies,
        CancellationToken cancellationToken
    )
    {
        var (p, u) = modes.InputAt(frequencies, cancellationToken);
        var wave = column.Impedance * u;
        return (p - wave) / (p + wave);
    }
}
