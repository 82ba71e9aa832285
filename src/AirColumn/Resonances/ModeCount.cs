namespace AirColumn;

/// <summary>How many modes a column has below a frequency, and where each lies but for its dissipation and for what openings hear of each other.</summary>
internal sealed class ModeCount
{
    private const int MostRounds = 60;

    private readonly PrueferPhase phase;
    private readonly double first; // the angle of the first mode

    public ModeCount(Column column)
    {
        phase = new PrueferPhase(column.Model);
        // Poles of Z lie at multiples of π, zeros half way between. What lies at f = 0 (θ = 0 where all is closed, −π/2 where anything is
        // open) is no resonance.
        first = (column.Options.BlownEnd.IsOpen, column.Model.IsSealed) switch
        {
            (true, _) => Math.PI / 2,
            (false, true) => Math.PI,
            (false, false) => 0,
        };
    }

    /// <summary>How many modes lie below a frequency, Hz.</summary>
    public int Below(double hertz)
    {
        Span<double> counts = stackalloc double[1];
        Below(new(in hertz), counts);
        return (int)counts[0];
    }

    /// <summary>The same at several frequencies.</summary>
    public void Below(ReadOnlySpan<double> hertz, Span<double> counts)
    {
        phase.At(hertz, counts);
        foreach (ref var count in counts[..hertz.Length])
        {
            count = Math.Max(0, Math.Floor((count - first) / Math.PI) + 1);
        }
    }

    /// <summary>Where mode <paramref name="n"/>, counted from 0, lies between two frequencies, Hz.</summary>
    public double Place(int n, double low, double high)
    {
        for (var round = 0; round < MostRounds && high - low > 1e-9 * high; round++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Below(middle) > n ? (low, middle) : (middle, high);
        }

        return 0.5 * (low + high);
    }
}
