using AirColumn;
using AirColumn.Documents;

namespace ColumnTool.Questions;

/// <summary>What to compute otherwise than a document says.</summary>
internal readonly record struct ColumnChoices(Wavefronts? Wavefronts, int? Modes, string? Fingering)
{
    private static readonly Dictionary<string, Wavefronts> Words = new()
    {
        ["automatic"] = AirColumn.Wavefronts.Automatic,
        ["multimodal"] = AirColumn.Wavefronts.Multimodal,
        ["curved"] = AirColumn.Wavefronts.Curved,
        ["sloped"] = AirColumn.Wavefronts.Sloped,
        ["plane"] = AirColumn.Wavefronts.Plane,
    };

    private static readonly Parameter<Wavefronts> Fronts = new(
        "wavefronts",
        Kinds.Word(Words),
        "wave fronts: automatic, multimodal, curved, sloped or plane",
        "as in the document"
    );

    private static readonly Parameter<int> Many = new(
        "modes",
        new WholeKind(1, 12),
        "the number of radial modes, 1 to 12, if the wave fronts are modes",
        "as in the document, or as many as the bore needs"
    );

    private static readonly Parameter<string> Fingers = new(
        "fingering",
        new TextKind<string>(text => text, "xxx ooo"),
        "the open tone holes: the name of a fingering of the document, a text such as `xxo ooo` from the blown end (x closed, o open), `all open` or `all closed`",
        "as in the document"
    );

    public static IReadOnlyList<Parameter> All { get; } = [Fronts, Many, Fingers];

    /// <summary>Those of a question.</summary>
    public static ColumnChoices Of(Arguments arguments) =>
        new(
            arguments.Maybe(Fronts),
            arguments.Maybe(Many),
            arguments.Has(Fingers) ? arguments.Get(Fingers) : null
        );

    /// <summary>The column of a document, computed so.</summary>
    /// <exception cref="Problem">There is no such fingering.</exception>
    public Column Of(ColumnDocument document, Arguments arguments)
    {
        if (this == default)
        {
            return document.ToColumn();
        }

        var options = document.Options with
        {
            Wavefronts = Wavefronts ?? document.Options.Wavefronts,
            Modes = Modes ?? document.Options.Modes,
        };
        if (Fingering is { } fingering)
        {
            options = options with
            {
                Fingering = arguments.Blame(Fingers, () => Open(document, fingering, arguments)),
            };
        }

        return arguments.Blame(Fingers, () => new Column(document.Bore, document.Air, options));
    }

    // A name comes first: the document's own words are meant.
    private static Fingering Open(ColumnDocument document, string text, Arguments arguments)
    {
        if (document.Fingerings.FirstOrDefault(named => named.Name == text) is { } known)
        {
            return known.Holes;
        }

        try
        {
            return AirColumn.Fingering.Parse(text);
        }
        catch (FormatException)
        {
            var names = document.Fingerings.Select(named => named.Name).ToList();
            throw arguments.Wrong(
                Fingers,
                $"is '{text}'; write x for a closed hole and o for an open one from the blown end, as in \"xxx ooo\", \"all open\" or \"all closed\""
                    + (
                        names.Count == 0
                            ? "; the document names no fingerings."
                            : $", or one that the document names: {string.Join(", ", names)}."
                    )
            );
        }
    }
}
