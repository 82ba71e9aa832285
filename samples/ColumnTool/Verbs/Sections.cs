using System.Globalization;
using AirColumn;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>A section and a note that the question is about.</summary>
internal static class Sections
{
    public static Parameter<int> Section { get; } =
        new(
            "section",
            new WholeKind(1, 100_000),
            "the number of the section, 1 at the blown end",
            Parameter.Required
        );

    public static Parameter<Pitch> Note { get; } =
        new("pitch", Kinds.Pitch, "the note, such as `C2` or `F#3`", Parameter.Required);

    /// <summary>The section counted from 0, as code does.</summary>
    public static int Index(Arguments arguments)
    {
        var (number, count) = (arguments.Get(Section), arguments.Column.Bore.Sections.Count);
        return number <= count
            ? number - 1
            : throw arguments.Wrong(Section, $"is {number}; allowed is 1 to {count} in this document.");
    }

    /// <summary>The frequency of the note, below the end of plane waves in the bore.</summary>
    public static Frequency Target(Arguments arguments, Tuning tuning)
    {
        var pitch = arguments.Get(Note);
        var (frequency, highest) = (tuning.FrequencyOf(pitch), arguments.Column.HighestFrequency);
        return frequency <= highest
            ? frequency
            : throw arguments.Wrong(
                Note,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{pitch} is {frequency.Hertz:F1} Hz; allowed is up to {highest.Hertz:F1} Hz in this bore."
                )
            );
    }
}
