namespace AirColumn.Documents;

/// <summary>A column document that cannot be read; the message is one line for the person who wrote it.</summary>
public sealed class ColumnDocumentException : FormatException
{
    /// <summary>Says what is wrong, and where.</summary>
    /// <param name="path">The place in the document, such as "sections[2].length"; empty for the whole document.</param>
    /// <param name="message">One line that names the place, the value found there and the allowed values.</param>
    /// <param name="innerException">The exception that caused this one, if any.</param>
    public ColumnDocumentException(string path, string message, Exception? innerException = null)
        : base(message, innerException)
    {
        Path = path;
    }

    /// <summary>The place in the document, such as "sections[2].length"; empty for the document as a whole.</summary>
    public string Path { get; }
}
