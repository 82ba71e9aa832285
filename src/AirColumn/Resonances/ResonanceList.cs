using System.Collections;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn;

/// <summary>Resonances in order of frequency, with warnings. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<ResonanceList>))]
public sealed class ResonanceList : IReadOnlyList<Resonance>, IJsonAnswer
{
    private readonly Resonance[] items;
    private readonly Func<double[], CancellationToken, double>? modeConvergence;

    internal ResonanceList(
        IEnumerable<Resonance> items,
        IReadOnlyList<string> warnings,
        Func<double[], CancellationToken, double>? modeConvergence = null
    )
    {
        this.items = [.. items];
        this.modeConvergence = modeConvergence;
        Warnings = warnings;
    }

    /// <summary>
    /// Sentences about values outside a model's range, modes too damped to show an extremum of |Z|, resonances whose pole was not found exactly (so
    /// that their Q is a guess), or fewer resonances than asked for.
    /// </summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>
    /// Estimated mode-truncation error in cents, with <see cref="AirColumn.Wavefronts.Multimodal"/>; otherwise 0. It is the largest shift of
    /// any resonance when two of the N radial modes are dropped (two are added if there are only two). The true error is smaller, about 2/N of this shift.
    /// </summary>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The shift in cents.</returns>
    public double ModeConvergence(CancellationToken cancellationToken = default) =>
        modeConvergence is null || items.Length == 0
            ? 0
            : modeConvergence([.. items.Select(item => item.Frequency.Hertz)], cancellationToken);

    /// <summary>The number of resonances.</summary>
    public int Count => items.Length;

    /// <summary>The resonance of an index.</summary>
    /// <param name="index">The index: 0 is the lowest resonance.</param>
    public Resonance this[int index] => items[index];

    /// <inheritdoc/>
    public IEnumerator<Resonance> GetEnumerator() => ((IEnumerable<Resonance>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();

    /// <summary>
    /// Writes the resonances as CSV: a heading, then number, frequency in Hz, |Z| in Pa·s/m³ and quality factor, to all digits and in the invariant
    /// culture.
    /// </summary>
    /// <param name="writer">Receives the text.</param>
    public void WriteCsv(TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write("number,frequency_hz,magnitude,quality_factor\n");
        for (var i = 0; i < items.Length; i++)
        {
            writer.Write(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{i + 1},{items[i].Frequency.Hertz:R},{items[i].Magnitude:R},{items[i].QualityFactor:R}\n"
                )
            );
        }
    }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Objects("resonances", items, item => ((IJsonAnswer)item).WriteMembers(json));
        json.Texts("warnings", Warnings);
    }

    /// <summary>The resonances, from the lowest.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => string.Join("; ", items.Select(resonance => resonance.ToString()));
}
