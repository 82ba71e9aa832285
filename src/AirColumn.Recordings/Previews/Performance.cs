namespace AirColumn.Recordings.Previews;

/// <summary>One attempt at a note, in SI units: how it was blown and what came of it.</summary>
internal sealed record Performance
{
    public required PreviewStatus Status { get; init; }
    public required string Remark { get; init; }

    /// <summary>Playing frequency; 0 if none.</summary>
    public double Hertz { get; init; }

    /// <summary>From 1.</summary>
    public required int Register { get; init; }

    /// <summary>That of <see cref="Register"/>.</summary>
    public required Resonance Resonance { get; init; }

    /// <summary>Pressure in the mouth.</summary>
    public required double Pascal { get; init; }

    /// <summary>0 if none was found.</summary>
    public double LipHertz { get; init; }

    /// <summary>The lowest of the register asked for; 0 if there is none.</summary>
    public double ThresholdPascal { get; init; }

    /// <summary>The samples that were taken for steady.</summary>
    public Range Steady { get; init; }

    /// <summary>All that moved; null if nothing was tried.</summary>
    public LipMotion? Motion { get; init; }
}
