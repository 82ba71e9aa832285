using System.Numerics;
using AirColumn.Acoustics;

namespace AirColumn.Resonances;

/// <summary>
/// One search. The reactive phase counts the modes and says where each one lies but for its dissipation, so that a scan
/// cannot step over one however narrow; the complex resonance of the full, lossy column is then found from there, and next to it
/// the extremum of |Z|, if damping leaves one. Where it says about where only, what was found from there is held to the count.
/// </summary>
internal sealed class ResonanceSearch
{
    // The lossy resonance may lie on the other side of the limit than its reactive twin.
    private const double Margin = 1.25;

    // A capillary has thousands of modes below the cut-on and not one extremum: past so many in a row none will follow.
    private const int MostDampedInARow = 100;

    // Half-widths on either side of a complex resonance in which its extremum is looked for, and samples in each.
    private const int Reach = 4;

    // A broad one may have pushed it further away: the same for those left without one when all others have theirs.
    private const int LastReach = 10;
    private const int SamplesPerMode = 32;
    private const int SamplesPerHalfWidth = 6;

    // Of the spacing of modes, or of the frequency: half-widths and distances from the mode up to which a resonance is plain.
    private const double SharpShare = 0.15;

    // Of the spacing: modes that are further apart are not taken for each other when they are guessed only.
    private const double ApartShare = 0.5;

    // Spacings: what was found so far below no longer matters.
    private const double Far = 4;

    // Relative width below which a resonance is rounding, not damping: no losses and no radiation.
    private const double Undamped = 1e-11;

    private readonly Column column;
    private readonly bool isOpen;
    private readonly double limit;
    private readonly double modeSpacing;
    private readonly ReactiveModes modes;
    private readonly Extrema extrema;
    private readonly PoleSearch poleSearch;
    private readonly List<(Complex Pole, double Mode)> lost = []; // that have no extremum so far
    private readonly List<double> damped = [];
    private readonly List<Complex> poles = [];
    private readonly HashSet<Complex> unsettled = []; // poles that Newton's method did not come to rest at
    private readonly List<(Resonance Resonance, double Mode)> found = [];
    private SharpResonances? sharp; // of the segment asked for last

    /// <summary>Searches up to <paramref name="limit"/> Hz.</summary>
    public ResonanceSearch(Column column, double limit)
    {
        this.column = column;
        this.limit = limit;
        isOpen = column.Options.BlownEnd.IsOpen;
        modeSpacing = column.Gas.SpeedOfSound / (2 * column.Bore.PassageMetres);
        extrema = new Extrema(column);
        poleSearch = new PoleSearch(column, modeSpacing);
        modes = new ReactiveModes(column, Math.Min(limit * Margin, column.HighestHertz), modeSpacing);
    }

    /// <summary>Whether the search ended before the limit because a long row of modes was too damped.</summary>
    public bool GaveUp { get; private set; }

    /// <summary>What to say of modes without an extremum, as far as the search went, and of others that are not known well.</summary>
    public IReadOnlyList<string> Remarks(IReadOnlyList<Resonance> listed)
    {
        var extremum = isOpen ? "a minimum" : "a maximum";
        damped.Sort();
        string[] ofDamped = damped switch
        {
            [] => [],
            [var only] => [$"The mode near {Show(only)} is too damped to show {extremum} of |Z|."],
            [var first, .., var last] =>
            [
                $"{damped.Count} modes from {Show(first)} to {Show(last)} are too damped to show {extremum} of |Z|"
                    + (GaveUp ? "; the search ended there." : "."),
            ],
        };
        var guesses = listed
            .Where(resonance => unsettled.Contains(resonance.Pole))
            .Select(resonance => Show(resonance.Frequency.Hertz));
        return
        [
            .. ofDamped,
            .. guesses.Select(place =>
                $"The Q at {place} is a guess: the search for its complex resonance did not come to rest."
            ),
        ];

        static string Show(double hertz) => Require.Show(Math.Round(hertz, 2), "Hz");
    }

    /// <summary>The lowest resonances, at most <paramref name="count"/>, in order of frequency.</summary>
    public IReadOnlyList<Resonance> Lowest(int count)
    {
        Search(count);
        LookFurther();
        return
        [
            .. found
                .Select(each => each.Resonance)
                .OrderBy(resonance => resonance.Frequency.Hertz)
                .Take(count),
        ];
    }

    /// <summary>The resonance of the lowest mode; null where that is too damped or above the limit.</summary>
    public Resonance? OfLowestMode()
    {
        Span<SharpResonance> guess = stackalloc SharpResonance[1];
        foreach (var batch in modes.InOrder())
        {
            if (!TryMode(batch, 0, guess))
            {
                LookFurther();
            }

            return found.Count > 0 ? found[0].Resonance : null;
        }

        return null;
    }

    private void Search(int count)
    {
        Span<SharpResonance> guesses = stackalloc SharpResonance[ReactiveModes.Batch.Most];
        var row = 0;
        foreach (var batch in modes.InOrder())
        {
            guesses.Fill(SharpResonance.None);
            for (var i = 0; i < batch.Modes.Length; i++)
            {
                // An extremum may lie a little below one found before: one mode more settles the order. No more are looked for together than
                // it may take: the rest may lie in another segment.
                var needed = count - found.Count + 1;
                if (needed == 0)
                {
                    return;
                }

                row = TryMode(batch, i, guesses[..Math.Min(batch.Modes.Length, i + needed)]) ? 0 : row + 1;
                if (row == MostDampedInARow)
                {
                    GaveUp = true;
                    return;
                }
            }
        }
    }

    // Where resonances are broad, the nearest extremum may be that of another: those left without one look further away, and what extrema there
    // still are between those found is found by a scan, since a shallow one is wide.
    private void LookFurther()
    {
        foreach (var (pole, mode) in lost)
        {
            if (
                pole.Imaginary > 0
                && pole.Real > 0
                && NearestFree(pole.Real, pole.Imaginary, WidthFor(pole), LastReach) is { } place
            )
            {
                if (place <= limit)
                {
                    found.Add((ResonanceAt(place, pole), mode));
                }
            }
            else if (mode <= limit)
            {
                damped.Add(mode);
            }
        }

        if (lost.Count > 0 || found.Exists(each => each.Resonance.Pole.Imaginary > SharpShare * modeSpacing))
        {
            Scan();
        }
    }

    private void Scan()
    {
        double[] known = [.. found.Select(each => each.Resonance.Frequency.Hertz).Order()];
        var step = modeSpacing / SamplesPerMode;
        foreach (var start in extrema.Among(step, known.LastOrDefault(), step))
        {
            var next = Array.BinarySearch(known, start - 1.5 * step);
            next = next < 0 ? ~next : next;
            if (
                known[next] > start + 1.5 * step
                && extrema.Near(start, step) is { } place
                && place <= limit
                && At(place, step) is null
            )
            {
                var pole = PoleOf(place);
                poles.Add(pole);
                found.Add((ResonanceAt(place, pole), place));
                damped.RemoveAll(mode => Math.Abs(mode - place) < 0.5 * modeSpacing);
            }
        }
    }

    // The complex resonance of an extremum that no mode claimed; as broad as the nearest, and said to be a guess, where none is near.
    private Complex PoleOf(double place)
    {
        var pole = Pole(place);
        if (pole.Imaginary > 0 && Math.Abs(pole.Real - place) < Math.Max(pole.Imaginary, 0.5 * modeSpacing))
        {
            return pole;
        }

        var halfWidth = 0.5 * modeSpacing;
        var nearest = double.PositiveInfinity;
        foreach (var other in poles)
        {
            if (other.Imaginary > 0 && Math.Abs(other.Real - place) < nearest)
            {
                (nearest, halfWidth) = (Math.Abs(other.Real - place), other.Imaginary);
            }
        }

        pole = new Complex(place, halfWidth);
        unsettled.Add(pole);
        return pole;
    }

    // One of a batch. From guesses at its modes first, where these lie well apart and the count says that what was found belongs to them; from the
    // modes themselves where that is not enough. False where damping leaves no extremum.
    private bool TryMode(ReactiveModes.Batch batch, int i, Span<SharpResonance> guesses)
    {
        if (i == 0)
        {
            LookForSharp(batch.Modes[..guesses.Length], guesses);
            Span<double> poles = stackalloc double[guesses.Length];
            for (var n = 0; n < poles.Length; n++)
            {
                poles[n] = guesses[n].Pole.Real;
            }

            guesses[batch.Confirm(poles)..].Fill(SharpResonance.None);
        }

        var belongs = Belongs(guesses[i], batch.Modes[i]);
        if (!batch.IsNarrow && !(belongs && IsApart(batch.Modes, i)))
        {
            batch.Narrow();
            LookForSharp(batch.Modes[i..guesses.Length], guesses[i..]);
            belongs = Belongs(guesses[i], batch.Modes[i]);
        }

        return belongs ? Add(guesses[i], batch.Modes[i]) : TryMode(batch.Modes[i]);
    }

    private bool IsApart(ReadOnlySpan<double> some, int i) =>
        (i == 0 || some[i] - some[i - 1] > ApartShare * modeSpacing)
        && (i + 1 == some.Length || some[i + 1] - some[i] > ApartShare * modeSpacing);

    // Side by side, as far as they lie in one segment.
    private void LookForSharp(ReadOnlySpan<double> some, Span<SharpResonance> guesses)
    {
        var i = 0;
        while (i < some.Length)
        {
            if (column.Waves.Segments.At(some[i]) is not { } here)
            {
                guesses[i++] = SharpResonance.None;
                continue;
            }

            var end = i + 1;
            while (end < some.Length && ReferenceEquals(column.Waves.Segments.At(some[end]), here))
            {
                end++;
            }

            if (!ReferenceEquals(here, sharp?.Segment))
            {
                sharp = new SharpResonances(here, isOpen);
            }

            sharp!.Near(some[i..end], guesses[i..end]);
            i = end;
        }
    }

    private bool Add(in SharpResonance resonance, double mode)
    {
        poles.Add(resonance.Pole);
        if (resonance.Place <= limit)
        {
            found.Add((new Resonance(resonance.Place, resonance.Magnitude, resonance.Pole), mode));
        }

        return true;
    }

    // False where damping leaves no extremum.
    private bool TryMode(double mode)
    {
        var pole = Pole(mode);
        poles.Add(pole);
        if (Extremum(ref pole, ref mode) is not { } place)
        {
            lost.Add((pole, mode));
            return false;
        }

        if (place <= limit)
        {
            found.Add((ResonanceAt(place, pole), mode));
        }

        return true;
    }

    // Whether a resonance is sharp, near its mode, within its series and away from those found before: then there is nothing to sort out.
    private bool Belongs(in SharpResonance guess, double mode)
    {
        var (pole, place, halfWidth) = (guess.Pole, guess.Place, guess.Pole.Imaginary);
        var near = SharpShare * Math.Min(modeSpacing, mode);
        if (
            !(halfWidth > Undamped * mode && halfWidth < near)
            || !(Math.Abs(pole.Real - mode) < near)
            || !(Math.Abs(place - pole.Real) < halfWidth)
        )
        {
            return false;
        }

        // They come in order, nearly.
        var far = pole.Real - Far * modeSpacing;
        for (var i = poles.Count - 1; i >= 0 && !(poles[i].Real < far); i--)
        {
            var other = near + Math.Min(Math.Abs(poles[i].Imaginary), modeSpacing);
            if (Math.Abs(poles[i].Real - pole.Real) < other)
            {
                return false;
            }
        }

        // An extremum that a broader resonance was given is to be handed over.
        for (var i = found.Count - 1; i >= 0 && !(found[i].Resonance.Frequency.Hertz < far); i--)
        {
            if (Math.Abs(found[i].Resonance.Frequency.Hertz - place) < 0.1 * halfWidth)
            {
                return false;
            }
        }

        return true;
    }

    private Resonance ResonanceAt(double place, Complex pole)
    {
        var undamped = Math.Abs(pole.Imaginary) < Undamped * pole.Real;
        return new Resonance(place, extrema.Magnitude(place), undamped ? pole.Real : pole);
    }

    private Complex Pole(double mode)
    {
        var pole = poleSearch.Near(mode, Neighbours(mode), out var isSettled);
        if (!isSettled)
        {
            unsettled.Add(pole);
        }

        return pole;
    }

    // Resonances found before that are close enough to draw Newton's method to themselves. They come in order, nearly.
    private List<Complex> Neighbours(double mode)
    {
        var near = new List<Complex>();
        for (var i = poles.Count - 1; i >= 0 && !(poles[i].Real < mode - 3 * modeSpacing); i--)
        {
            if (Math.Abs(poles[i].Real - mode) < modeSpacing)
            {
                near.Add(poles[i]);
            }
        }

        return near;
    }

    // The extremum of |Z| that belongs to a complex resonance and to none before. Where the nearest one has been found from a broader
    // resonance further away, the two change places.
    private double? Extremum(ref Complex pole, ref double mode)
    {
        if (Math.Abs(pole.Imaginary) < Undamped * pole.Real)
        {
            return pole.Real;
        }

        if (!(pole.Imaginary > 0 && pole.Real > 0))
        {
            return null;
        }

        var halfWidth = pole.Imaginary;
        var width = WidthFor(pole);
        // Straight from the resonance, where damping is slight …
        var centre = pole.Real;
        int? exchanged = null;
        if (extrema.Near(centre, width) is { } near && Math.Abs(near - centre) < halfWidth)
        {
            if (At(near, width) is not { } taken)
            {
                return near;
            }

            var (owner, ownersMode) = found[taken];
            if (Math.Abs(near - centre) < Math.Abs(near - owner.Pole.Real))
            {
                found[taken] = (ResonanceAt(owner.Frequency.Hertz, pole), mode);
                (pole, mode) = (owner.Pole, ownersMode);
                exchanged = taken;
            }
        }

        // … else from the extrema among samples around it.
        var free = NearestFree(centre, halfWidth, width, Reach);
        if (free is { } place && exchanged is { } index)
        {
            Settle(index, place, ref pole, ref mode);
        }

        return free;
    }

    // Of the samples of a polynomial beside a resonance.
    private double WidthFor(Complex pole) =>
        Math.Min(
            Math.Max(0.3 * pole.Imaginary, 1e-7 * pole.Real),
            Math.Min(0.01 * modeSpacing, 0.1 * pole.Real)
        );

    // The nearest of the extrema among samples around a resonance that no other has.
    private double? NearestFree(double centre, double halfWidth, double width, int reach)
    {
        var from = Math.Max(centre - reach * halfWidth, 0.01 * centre);
        var to = Math.Min(centre + reach * halfWidth, column.HighestHertz);
        foreach (
            var start in extrema
                .Among(from, to, halfWidth / SamplesPerHalfWidth)
                .OrderBy(start => Math.Abs(start - centre))
        )
        {
            if (extrema.Near(start, width) is { } place && At(place, width) is null)
            {
                return place;
            }
        }

        return null;
    }

    // Of two extrema and two complex resonances, each gets the one that suits both better, or a broad one is handed on and on.
    private void Settle(int index, double place, ref Complex pole, ref double mode)
    {
        var (other, othersMode) = found[index];
        var there = other.Frequency.Hertz;
        if (Off(there, pole) + Off(place, other.Pole) < Off(there, other.Pole) + Off(place, pole))
        {
            found[index] = (ResonanceAt(there, pole), mode);
            (pole, mode) = (other.Pole, othersMode);
        }

        static double Off(double place, Complex pole) => Math.Abs(place - pole.Real) / pole.Imaginary;
    }

    // Which one was found at a place, if any: the same place found from two resonances is one extremum.
    private int? At(double place, double width)
    {
        var index = found.FindIndex(each => Math.Abs(each.Resonance.Frequency.Hertz - place) < 0.03 * width);
        return index < 0 ? null : index;
    }
}
