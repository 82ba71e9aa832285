using System.CommandLine;
using AirColumn.Workshop;
using Shared;

namespace DroneTube;

/// <summary>The option that says in which units lengths are shown.</summary>
internal static class UnitsOption
{
    public static Option<LengthUnits?> Create() =>
        Options.Parsed<LengthUnits?>(
            "--units",
            "How lengths are shown: mm, in or both. [default: both]",
            text =>
                text.ToUpperInvariant() switch
                {
                    "MM" or "MILLIMETRES" or "MILLIMETERS" or "METRIC" => LengthUnits.Millimetres,
                    "IN" or "INCH" or "INCHES" => LengthUnits.Inches,
                    "BOTH" => LengthUnits.Both,
                    _ => throw new FormatException($"'{text}' is not known; write mm, in or both."),
                }
        );

    /// <summary>The units asked for, which the program's pages are then written in.</summary>
    public static LengthUnits Apply(this Option<LengthUnits?> option, ParseResult parsed) =>
        Show.Units = parsed.GetValue(option) ?? LengthUnits.Both;
}
