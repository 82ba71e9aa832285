using AirColumn;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>holes: where finger holes must lie for a scale.</summary>
internal static class HolesVerb
{
    private static readonly Parameter<int[]> Semitones = new(
        "semitones",
        Kinds.Listed(new WholeKind(1, 24), 1, 24),
        "the semitones of each hole's note above the lowest note, from the far end; on the command line separated by commas",
        "2, 4, 5, 7, 9, 11, a major scale"
    );

    private static readonly Parameter<Length[]> Diameters = new(
        "diameters",
        Kinds.Listed(Kinds.Length, 1, 24),
        "the diameter of each hole with its unit, from the blown end; on the command line separated by commas",
        Parameter.Required
    );

    public static Verb Create() =>
        new Verb<Found<ShapeSolution>>
        {
            Name = "holes",
            Summary =
                "Places of finger holes on a straight tube, and its length, so that opening them one after the other from the far end plays a scale. The note asked for is the note with all holes closed. The document is one cylinder, blown at an open end.",
            Own = [Sections.Note, Diameters, Semitones, .. Tunings.Parameters],
            Members = ShapeVerb.Members,
            Compute = arguments =>
            {
                var column = arguments.Column;
                var tuning = Tunings.Of(arguments);
                var found = arguments.Blame(
                    Diameters,
                    () =>
                        FingerHoles.Place(
                            column,
                            tuning,
                            arguments.Get(Sections.Note),
                            arguments.Get(Semitones, [2, 4, 5, 7, 9, 11]),
                            arguments.Get(Diameters),
                            arguments.Token
                        )
                );
                return ShapeVerb.Told(found, arguments);
            },
        };
}
