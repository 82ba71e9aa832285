using AirColumn.Design;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>holes: where finger holes must lie for a scale.</summary>
internal static class HolesVerb
{
    private static readonly Parameter<int[]> Semitones = new(
        "semitones",
        Kinds.Listed(new WholeKind(1, 24), 1, 24),
        "for each hole, that nearest to the far end first, how many semitones its note lies above the lowest; on the command line with commas between",
        "2, 4, 5, 7, 9, 11, a major scale"
    );

    private static readonly Parameter<Length[]> Diameters = new(
        "diameters",
        Kinds.Listed(Kinds.Length, 1, 24),
        "for each hole its diameter with its unit, that nearest to the blown end first; on the command line with commas between",
        Parameter.Required
    );

    public static Verb Create() =>
        new Verb<Found<ShapeSolution>>
        {
            Name = "holes",
            Summary =
                "Places of finger holes on a straight tube, and its length, such that opening them one after the other from the far end plays a scale; the note is that with all of them closed. The document is one cylinder, blown at an open end.",
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
