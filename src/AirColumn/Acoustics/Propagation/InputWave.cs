namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// What a column's waves are to all that asks for them: pressure and flow at the blown end at any frequency. Plane waves and radial modes
/// answer alike.
/// </summary>
internal abstract class InputWave
{
    /// <summary>What sound takes from end to end, s: how fast the state turns with frequency.</summary>
    public abstract double Delay { get; }

    /// <summary>ρc/S at the blown end, Pa·s/m³.</summary>
    public abstract double Impedance { get; }

    /// <summary>Frequencies, Hz, where a model has a corner: the state is smooth between them only.</summary>
    public abstract IReadOnlyList<double> Corners { get; }

    /// <summary>Whether all ends are models of ours, smooth in frequency, rather than functions that were given.</summary>
    public abstract bool IsSmooth { get; }

    /// <summary>The way through the column for a band of frequencies.</summary>
    public abstract WavePath Prepare(in Band band);
}
