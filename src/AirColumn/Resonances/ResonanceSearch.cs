using System.Numerics;
using AirColumn.Acoustics;
using MathNet.Numerics.RootFinding;

namespace AirColumn.Resonances;

/// <summary>
/// One search. The reactive phase puts each mode into a cell of its own between two anti-resonances, so that none can be
/// overlooked however narrow; in its cell the extremum of |Z| of the full, lossy column is then found.
/// </summary>
internal sealed class ResonanceSearch
{
    private const int SamplesPerSide = 16;

    // A resonance of the lossy column may lie on the other side of the limit than its reactive twin.
    private const double Margin = 1.25;

    private readonly Column column;
    private readonly ReactivePhase phase;
    private readonly bool isOpen;
    private readonly double limit;
    private readonly double horizon;
    private readonly List<string> damped = [];

    /// <summary>Searches up to <paramref name="limit"/> Hz.</summary>
    public ResonanceSearch(Column column, double limit)
    {
        this.column = column;
        this.limit = limit;
        horizon = Math.Min(limit * Margin, column.HighestHertz);
        phase = new ReactivePhase(column);
        isOpen = column.Options.BlownEnd.IsOpen;
    }

    /// <summary>Modes without an extremum, in words, as far as the search went.</summary>
    public IReadOnlyList<string> Damped => damped;

    /// <summary>The resonances from the lowest up, found one by one.</summary>
    public IEnumerable<Resonance> Run()
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
        for (; target < highest; target += Math.PI)
        {
            var mode = Frequency(target);
            var lower = Math.Max(Frequency(target - Math.PI / 2), 0.02 * mode);
            var upper = Frequency(target + Math.PI / 2);
            var extremum = Refine(mode, lower, upper);
            var place = extremum?.Place ?? mode;
            if (place > limit)
            {
                continue;
            }

            if (extremum is { } found)
            {
                var magnitude = isOpen ? Complex.Abs(found.Value) : 1 / Complex.Abs(found.Value);
                yield return new Resonance(found.Place, magnitude, found.Zero);
            }
            else
            {
                damped.Add(
                    $"The mode near {Require.Show(Math.Round(mode, 2), "Hz")} is too damped to show "
                        + $"{(isOpen ? "a minimum" : "a maximum")} of |Z|."
                );
            }
        }
    }

    // The frequency at which the phase reaches an angle; 0 or the horizon where it lies beyond them.
    private double Frequency(double angle)
    {
        var lowest = 1e-6 * horizon;
        if (phase.At(lowest) >= angle)
        {
            return 0;
        }

        if (phase.At(horizon) <= angle)
        {
            return horizon;
        }

        // Not convergent to the last digit is good enough: the cell only separates neighbours.
        return Brent.FindRoot(hertz => phase.At(hertz) - angle, lowest, horizon, 1e-9 * horizon, 200);
    }

    private Extremum.Result? Refine(double mode, double lower, double upper)
    {
        if (Extremum.Find(Least, mode, lower, upper) is { } found && IsLeast(found))
        {
            return found;
        }

        // Strong damping moves the extremum far from the mode: look at the cell and begin at its least sample.
        var best = 0;
        var samples = new double[2 * SamplesPerSide + 1];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = Sample(i, mode, lower, upper);
            if (Complex.Abs(Least(samples[i])) < Complex.Abs(Least(samples[best])))
            {
                best = i;
            }
        }

        if (best == 0 || best == samples.Length - 1)
        {
            return null;
        }

        return
            Extremum.Find(Least, samples[best], samples[best - 1], samples[best + 1]) is { } sampled
            && IsLeast(sampled)
            ? sampled
            : null;
    }

    private static double Sample(int i, double mode, double lower, double upper)
    {
        var t = (double)(i - SamplesPerSide) / SamplesPerSide;
        return t < 0 ? mode + t * (mode - lower) : mode + t * (upper - mode);
    }

    // 1/Z where Z is to be greatest, Z where it is to be least.
    private Complex Least(double hertz)
    {
        var z = column.InputImpedance(2 * Math.PI * hertz);
        return isOpen ? z : 1 / z;
    }

    private bool IsLeast(Extremum.Result found)
    {
        if (!(found.Zero.Imaginary >= 0))
        {
            return false;
        }

        var aside = Math.Max(0.1 * found.Zero.Imaginary, 1e-6 * found.Place);
        var value = Complex.Abs(found.Value);
        return value <= Complex.Abs(Least(found.Place - aside))
            && value <= Complex.Abs(Least(found.Place + aside));
    }
}
