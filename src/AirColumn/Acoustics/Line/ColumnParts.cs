namespace AirColumn.Acoustics.Line;

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
}
