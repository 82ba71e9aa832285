using System.CommandLine;
using AirColumn.Pitches;
using Shared;

namespace ColumnTool;

/// <summary>The option that says on which A4 the pitches stand.</summary>
internal static class ReferenceOption
{
    public static Option<Tuning?> Create() =>
        Options.Parsed<Tuning?>("--reference", "The frequency of A4 in Hz; 440 if left out.", Read);

    /// <summary>Equal temperament on the reference asked for.</summary>
    public static Tuning Tuning(ParseResult parsed, Option<Tuning?> option) =>
        parsed.GetValue(option) ?? AirColumn.Pitches.Tuning.Concert;

    private static Tuning Read(string text) => AirColumn.Pitches.Tuning.WithReference(Options.Hertz(text));
}
