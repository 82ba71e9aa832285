using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>How much longer than planned to cut the pipe at first, so that it can be played and trimmed.</summary>
public sealed record Trimming
{
    internal Trimming(
        double centsPerMillimetre,
        TubePlanOptions options,
        Length allowance,
        TubeCut firstCut,
        TubeCut firstCutInches
    )
    {
        CentsPerMillimetre = centsPerMillimetre;
        BandCents = options.TrimmingCents;
        MeasuringTolerance = options.MeasuringTolerance;
        Allowance = allowance;
        FirstCut = firstCut;
        FirstCutInches = firstCutInches;
    }

    /// <summary>Change of the first resonance for each millimetre of pipe added, at the planned length: negative.</summary>
    public double CentsPerMillimetre { get; }

    /// <summary>How many cents flat of the note the first resonance is to be, before the tolerance is added.</summary>
    public double BandCents { get; }

    /// <summary>The error of measuring that is added.</summary>
    public Length MeasuringTolerance { get; }

    /// <summary>What to leave: the pipe that <see cref="BandCents"/> are worth, and the measuring tolerance.</summary>
    public Length Allowance { get; }

    /// <summary>The first cut, allowance included, rounded up to a whole millimetre.</summary>
    public TubeCut FirstCut { get; }

    /// <summary>The first cut, allowance included, rounded up to a sixteenth of an inch.</summary>
    public TubeCut FirstCutInches { get; }
}
