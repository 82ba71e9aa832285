using System.CommandLine;
using AirColumn.Acoustics;
using AirColumn.Documents;
using Shared;

namespace ColumnTool;

/// <summary>The argument that names a column document.</summary>
internal sealed class ColumnFile
{
    public Argument<string> Argument { get; } =
        new("FILE") { Description = "The column document; - reads it from the standard input." };

    /// <summary>The column in the document.</summary>
    public Column Read(ParseResult parsed) => Read(parsed.GetRequiredValue(Argument));

    /// <summary>The column in a document of that name.</summary>
    public static Column Read(string path)
    {
        var shown = path == "-" ? "standard input" : path;
        try
        {
            return InputFile.Read(path, ColumnDocument.Read).ToColumn();
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
