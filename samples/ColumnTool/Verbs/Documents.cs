using AirColumn;
using AirColumn.Documents;
using ColumnTool.Answers;

namespace ColumnTool.Verbs;

/// <summary>What was found, and the document that it was found for.</summary>
internal sealed record Found<T>(T Solution, ColumnDocument Document);

/// <summary>Columns that an answer hands back as documents, to ask about next.</summary>
internal static class Documents
{
    /// <summary>The column that was found, with the name and the fingerings of the document that was asked about.</summary>
    public static Field<Found<T>> Of<T>(string meaning, Func<T, Column> column) =>
        Fields<Found<T>>.Document(
            "document",
            meaning,
            found => Write(column(found.Solution), found.Document)
        );

    private static string Write(Column column, ColumnDocument from) =>
        new ColumnDocument(
            column.Bore,
            column.AirProfile,
            column.Options,
            from.Name,
            // Where holes were added the fingerings are those of another instrument.
            [.. column.Bore.Holes.Count == from.Bore.Holes.Count ? from.Fingerings : []]
        ).ToJson();
}
