using AirColumn.Acoustics;

namespace ColumnTool.Questions;

/// <summary>What to compute otherwise than a document says.</summary>
internal readonly record struct ColumnChoices(Wavefronts? Wavefronts, int? Modes, Fingering? Fingering)
{
    private static readonly Dictionary<string, Wavefronts> Words = new()
    {
        ["automatic"] = AirColumn.Acoustics.Wavefronts.Automatic,
        ["multimodal"] = AirColumn.Acoustics.Wavefronts.Multimodal,
        ["curved"] = AirColumn.Acoustics.Wavefronts.Curved,
        ["sloped"] = AirColumn.Acoustics.Wavefronts.Sloped,
        ["plane"] = AirColumn.Acoustics.Wavefronts.Plane,
    };

    private static readonly Parameter<Wavefronts> Fronts = new(
        "wavefronts",
        Kinds.Word(Words),
        "wave fronts: automatic, multimodal, curved, sloped or plane",
        "what the document says"
    );

    private static readonly Parameter<int> Many = new(
        "modes",
        new WholeKind(1, 12),
        "how many radial modes, 1 to 12, where the wave fronts are modes",
        "what the document says, or the bore needs"
    );

    private static readonly Parameter<Fingering> Fingers = new(
        "fingering",
        new TextKind<Fingering>(ReadFingering, "xxx ooo"),
        "which tone holes are open, from the blown end: x closed, o open; or \"open\" or \"closed\" for all",
        "what the document says"
    );

    public static IReadOnlyList<Parameter> All { get; } = [Fronts, Many, Fingers];

    /// <summary>Those of a question.</summary>
    public static ColumnChoices Of(Arguments arguments) =>
        new(
            arguments.Maybe(Fronts),
            arguments.Maybe(Many),
            arguments.Has(Fingers) ? arguments.Get(Fingers) : null
        );

    /// <summary>A column computed so.</summary>
    public Column Apply(Column column, Arguments arguments)
    {
        var fingering = Fingering;
        if (this == default)
        {
            return column;
        }

        var options = column.Options with
        {
            Wavefronts = Wavefronts ?? column.Options.Wavefronts,
            Modes = Modes ?? column.Options.Modes,
        };
        if (fingering is not null)
        {
            options = options with { Fingering = fingering };
        }

        return arguments.Blame(Fingers, () => new Column(column.Bore, column.AirProfile, options));
    }

    private static Fingering ReadFingering(string text) =>
        text switch
        {
            "open" => AirColumn.Acoustics.Fingering.AllOpen,
            "closed" => AirColumn.Acoustics.Fingering.AllClosed,
            _ => AirColumn.Acoustics.Fingering.Parse(text),
        };
}
