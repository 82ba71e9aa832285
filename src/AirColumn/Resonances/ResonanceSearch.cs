using System.Numerics;
using AirColumn.Acoustics;

namespace AirColumn.Resonances;

/// <summary>
/// One search. The reactive phase counts the modes and says where each one lies but for its dissipation, so that a scan
/// cannot step over one however narrow; the complex resonance of the full, lossy column is then found from there, and next to it
/// the extremum of |Z|, if damping leaves one.
/// </summary>
internal sealed class ResonanceSearch
{
    // The lossy resonance may lie on the other side of the limit than its reactive twin.
    private const double Margin = 1.25;

    // A capillary has thousands of modes below the cut-on and not one extremum: past so many in a row none will follow.
    private const int MostDampedInARow = 100;

    // Half-widths on either side of a complex resonance in which its extremum is looked for, and samples in each.
    private const int Reach = 4;
    private const int SamplesPerHalfWidth = 6;

    // Of the reactive phase, radians, to its target: Newton's method on the lossy column takes over.
    private const double NearEnough = 0.02;

    // Relative width below which a resonance is rounding, not damping: no losses and no radiation.
    private const double Undamped = 1e-11;

    private readonly Column column;
    private readonly ReactivePhase phase;
    private readonly bool isOpen;
    private readonly double limit;
    private readonly double horizon;
    private readonly double modeSpacing;
    private readonly List<double> damped = [];
    private readonly List<Complex> poles = [];
    private readonly List<Resonance> found = [];

    /// <summary>Searches up to <paramref name="limit"/> Hz.</summary>
    public ResonanceSearch(Column column, double limit)
    {
        this.column = column;
        this.limit = limit;
        horizon = Math.Min(limit * Margin, column.HighestHertz);
        phase = new ReactivePhase(column);
        isOpen = column.Options.BlownEnd.IsOpen;
        modeSpacing = column.Gas.SpeedOfSound / (2 * column.Bore.PassageMetres);
    }

    /// <summary>Whether the search ended before the limit because a long row of modes was too damped.</summary>
    public bool GaveUp { get; private set; }

    /// <summary>What to say of modes without an extremum, as far as the search went.</summary>
    public IReadOnlyList<string> Remarks
    {
        get
        {
            var extremum = isOpen ? "a minimum" : "a maximum";
            return damped switch
            {
                [] => [],
                [var only] => [$"The mode near {Show(only)} is too damped to show {extremum} of |Z|."],
                [var first, .., var last] =>
                [
                    $"{damped.Count} modes from {Show(first)} to {Show(last)} are too damped to show {extremum} of |Z|"
                        + (GaveUp ? "; the search ended there." : "."),
                ],
            };

            static string Show(double hertz) => Require.Show(Math.Round(hertz, 2), "Hz");
        }
    }

    /// <summary>The lowest resonances, at most <paramref name="count"/>, in order of frequency.</summary>
    public IReadOnlyList<Resonance> Lowest(int count)
    {
        var row = 0;
        foreach (var mode in Modes())
        {
            // An extremum may lie a little below one found before: one mode more settles the order.
            if (found.Count > count)
            {
                break;
            }

            row = TryMode(mode) ? 0 : row + 1;
            if (row == MostDampedInARow)
            {
                GaveUp = true;
                break;
            }
        }

        return [.. found.OrderBy(resonance => resonance.Frequency.Hertz).Take(count)];
    }

    /// <summary>The resonance of the lowest mode; null where that is too damped or above the limit.</summary>
    public Resonance? OfLowestMode()
    {
        foreach (var mode in Modes())
        {
            return TryMode(mode) && found.Count > 0 ? found[0] : null;
        }

        return null;
    }

    // Where the reactive column resonates. Poles of Z at multiples of π, zeros half way between. What lies at f = 0 (θ = 0
    // where all is closed, −π/2 where anything is open) is no resonance.
    private IEnumerable<double> Modes()
    {
        var target = (isOpen, column.IsSealed) switch
        {
            (true, _) => Math.PI / 2,
            (false, true) => Math.PI,
            (false, false) => 0,
        };
        var (low, below) = (0.0, double.NegativeInfinity);
        for (; Bracket(target, ref low, ref below) is var (high, above); target += Math.PI)
        {
            (low, below) = Mode(target, low, below, high, above);
            yield return low;
        }
    }

    // A frequency where the phase has reached an angle, from one where it has not; null where none does below the horizon.
    private (double High, double Above)? Bracket(double angle, ref double low, ref double below)
    {
        var step = modeSpacing;
        while (low < horizon)
        {
            var high = Math.Min(low + step, horizon);
            var above = phase.At(high);
            if (above > angle)
            {
                return (high, above);
            }

            (low, below) = (high, above);
            step *= 1.5;
        }

        return null;
    }

    // Where the phase reaches an angle, and what it is there: near enough to start from, in angle, however steep the phase is, and
    // in frequency, however flat.
    private (double Hertz, double Phase) Mode(
        double angle,
        double low,
        double below,
        double high,
        double above
    )
    {
        var halve = double.IsInfinity(below);
        var before = double.NegativeInfinity;
        while (true)
        {
            // Between the ends by proportion, by halves where that has come near one end before.
            var middle = halve ? (low + high) / 2 : low + (high - low) * (angle - below) / (above - below);
            middle = Math.Clamp(middle, low + 0.01 * (high - low), high - 0.01 * (high - low));
            var at = phase.At(middle);
            var moved = Math.Abs(middle - before);
            if (
                (Math.Abs(at - angle) < NearEnough && moved < 1e-3 * Math.Min(modeSpacing, middle))
                || high - low < 1e-9 * high
            )
            {
                return (middle, at);
            }

            before = middle;

            var width = high - low;
            (low, below, high, above) = at < angle ? (middle, at, high, above) : (low, below, middle, at);
            halve = double.IsInfinity(below) || (!halve && high - low > 0.5 * width);
        }
    }

    // False where damping leaves no extremum.
    private bool TryMode(double mode)
    {
        var pole = Pole(mode);
        poles.Add(pole);
        if (Extremum(pole) is not { } place)
        {
            if (mode <= limit)
            {
                damped.Add(mode);
            }

            return false;
        }

        if (place <= limit)
        {
            var undamped = Math.Abs(pole.Imaginary) < Undamped * pole.Real;
            found.Add(new Resonance(place, Magnitude(place), undamped ? pole.Real : pole));
        }

        return true;
    }

    private double Magnitude(double hertz)
    {
        if (column.Waves.Segments.At(hertz) is { } segment)
        {
            var (pressure, flow) = segment.At(hertz);
            return Complex.Abs(pressure) / Complex.Abs(flow);
        }

        var (p, u, _) = column.InputState(2 * Math.PI * hertz);
        return Complex.Abs(p) / Complex.Abs(u);
    }

    private Complex Pole(double mode)
    {
        var (centre, width) = (mode, 0.02 * Math.Min(modeSpacing, mode));
        Complex pole = mode;
        var neighbours = Neighbours(mode);
        for (var round = 0; round < 12; round++)
        {
            // The samples reach two widths to either side.
            width = Math.Min(width, 0.4 * (column.HighestHertz - centre));
            if (!(width > 0))
            {
                return Complex.NaN;
            }

            var state = new LocalState(column, centre, width, false);
            var next = state.ZeroNear(pole, neighbours);
            if (!state.IsSmooth || !Complex.IsFinite(next))
            {
                return Complex.NaN;
            }

            var moved = Complex.Abs(next - pole);
            pole = next;
            if (moved < 1e-12 * mode)
            {
                break;
            }

            // Centre on it, though never run further than the points reach, and span about its height above the axis:
            // beyond its points a polynomial is a guide only.
            centre = Math.Max(centre + Math.Clamp(pole.Real - centre, -4 * width, 4 * width), 0.1 * mode);
            width = Math.Min(
                Math.Max(0.5 * pole.Imaginary, 1e-6 * centre),
                Math.Min(0.1 * modeSpacing, 0.2 * centre)
            );
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

    // The extremum of |Z| that belongs to a complex resonance and to none before.
    private double? Extremum(Complex pole)
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
        var step = halfWidth / SamplesPerHalfWidth;
        var width = Math.Min(
            Math.Max(0.3 * halfWidth, 1e-7 * pole.Real),
            Math.Min(0.01 * modeSpacing, 0.1 * pole.Real)
        );
        // Straight from the resonance, where damping is slight …
        if (
            Polish(pole.Real, width) is { } near
            && Math.Abs(near - pole.Real) < halfWidth
            && IsNew(near, width)
        )
        {
            return near;
        }

        // … else from the extrema among samples around it, the nearest first.
        var from = Math.Max(pole.Real - Reach * halfWidth, 0.01 * pole.Real);
        var to = Math.Min(pole.Real + Reach * halfWidth, column.HighestHertz);
        var starts = new List<double>();
        var (before, now) = (Least(from), Least(from + step));
        for (var f = from + 2 * step; f < to; f += step)
        {
            var next = Least(f);
            if (now < before && now <= next)
            {
                starts.Add(f - step);
            }

            (before, now) = (now, next);
        }

        foreach (var start in starts.OrderBy(start => Math.Abs(start - pole.Real)))
        {
            if (Polish(start, width) is { } place && IsNew(place, width))
            {
                return place;
            }
        }

        return null;
    }

    // The same place found from two resonances is one extremum.
    private bool IsNew(double place, double width) =>
        !found.Exists(resonance => Math.Abs(resonance.Frequency.Hertz - place) < 0.03 * width);

    private double? Polish(double start, double width)
    {
        var place = start;
        for (var round = 0; round < 8; round++)
        {
            if (place + 2 * width > column.HighestHertz || place - 2 * width <= 0)
            {
                return null;
            }

            var least = new LocalState(column, place, width, true).LeastNear(place);
            if (least is not { } next || !(Math.Abs(next - place) < 20 * width))
            {
                return null;
            }

            var moved = Math.Abs(next - place);
            place = next;
            if (moved < 0.01 * width)
            {
                return place;
            }
        }

        return null;
    }

    private double Least(double hertz) => isOpen ? Magnitude(hertz) : 1 / Magnitude(hertz);
}
