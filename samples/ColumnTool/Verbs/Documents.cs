using AirColumn.Acoustics;
using AirColumn.Documents;
using ColumnTool.Answers;

namespace ColumnTool.Verbs;

/// <summary>Columns that an answer hands back as documents, to ask about next.</summary>
internal static class Documents
{
    public static Field<T> Of<T>(string meaning, Func<T, Column> column) =>
        Fields<T>.Document("document", meaning, of => Write(column(of)));

    private static string? Write(Column column)
    {
        try
        {
            return new ColumnDocument(column.Bore, column.Air, column.Options).ToJson();
        }
        catch (Exception problem) when (problem is NotSupportedException or ArgumentException)
        {
            return null;
        }
    }
}
