using AirColumn.Acoustics;

namespace AirColumn.Resonances;

/// <summary>
/// Where a column would resonate without its dissipation: where <see cref="ReactivePhase"/> passes an angle, scanned in steps of whole
/// modes and then narrowed, eight at a time. The phase counts, so that none is stepped over however near the next is.
/// </summary>
internal sealed class ReactiveModes(Column column, double horizon, double modeSpacing)
{
    private readonly ReactivePhase phase = new(column);
    private readonly bool isOpen = column.Options.BlownEnd.IsOpen;
    private readonly List<(double Hertz, double Angle)> scan = [(0, double.NegativeInfinity)];
    private int scanned = 1; // places of the scan up to the mode asked for last

    /// <summary>
    /// Hz, rising, some at a time. Poles of Z lie at multiples of π, zeros half way between. What lies at f = 0 (θ = 0 where all is closed, −π/2 where
    /// anything is open) is no resonance.
    /// </summary>
    public IEnumerable<Batch> InOrder()
    {
        scanned = 1;
        var target = (isOpen, column.IsSealed) switch
        {
            (true, _) => Math.PI / 2,
            (false, true) => Math.PI,
            (false, false) => 0,
        };
        while (NextModes(ref target) is { } batch)
        {
            yield return batch;
        }
    }

    // Where the phase reaches a target and those a half turn apart after it, as far as the scan has gone, or until it finds one.
    private Batch? NextModes(ref double target)
    {
        var brackets = new Bracket[ReactivePhase.Lanes];
        var guesses = new double[ReactivePhase.Lanes];
        var count = 0;
        for (
            ;
            count < guesses.Length && ScanPast(target, count == 0) is { } above;
            count++, target += Math.PI
        )
        {
            brackets[count] = new Bracket(target, scan[above - 1], scan[above]);
            guesses[count] = Guess(above, target);
        }

        return count == 0 ? null : new Batch(phase, modeSpacing, brackets, guesses, count);
    }

    // The first place of the scan where the phase is past an angle; null where none is up to the horizon, or as far as the scan has gone.
    private int? ScanPast(double angle, bool mayExtend)
    {
        Span<double> hertz = stackalloc double[ReactivePhase.Lanes];
        Span<double> angles = stackalloc double[hertz.Length];
        var step = modeSpacing;
        for (; ; scanned++)
        {
            if (scanned == scan.Count)
            {
                var last = scan[^1].Hertz;
                if (!mayExtend || last >= horizon)
                {
                    return null;
                }

                for (var n = 0; n < hertz.Length; n++)
                {
                    hertz[n] = Math.Min(last + (n + 1) * step, horizon);
                }

                phase.At(hertz, angles);
                for (var n = 0; n < hertz.Length && scan[^1].Hertz < horizon; n++)
                {
                    scan.Add((hertz[n], angles[n]));
                }

                step *= 2;
            }

            if (scan[scanned].Angle > angle)
            {
                return scanned;
            }
        }
    }

    // Where the phase may reach an angle before a place of the scan: frequency as a polynomial in the angle through the places around.
    private double Guess(int above, double angle)
    {
        var (first, last) = (Math.Max(1, above - 2), Math.Min(scan.Count - 1, above + 1));
        var guess = 0.0;
        for (var i = first; i <= last; i++)
        {
            var share = scan[i].Hertz;
            for (var j = first; j <= last; j++)
            {
                share *= i == j ? 1 : (angle - scan[j].Angle) / (scan[i].Angle - scan[j].Angle);
            }

            guess += share;
        }

        var (low, high) = (scan[above - 1].Hertz, scan[above].Hertz);
        guess = double.IsFinite(guess) ? guess : (low + high) / 2;
        return Math.Clamp(guess, low + 0.01 * (high - low), high - 0.01 * (high - low));
    }

    /// <summary>Modes that follow each other: counted, guessed, and known better once that is asked for.</summary>
    internal sealed class Batch(
        ReactivePhase phase,
        double modeSpacing,
        Bracket[] brackets,
        double[] places,
        int count
    )
    {
        /// <summary>Hz, rising: guesses, or what <see cref="Narrow"/> made of them.</summary>
        public ReadOnlySpan<double> Modes => places.AsSpan(0, count);

        public bool IsNarrow { get; private set; }

        /// <summary>Side by side until the last one is there.</summary>
        public void Narrow()
        {
            places.AsSpan(count).Fill(places[0]);
            Span<double> angles = stackalloc double[places.Length];
            while (!IsNarrow)
            {
                phase.At(places, angles);
                IsNarrow = true;
                for (var i = 0; i < count; i++)
                {
                    IsNarrow &= brackets[i].Narrow(ref places[i], angles[i], modeSpacing);
                }
            }
        }
    }
}
