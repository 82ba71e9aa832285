using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Line;

/// <summary>A column as all that solve it see it: its parts with the fingering put, its ends, and the limits of its models.</summary>
internal sealed class ColumnModel
{
    private readonly Termination[] ends;
    private string? wavefrontWarning; // empty where there is none

    /// <summary>Compiles it; what another was made of is shared where nothing has changed.</summary>
    /// <exception cref="ArgumentException">The fingering is for another number of holes.</exception>
    public ColumnModel(in ColumnParts parts, ColumnLine? previous)
    {
        Asked = parts;
        var states = parts.Options.Fingering.ForHoles(parts.Bore.Holes.Count, "options");
        Line = LineBuilder.Compile(parts, previous);
        OpenHoles = states;
        Way = Line.Fingered(states);
        Openings =
            Options.MutualRadiation && Options.Wavefronts != Wavefronts.Multimodal
                ? OutsideOpenings.Of(Line, states)
                : null;
        Gas = parts.Air.At(0, parts.Bore.LengthMetres).Constants;
        var radius = parts.Bore.Sections[0].WallAt(0).Radius;
        Impedance = Gas.Density * Gas.SpeedOfSound / (Math.PI * radius * radius);
        ends = [End, .. LineParts.Ends(Way), .. Blown.Loads];
        CutOnHertz = LineParts
            .Segments(Way)
            .Min(segment =>
                ThinEnd.CutOnKa * segment.Gas.SpeedOfSound / (2 * Math.PI * segment.Section.LargestRadius)
            );
        HighestHertz = ends.Min(end => end.HighestFrequency);
    }

    /// <summary>The options that were asked for.</summary>
    public ColumnParts Asked { get; }

    /// <summary>What it has become, every tone hole open.</summary>
    public ColumnLine Line { get; }

    /// <summary>The parts from the blown end, tone holes as they are fingered.</summary>
    public LinePart[] Way { get; }

    /// <summary>Which tone holes are open, from the blown end.</summary>
    public bool[] OpenHoles { get; }

    /// <summary>The openings that hear each other outside; null where none does.</summary>
    public OutsideOpenings? Openings { get; }

    /// <summary>The shape.</summary>
    public Bore Bore => Asked.Bore;

    /// <summary>The choices, wave fronts decided on.</summary>
    public ColumnOptions Options => Line.Parts.Options;

    /// <summary>What to know of the wave fronts; null where there is nothing.</summary>
    public string? WavefrontWarning
    {
        get
        {
            wavefrontWarning ??=
                Options.Wavefronts == Wavefronts.Multimodal
                    ? ""
                    : WavefrontChoice.Warning(Bore, Asked.Options.Wavefronts) ?? "";
            return wavefrontWarning.Length > 0 ? wavefrontWarning : null;
        }
    }

    /// <summary>The far end.</summary>
    public Termination End => Line.Load;

    /// <summary>The air outside an open blown end.</summary>
    public InputTermination Blown => Line.Blown;

    /// <summary>All that ends something.</summary>
    public IReadOnlyList<Termination> Ends => ends;

    /// <summary>The gas at the blown end.</summary>
    public GasConstants Gas { get; }

    /// <summary>ρc/S at the blown end, Pa·s/m³.</summary>
    public double Impedance { get; }

    /// <summary>Cut-on of the first radial mode at the widest place, Hz.</summary>
    public double CutOnHertz { get; }

    /// <summary>Where the models of radiation end, Hz.</summary>
    public double HighestHertz { get; }

    /// <summary>Whether nothing is open but, perhaps, the blown end.</summary>
    public bool IsSealed => ends.All(end => end.IsClosed);
}
