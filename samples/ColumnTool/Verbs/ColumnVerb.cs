using AirColumn;
using AirColumn.Documents;
using ColumnTool.Answers;
using ColumnTool.Questions;

namespace ColumnTool.Verbs;

/// <summary>column: what a document describes, as the engine takes it.</summary>
internal static class ColumnVerb
{
    private sealed record Answered(Column Column, ColumnDocument Document, int Modes);

    public static Verb Create() =>
        new Verb<Answered>
        {
            Name = "column",
            Summary =
                "Describes the column of a document, and the range of frequencies in which the engine answers.",
            Own = [],
            Members =
            [
                Fields<Answered>.TextOrNull(
                    "name",
                    "its name for people; `null` if it has none",
                    all => all.Document.Name
                ),
                Fields<Answered>.Number(
                    "lengthMetres",
                    "m",
                    "the length of all sections together",
                    all => all.Column.Bore.Length.Meters
                ),
                Fields<Answered>.Whole("sections", "how many", all => all.Column.Bore.Sections.Count),
                Fields<Answered>.Whole("holes", "how many", all => all.Column.Bore.Holes.Count),
                Fields<Answered>.Whole("branches", "how many", all => all.Column.Bore.Branches.Count),
                Fields<Answered>.Text(
                    "fingering",
                    "the fingering of the answer",
                    all => all.Column.Options.Fingering.ToString()
                ),
                Fields<Answered>.Text(
                    "blownEnd",
                    "the blown end in words, for people",
                    all => all.Column.Options.BlownEnd.ToString()
                ),
                Fields<Answered>.Text(
                    "wavefronts",
                    "the wave fronts used; never `automatic`, but the kind it chose",
                    all => all.Column.Wavefronts.ToString().ToLowerInvariant()
                ),
                Fields<Answered>.Whole(
                    "modes",
                    "radial modes carried; 1 is the plane wave",
                    all => all.Modes
                ),
                Fields<Answered>.Number(
                    "characteristicImpedance",
                    "Pa·s/m³",
                    "ρc/S at the blown end",
                    all => all.Column.CharacteristicImpedance
                ),
                Fields<Answered>.Number(
                    "cutOnHz",
                    "Hz",
                    "the cut-on of the first higher mode in the widest place",
                    all => all.Column.CutOn.Hertz
                ),
                Fields<Answered>.Number(
                    "highestHz",
                    "Hz",
                    "the highest frequency that is answered",
                    all => all.Column.HighestFrequency.Hertz
                ),
                Fields<Answered>.Number(
                    "speedOfSound",
                    "m/s",
                    "the speed of sound at the blown end",
                    all => all.Column.Air.SpeedOfSound.MetersPerSecond
                ),
                Fields<Answered>.List(
                    "fingerings",
                    "those that the document names",
                    all => all.Document.Fingerings,
                    Fields<NamedFingering>.Text("name", "its name", one => one.Name),
                    Fields<NamedFingering>.Text("holes", "x closed, o open", one => one.Holes.ToString())
                ),
            ],
            Compute = arguments =>
                (
                    new Answered(
                        arguments.Column,
                        arguments.Document,
                        arguments.Column.ModeCount(arguments.Token)
                    ),
                    []
                ),
        };
}
