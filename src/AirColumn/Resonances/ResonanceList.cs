using System.Collections;

namespace AirColumn.Resonances;

/// <summary>The resonances found, in order of frequency, and what to know before relying on them. Immutable.</summary>
public sealed class ResonanceList : IReadOnlyList<Resonance>
{
    private readonly Resonance[] items;
    private readonly Lazy<double> convergence;

    internal ResonanceList(
        IEnumerable<Resonance> items,
        IReadOnlyList<string> warnings,
        Func<double[], double>? modeConvergence = null
    )
    {
        this.items = [.. items];
        convergence = new Lazy<double>(() =>
            modeConvergence is null || this.items.Length == 0
                ? 0
                : modeConvergence([.. this.items.Select(item => item.Frequency.Hertz)])
        );
        Warnings = warnings;
    }

    /// <summary>
    /// Sentences naming what is outside a model's range, modes too damped to show an extremum of |Z|, resonances whose pole was not found
    /// exactly, so that their Q is a guess, or fewer resonances than were asked for.
    /// </summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>
    /// With <see cref="Acoustics.Wavefronts.Multimodal"/> how many cents any of the resonances moves between the radial modes carried and
    /// two fewer (two more where there are but two): what is left out is less, about 2/N of it for N modes. Else 0. It is computed when
    /// first asked for.
    /// </summary>
    public double ModeConvergence => convergence.Value;

    /// <summary>How many were found.</summary>
    public int Count => items.Length;

    /// <summary>One of them.</summary>
    /// <param name="index">0 is the lowest.</param>
    public Resonance this[int index] => items[index];

    /// <inheritdoc/>
    public IEnumerator<Resonance> GetEnumerator() => ((IEnumerable<Resonance>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();
}
