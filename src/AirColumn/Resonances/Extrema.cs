using System.Numerics;
using AirColumn.Acoustics;

namespace AirColumn.Resonances;

/// <summary>Where |Z| of a column is extreme on the real axis: greatest at a closed blown end, least at an open one.</summary>
internal sealed class Extrema(Column column)
{
    private const int AtATime = 8;
    private const int MostRounds = 8;
    private const double NearEnough = 0.01; // of the width of samples
    private const double TooFar = 20; // likewise

    private readonly bool isOpen = column.Options.BlownEnd.IsOpen;

    /// <summary>|Z| at a frequency, Hz.</summary>
    public double Magnitude(double hertz)
    {
        Span<double> one = stackalloc double[1];
        Magnitudes(new(in hertz), one);
        return one[0];
    }

    /// <summary>Extreme ones of samples from one frequency to another, Hz.</summary>
    public List<double> Among(double from, double to, double step)
    {
        var hertz = new double[Math.Max(0, (int)Math.Ceiling((to - from) / step))];
        for (var i = 0; i < hertz.Length; i++)
        {
            hertz[i] = from + i * step;
        }

        var sizes = new double[hertz.Length];
        Magnitudes(hertz, sizes);
        var starts = new List<double>();
        for (var i = 1; i + 1 < sizes.Length; i++)
        {
            if (IsFurther(sizes[i], sizes[i - 1]) && !IsFurther(sizes[i + 1], sizes[i]))
            {
                starts.Add(hertz[i]);
            }
        }

        return starts;
    }

    /// <summary>The extremum near a frequency, from samples that reach twice a width to either side; null where there is none.</summary>
    public double? Near(double start, double width)
    {
        var place = start;
        for (var round = 0; round < MostRounds; round++)
        {
            if (place + 2 * width > column.HighestHertz || place - 2 * width <= 0)
            {
                return null;
            }

            var least = new LocalState(column, place, width, true).LeastNear(place);
            if (least is not { } next || !(Math.Abs(next - place) < TooFar * width))
            {
                return null;
            }

            var moved = Math.Abs(next - place);
            place = next;
            if (moved < NearEnough * width)
            {
                return place;
            }
        }

        return null;
    }

    private bool IsFurther(double size, double other) => isOpen ? size < other : size > other;

    // At rising frequencies, from one segment after the other.
    private void Magnitudes(ReadOnlySpan<double> hertz, Span<double> sizes)
    {
        Span<Complex> pressures = stackalloc Complex[AtATime];
        Span<Complex> flows = stackalloc Complex[AtATime];
        var i = 0;
        while (i < hertz.Length)
        {
            if (column.Waves.Segments.At(hertz[i]) is not { } segment)
            {
                var (p, u, _) = column.InputState(2 * Math.PI * hertz[i]);
                sizes[i++] = Complex.Abs(p) / Complex.Abs(u);
                continue;
            }

            var end = i + 1;
            while (end < hertz.Length && end - i < flows.Length && segment.Holds(hertz[end]))
            {
                end++;
            }

            segment.At(hertz[i..end], pressures, flows);
            for (var n = 0; i < end; i++, n++)
            {
                sizes[i] = Complex.Abs(pressures[n]) / Complex.Abs(flows[n]);
            }
        }
    }
}
