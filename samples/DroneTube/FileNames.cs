using System.CommandLine;
using AirColumn;
using Shared;

namespace DroneTube;

/// <summary>What files are called that nobody named.</summary>
internal static class FileNames
{
    /// <summary>Beside a parts file, with the note, so that the files of one tube on two notes are two.</summary>
    public static string Beside(string parts, string ending) =>
        Path.Combine(
            Path.GetDirectoryName(parts) ?? "",
            $"{Path.GetFileNameWithoutExtension(parts)}-{ending}"
        );

    /// <summary>
    /// Where a page is written: where the user says, else beside the parts file, and to the standard output, "-", if that was read from the input.
    /// </summary>
    public static string ForPage(ParseResult parsed, OutputFile output, string parts, string about) =>
        (parsed.GetValue(output.Name), parts) switch
        {
            ("-", _) or (null, "-") => "-",
            ("", _) => throw new BadInputException(
                "--out is empty; name a file, or - for the standard output."
            ),
            var (named, _) => output.Checked(parsed, named ?? Beside(parts, $"{about}.html"), parts),
        };

    /// <summary>A note as part of a name: no sign of it means something else in an address or a shell.</summary>
    public static string Of(Pitch note) =>
        note.ToString()
            .Replace("#", "sharp", StringComparison.Ordinal)
            .Replace("b", "flat", StringComparison.Ordinal);

    /// <summary>What a part is called, as part of a name.</summary>
    public static string Of(string part) =>
        string.Concat(part.Select(letter => char.IsLetterOrDigit(letter) ? letter : '-'));
}
