using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Spectra;

namespace AirColumn;

/// <summary>
/// One search: the extrema of |Z| on the spectrum of a column, some modes at a time. The modes are counted (<see cref="ModeCount"/>), so
/// that where fewer extrema are found it is looked for them closer, and what is still missing is said.
/// </summary>
internal sealed class ResonanceSearch
{
    private const int ModesAtATime = 24;

    // A capillary has thousands of modes below the cut-on and not one extremum: past so many in a row none will follow.
    private const int MostDampedInARow = 100;

    private const int SamplesPerMode = 64;
    private const int FinerSamplesPerMode = 400;
    private const double LowestHertz = 1e-3;

    // Of a place below the first mode: damping may pull its extremum under where it would lie without.
    private const double FirstShare = 0.3;
    private const double GentleShare = 0.8; // where it cannot pull far

    // Of the spacing of modes: half-widths from which on damping hides a mode.
    private const double BroadShare = 0.1;

    // Relative width below which a resonance is rounding, not damping: no losses and no radiation.
    private const double Undamped = 1e-11;

    private readonly Column column;
    private readonly CancellationToken cancellationToken;
    private readonly bool isOpen;
    private readonly double limit;
    private readonly double spacing;
    private readonly ModeCount modes;
    private readonly List<Resonance> found = [];
    private readonly List<double> damped = []; // modes, Hz
    private readonly List<double> unexplained = []; // modes, Hz, that ought to show and do not
    private readonly HashSet<Resonance> guesses = [];

    /// <summary>Searches up to <paramref name="limit"/> Hz.</summary>
    public ResonanceSearch(Column column, double limit, CancellationToken cancellationToken)
    {
        (this.column, this.cancellationToken) = (column, cancellationToken);
        this.limit = limit;
        isOpen = column.Options.BlownEnd.IsOpen;
        spacing = column.Gas.SpeedOfSound / (2 * column.Bore.PassageMetres);
        modes = new ModeCount(column);
    }

    /// <summary>Whether the search ended before the limit because a long row of modes was too damped.</summary>
    public bool GaveUp { get; private set; }

    /// <summary>Warnings about modes without an extremum, up to the frequency that the search reached, and about modes that are not known well.</summary>
    public IReadOnlyList<string> Remarks(IReadOnlyList<Resonance> listed)
    {
        var extremum = isOpen ? "a minimum" : "a maximum";
        var remarks = new List<string>();
        switch (damped)
        {
            case []:
                break;
            case [var only]:
                remarks.Add($"The mode near {Show(only)} is too damped to show {extremum} of |Z|.");
                break;
            default:
                remarks.Add(
                    $"{damped.Count} modes from {Show(damped[0])} to {Show(damped[^1])} are too damped to show {extremum} of |Z|"
                        + (GaveUp ? "; the search ended there." : ".")
                );
                break;
        }

        remarks.AddRange(
            unexplained.Select(mode =>
                $"A mode is counted near {Show(mode)}, but no {extremum[2..]} of |Z| was found there: check that part of the curve."
            )
        );
        remarks.AddRange(
            listed
                .Where(guesses.Contains)
                .Select(resonance =>
                    $"The Q at {Show(resonance.Frequency.Hertz)} is a guess: the search for its complex frequency did not converge."
                )
        );
        return remarks;

        static string Show(double hertz) => Require.Show(Math.Round(hertz, 2), "Hz");
    }

    /// <summary>The lowest resonances, at most <paramref name="count"/>, in order of frequency.</summary>
    public IReadOnlyList<Resonance> Lowest(int count)
    {
        Search(count);
        return found.Count > count ? found[..count] : found;
    }

    /// <summary>The resonance of the lowest mode; null where that is too damped or above the limit.</summary>
    public Resonance? OfLowestMode()
    {
        Search(1);
        return found.Count > 0 && !damped.Exists(mode => mode < found[0].Frequency.Hertz) ? found[0] : null;
    }

    private void Search(int count)
    {
        var low = Lowest();
        var highest = column.HighestHertz * (1 - 1e-9);
        var top = Math.Min(limit * 1.02, highest); // an extremum at the limit itself has a slope beyond it
        var counted = 0; // modes below low
        while (low < top && found.Count < count && !GaveUp)
        {
            var wanted = Math.Min(count - found.Count, ModesAtATime);
            var high = Top(low, counted, wanted, top, out var below);
            var first = found.Count;
            Look(low, high, SamplesPerMode);
            if (found.Count - first < below - counted)
            {
                found.RemoveRange(first, found.Count - first);
                Look(low, high, FinerSamplesPerMode);
                Explain(first, low, high, counted, below);
                var row = below - (found.Count > 0 ? modes.Below(found[^1].Frequency.Hertz) : 0);
                GaveUp = row >= MostDampedInARow;
            }

            (low, counted) = (high, below);
        }

        found.RemoveAll(resonance => resonance.Frequency.Hertz > limit);
        found.Sort(ByFrequency);
        if (found.Count >= count && count > 0)
        {
            var last = found[count - 1].Frequency.Hertz;
            damped.RemoveAll(mode => mode > last);
            unexplained.RemoveAll(mode => mode > last);
        }
    }

    // Below the first mode.
    private double Lowest()
    {
        Span<double> places = stackalloc double[8];
        Span<double> counts = stackalloc double[places.Length];
        var low = Math.Min(0.4 * spacing, 0.4 * limit);
        for (var i = 0; i < places.Length; i++, low *= 0.25)
        {
            places[i] = low;
        }

        modes.Below(places[..4], counts);
        var n = 0;
        while (n < 3 && counts[n] > 0)
        {
            n++;
        }

        if (counts[n] > 0)
        {
            modes.Below(places, counts);
            while (n < places.Length - 1 && counts[n] > 0)
            {
                n++;
            }
        }

        return Math.Max((IsLittleDamped(places[n]) ? GentleShare : FirstShare) * places[n], LowestHertz);
    }

    // Whether neither walls nor the open end can move an extremum far from its mode at a frequency, Hz.
    private bool IsLittleDamped(double hertz)
    {
        var omega = 2 * Math.PI * hertz;
        var band = new Band(omega, omega, 1);
        var attenuation = LineParts
            .Segments(column.Model.Way)
            .Sum(segment =>
                Attenuation.Of(
                    segment.Medium,
                    segment.Section.SmallestRadius,
                    segment.Length,
                    segment.Section.InertiaFactor,
                    band
                )
            );
        return attenuation < 0.2 && omega * column.Bore.LargestRadius < 0.2 * column.Gas.SpeedOfSound;
    }

    // A place with so many modes more below it, the last of them well below it, and how many there are.
    private double Top(double low, int counted, int wanted, double top, out int below)
    {
        Span<double> places = stackalloc double[8];
        Span<double> counts = stackalloc double[places.Length];
        var high = low + (wanted + 0.5) * spacing;
        for (var round = 0; ; round++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            for (var i = 0; i < places.Length; i += 2)
            {
                places[i] = Math.Min(high + i / 2 * spacing, top);
                places[i + 1] = Math.Max(places[i] - 0.3 * spacing, low);
            }

            modes.Below(places, counts);
            for (var i = 0; i < places.Length; i += 2)
            {
                if (counts[i + 1] >= counted + wanted || places[i] >= top || (round == 8 && i == 6))
                {
                    below = (int)counts[i];
                    return places[i];
                }
            }

            high = places[6] + Math.Max(1, counted + wanted - counts[7]) * spacing;
        }
    }

    // The extrema between two frequencies, piece by piece.
    private void Look(double low, double high, int samplesPerMode)
    {
        var spectrum = column.Answers(cancellationToken).Over(low, high, true, cancellationToken);
        var places = new List<Extremum>();
        var poles = new List<Complex>();
        var (from, lastRate) = (low, double.NaN);
        while (from < high)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var to = spectrum.EndOf(from);
            if (spectrum.PieceAt(0.5 * (from + to)) is { } piece)
            {
                var extrema = new PieceExtrema(piece, isOpen);
                places.Clear();
                extrema.Find(
                    8 + (int)Math.Min(samplesPerMode * ((to - from) / spacing), 100_000),
                    places,
                    ref lastRate
                );
                foreach (var place in places)
                {
                    cancellationToken.ThrowIfCancellationRequested();
                    Add(extrema, place, poles);
                }
            }
            else
            {
                lastRate = double.NaN;
            }

            from = to;
        }
    }

    private void Add(PieceExtrema extrema, in Extremum place, List<Complex> poles)
    {
        var hertz = place.Hertz;
        if (found.Count > 0 && Math.Abs(found[^1].Frequency.Hertz - hertz) < 1e-9 * hertz)
        {
            return;
        }

        // The nearest to the extremum of those that Newton's method finds from it, and from where a single one would lie.
        var guess = extrema.Guess(place);
        var settled = extrema.TryPole(guess, [], out var pole) && IsOwn(pole, hertz, poles);
        // A sharp one, where the straight line has it: there is nothing to choose.
        if (!settled || Complex.Abs(pole - guess) > 0.02 * Math.Abs(pole.Imaginary))
        {
            foreach (var (start, known) in new[] { (hertz, []), (hertz, poles), (guess, poles) })
            {
                if (
                    extrema.TryPole(start, known, out var other)
                    && IsOwn(other, hertz, poles)
                    && !(settled && Complex.Abs(pole - hertz) <= Complex.Abs(other - hertz))
                )
                {
                    (settled, pole) = (true, other);
                }
            }
        }

        if (!settled)
        {
            var halfWidth = extrema.HalfWidth(place);
            pole = new Complex(hertz, double.IsFinite(halfWidth) ? halfWidth : BroadShare * spacing);
        }

        poles.Add(pole);
        var undamped = Math.Abs(pole.Imaginary) < Undamped * pole.Real;
        var resonance = new Resonance(hertz, extrema.Magnitude(place), undamped ? pole.Real : pole);
        found.Add(resonance);
        if (!settled)
        {
            guesses.Add(resonance);
        }
    }

    // Decaying, not another's, and no further from the extremum than its width or a broad one's can be.
    private bool IsOwn(Complex pole, double hertz, List<Complex> poles)
    {
        var (off, halfWidth) = (Math.Abs(pole.Real - hertz), Math.Abs(pole.Imaginary));
        if (
            !(pole.Imaginary > -Undamped * pole.Real)
            || !(pole.Real > 0)
            || !(off < Math.Max(4 * halfWidth, 0.02 * spacing) && off < spacing)
        )
        {
            return false;
        }

        foreach (var other in poles)
        {
            if (Complex.Abs(other - pole) < 1e-6 * hertz + 1e-4 * Math.Abs(other.Imaginary))
            {
                return false;
            }
        }

        return true;
    }

    // Modes that have no extremum: too damped, as their complex resonance says, or not explained.
    private void Explain(int first, double low, double high, int counted, int below)
    {
        found.Sort(
            first,
            found.Count - first,
            Comparer<Resonance>.Create((a, b) => a.Frequency.Hertz.CompareTo(b.Frequency.Hertz))
        );
        if (found.Count - first >= below - counted)
        {
            return;
        }

        var owned = new bool[below - counted];
        var places = new double[owned.Length];
        for (var n = 0; n < places.Length; n++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            places[n] = modes.Place(counted + n, n == 0 ? 0.5 * low : places[n - 1], high);
        }

        for (var i = first; i < found.Count; i++)
        {
            Claim(found[i].Pole.Real);
        }

        var spectrum = column.Answers(cancellationToken).Over(low, high, true, cancellationToken);
        for (var n = 0; n < owned.Length; n++)
        {
            if (!owned[n] && places[n] <= limit)
            {
                (IsDamped(spectrum, places[n]) ? damped : unexplained).Add(places[n]);
            }
        }

        void Claim(double hertz)
        {
            var best = -1;
            for (var n = 0; n < owned.Length; n++)
            {
                if (!owned[n] && (best < 0 || Math.Abs(places[n] - hertz) < Math.Abs(places[best] - hertz)))
                {
                    best = n;
                }
            }

            if (best >= 0)
            {
                owned[best] = true;
            }
        }
    }

    // Whether no sharp resonance lies near a mode: then damping is what hides it.
    private bool IsDamped(Spectrum spectrum, double mode)
    {
        if (spectrum.PieceAt(mode) is not { } piece)
        {
            return false; // there is no series to look at
        }

        return !new PieceExtrema(piece, isOpen).TryPole(mode, [], out var pole)
            || Math.Abs(pole.Real - mode) > 0.5 * spacing
            || Math.Abs(pole.Imaginary) > BroadShare * Math.Min(spacing, mode)
            || found.Exists(other => Complex.Abs(other.Pole - pole) < 1e-3 * spacing);
    }

    private static int ByFrequency(Resonance a, Resonance b) =>
        a.Frequency.Hertz.CompareTo(b.Frequency.Hertz);
}
