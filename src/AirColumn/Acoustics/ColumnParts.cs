using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics;

/// <summary>What a column is made of.</summary>
internal readonly record struct ColumnParts(Bore Bore, AirProfile Air, ColumnOptions Options)
{
    /// <summary>The same with the wave fronts decided on.</summary>
    public ColumnParts Decided() =>
        Options.Wavefronts == Wavefronts.Automatic
            ? this with
            {
                Options = Options with { Wavefronts = WavefrontChoice.For(Bore, Options) },
            }
            : this;

    /// <summary>A section that a parameter speaks of.</summary>
    /// <exception cref="ArgumentException">The bore does not have as many.</exception>
    public Section SectionAt(int index, ColumnParameter parameter) =>
        index < Bore.Sections.Count
            ? Bore.Sections[index]
            : throw new ArgumentException(
                $"The column has no {parameter}: its bore has {Bore.Sections.Count} sections.",
                nameof(parameter)
            );
}
