using System.Numerics;
using AirColumn.Acoustics;
using MathNet.Numerics.RootFinding;

namespace AirColumn.Resonances;

/// <summary>
/// One search. The reactive phase counts the modes and says where each one lies but for its dissipation, so that none can
/// be overlooked however narrow; the complex resonance of the full, lossy column is then found from there, and next to it
/// the extremum of |Z|, if damping leaves one.
/// </summary>
internal sealed class ResonanceSearch
{
    // The lossy resonance may lie on the other side of the limit than its reactive twin.
    private const double Margin = 1.25;

    // Half-widths on either side of a complex resonance in which its extremum is looked for, and samples in each.
    private const int Reach = 4;
    private const int SamplesPerHalfWidth = 6;

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

    /// <summary>Searches up to <paramref name="limit"/> Hz.</summary>
    public ResonanceSearch(Column column, double limit)
    {
        this.column = column;
        this.limit = limit;
        horizon = Math.Min(limit * Margin, column.HighestHertz);
        phase = new ReactivePhase(column);
        isOpen = column.Options.BlownEnd.IsOpen;
        modeSpacing = column.Gas.SpeedOfSound / (2 * column.Bore.LengthMetres);
    }

    /// <summary>What to say of modes without an extremum, as far as the search went: one sentence or none.</summary>
    public IReadOnlyList<string> Damped
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
                    $"{damped.Count} modes from {Show(first)} to {Show(last)} are too damped to show {extremum} of |Z|.",
                ],
            };

            static string Show(double hertz) => Require.Show(Math.Round(hertz, 2), "Hz");
        }
    }

    /// <summary>The resonance of the lowest mode; null where that is too damped or above the limit.</summary>
    public Resonance? Lowest() => Run(stopAtDamped: true).FirstOrDefault();

    /// <summary>The resonances from the lowest up, found one by one.</summary>
    public IEnumerable<Resonance> Run(bool stopAtDamped = false)
    {
        // Poles of Z at multiples of π, zeros half way between. What lies at f = 0 (θ = 0 with a closed far end, −π/2
        // with an open one) is no resonance.
        var target = (isOpen, column.Load.IsClosed) switch
        {
            (true, _) => Math.PI / 2,
            (false, true) => Math.PI,
            (false, false) => 0,
        };
        var highest = phase.At(horizon);
        var last = 0.0;
        for (; target < highest; target += Math.PI)
        {
            var mode = Mode(target);
            var (place, pole) = Refine(mode, last);
            if ((place ?? mode) > limit)
            {
                continue;
            }

            if (place is { } hertz)
            {
                last = hertz;
                yield return new Resonance(
                    hertz,
                    Complex.Abs(column.InputImpedance(2 * Math.PI * hertz)),
                    pole
                );
            }
            else
            {
                damped.Add(mode);
                if (stopAtDamped)
                {
                    yield break;
                }
            }
        }
    }

    // Where the phase reaches an angle below its value at the horizon.
    private double Mode(double angle)
    {
        var (low, high) = (1e-6 * horizon, horizon);
        if (Brent.TryFindRoot(f => phase.At(f) - angle, low, high, 1e-9 * horizon, 100, out var mode))
        {
            return mode;
        }

        // The phase of a very long or narrow bore is steep in places; halving always ends.
        for (var i = 0; i < 60; i++)
        {
            mode = (low + high) / 2;
            (low, high) = phase.At(mode) < angle ? (mode, high) : (low, mode);
        }

        return mode;
    }

    private (double? Place, Complex Pole) Refine(double mode, double last)
    {
        var pole = Pole(mode);
        poles.Add(pole);
        if (Math.Abs(pole.Imaginary) < Undamped * pole.Real)
        {
            return (pole.Real, pole.Real);
        }

        if (!(pole.Imaginary > 0 && pole.Real > 0))
        {
            return (null, pole);
        }

        var place = Extremum(pole, last);
        return (place, pole);
    }

    private Complex Pole(double mode)
    {
        var widest = 0.02 * Math.Min(modeSpacing, mode);
        var (centre, width) = (mode, widest);
        Complex pole = mode;
        for (var round = 0; round < 12; round++)
        {
            var found = new LocalState(column, centre, width).ZeroNear(pole, Neighbours(mode));
            if (!Complex.IsFinite(found))
            {
                return Complex.NaN;
            }

            var moved = Complex.Abs(found - pole);
            pole = found;
            // Centre on it, though never run further than the points reach; narrow to the width of the resonance.
            centre += Math.Clamp(pole.Real - centre, -4 * width, 4 * width);
            if (!(centre > 0.1 * mode))
            {
                return Complex.NaN;
            }

            if (moved < 1e-12 * mode)
            {
                break;
            }

            width = Math.Clamp(0.5 * pole.Imaginary, 1e-6 * centre, Math.Min(widest, 0.1 * centre));
        }

        return pole;
    }

    // Resonances found before that are close enough to draw Newton's method to themselves.
    private Complex[] Neighbours(double mode) =>
        [.. poles.Where(pole => Complex.Abs(pole - mode) < 0.5 * modeSpacing)];

    // The extremum of |Z| that belongs to a complex resonance, above the last one found.
    private double? Extremum(Complex pole, double last)
    {
        var halfWidth = pole.Imaginary;
        var step = halfWidth / SamplesPerHalfWidth;
        var width = Math.Min(
            Math.Clamp(0.3 * halfWidth, 1e-7 * pole.Real, 0.01 * modeSpacing),
            0.1 * pole.Real
        );
        // Straight from the resonance, where damping is slight …
        if (Polish(pole.Real, width, last) is { } near && Math.Abs(near - pole.Real) < halfWidth)
        {
            return near;
        }

        // … else from the extremum among samples around it that is nearest to it.
        double? start = null;
        var from = Math.Max(pole.Real - Reach * halfWidth, 0.01 * pole.Real);
        var to = Math.Min(pole.Real + Reach * halfWidth, column.HighestHertz);
        var (before, now) = (Ratio(from), Ratio(from + step));
        for (var f = from + 2 * step; f < to; f += step)
        {
            var next = Ratio(f);
            if (
                now < before
                && now <= next
                && (start is null || Math.Abs(f - step - pole.Real) < Math.Abs(start.Value - pole.Real))
            )
            {
                start = f - step;
            }

            (before, now) = (now, next);
        }

        return start is { } sample ? Polish(sample, width, last) : null;
    }

    private double? Polish(double start, double width, double last)
    {
        var place = start;
        for (var round = 0; round < 8; round++)
        {
            if (place + 2 * width > column.HighestHertz || place - 2 * width <= 0)
            {
                return null;
            }

            var found = new LocalState(column, place, width).LeastNear(place);
            if (found is not { } next || !(Math.Abs(next - place) < 20 * width))
            {
                return null;
            }

            var moved = Math.Abs(next - place);
            place = next;
            if (moved < 0.01 * width)
            {
                // The same place found for two resonances is one extremum.
                return place > last * (1 + 1e-9) ? place : null;
            }
        }

        return null;
    }

    private double Ratio(double hertz)
    {
        var magnitude = Complex.Abs(column.InputImpedance(2 * Math.PI * hertz));
        return isOpen ? magnitude : 1 / magnitude;
    }
}
