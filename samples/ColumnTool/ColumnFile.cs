using System.CommandLine;
using AirColumn.Acoustics;
using AirColumn.Documents;
using Shared;

namespace ColumnTool;

/// <summary>The argument that names a column document, and what to compute otherwise than it says.</summary>
internal sealed class ColumnFile
{
    private static readonly Dictionary<string, Wavefronts> Fronts = new()
    {
        ["automatic"] = Wavefronts.Automatic,
        ["multimodal"] = Wavefronts.Multimodal,
        ["curved"] = Wavefronts.Curved,
        ["sloped"] = Wavefronts.Sloped,
        ["plane"] = Wavefronts.Plane,
    };

    public Argument<string> Argument { get; } =
        new("FILE") { Description = "The column document; - reads it from the standard input." };

    public Option<Wavefronts?> OtherFronts { get; } =
        Options.Parsed<Wavefronts?>(
            "--wavefronts",
            $"Wave fronts instead of the document's: {string.Join(", ", Fronts.Keys)}.",
            text =>
                Fronts.TryGetValue(text, out var fronts)
                    ? fronts
                    : throw new FormatException(
                        $"'{text}' is not possible here; write one of {string.Join(", ", Fronts.Keys)}."
                    )
        );

    public Option<int?> OtherModes { get; } =
        Options.WholeNumber(
            "--modes",
            "How many radial modes instead of what the document says or the bore needs; where the fronts are multimodal.",
            1,
            12
        );

    /// <summary>The column in the document, computed as the options say.</summary>
    public Column Read(ParseResult parsed)
    {
        var document = Document(parsed.GetRequiredValue(Argument));
        var options = document.Options;
        return new Column(
            document.Bore,
            document.Air,
            options with
            {
                Wavefronts = parsed.GetValue(OtherFronts) ?? options.Wavefronts,
                Modes = parsed.GetValue(OtherModes) ?? options.Modes,
            }
        );
    }

    /// <summary>The column in a document of that name.</summary>
    public static Column Read(string path) => Document(path).ToColumn();

    private static ColumnDocument Document(string path)
    {
        var shown = path == "-" ? "standard input" : path;
        try
        {
            return InputFile.Read(path, ColumnDocument.Read);
        }
        catch (ColumnDocumentException problem)
        {
            throw new BadInputException($"{shown}: {problem.Message}");
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException($"{shown}: {OneLine.Of(problem)}");
        }
    }
}
