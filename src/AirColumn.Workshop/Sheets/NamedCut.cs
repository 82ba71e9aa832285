using System.Globalization;
using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Sheets;

/// <summary>A pipe of the cut list, by the letter that stands for it on the sheet.</summary>
/// <param name="Letter">A, B, C, … from the lips; a number where the letters are used up.</param>
/// <param name="Pipe">The pipe.</param>
/// <param name="Sizes">How long to cut it first, in the units of the sheet, one text each.</param>
internal sealed record NamedCut(string Letter, PipePart Pipe, IReadOnlyList<string> Sizes)
{
    /// <summary>The letter of a pipe by its place in the cut list.</summary>
    public static string LetterOf(int index) =>
        index < 26 ? ((char)('A' + index)).ToString() : (index + 1).ToString(CultureInfo.InvariantCulture);
}
