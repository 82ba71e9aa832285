using AirColumn.Acoustics;

namespace AirColumn.Resonances;

/// <summary>
/// Where a column would resonate without its dissipation: where <see cref="ReactivePhase"/> passes an angle, scanned in steps of whole
/// modes, some at a time, and narrowed where that is asked for. The phase counts, so that none is stepped over however near the next is.
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
        var brackets = new Bracket[Batch.Most];
        var guesses = new double[Batch.Most];
        var first = target;
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

        return count == 0 ? null : new Batch(phase, modeSpacing, first, brackets, guesses, count);
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
        double target,
        Bracket[] brackets,
        double[] places,
        int count
    )
    {
        /// <summary>How many there may be: one less than there are lanes, see <see cref="Confirm"/>.</summary>
        public const int Most = ReactivePhase.Lanes - 1;

        /// <summary>Hz, rising: guesses, or what <see cref="Narrow"/> made of them.</summary>
        public ReadOnlySpan<double> Modes => places.AsSpan(0, count);

        public bool IsNarrow { get; private set; }

        /// <summary>Narrows all of them, side by side until the last one is there.</summary>
        public void Narrow()
        {
            Span<double> hertz = stackalloc double[ReactivePhase.Lanes];
            Span<double> angles = stackalloc double[ReactivePhase.Lanes];
            while (!IsNarrow)
            {
                hertz.Fill(places[0]);
                places.AsSpan(0, count).CopyTo(hertz);
                phase.At(hertz, angles);
                IsNarrow = true;
                for (var i = 0; i < count; i++)
                {
                    IsNarrow &= brackets[i].Narrow(ref places[i], angles[i], modeSpacing);
                }
            }
        }

        /// <summary>
        /// Of resonances that were found from guesses at the first modes, Hz, how many are those of their modes: half way to the next, as many
        /// modes lie below as there should. Not a number where none was found.
        /// </summary>
        public int Confirm(ReadOnlySpan<double> found)
        {
            Span<double> between = stackalloc double[ReactivePhase.Lanes];
            Span<double> angles = stackalloc double[ReactivePhase.Lanes];
            between.Fill(modeSpacing);
            var rising = 0;
            for (; rising < found.Length && found[rising] > (rising == 0 ? 0 : found[rising - 1]); rising++)
            {
                var gap = rising == 0 ? Math.Min(found[0], modeSpacing) : found[rising] - found[rising - 1];
                between[rising] = found[rising] - gap / 2;
                between[rising + 1] = found[rising] + modeSpacing / 2;
            }

            phase.At(between, angles);
            var right = 0;
            while (right < rising && IsBefore(angles, right) && IsBefore(angles, right + 1))
            {
                right++;
            }

            return right;
        }

        // Whether the angle below a mode is past the mode before it and not past its own.
        private bool IsBefore(ReadOnlySpan<double> angles, int mode) =>
            angles[mode] < target + mode * Math.PI && angles[mode] > target + (mode - 1) * Math.PI;
    }
}
