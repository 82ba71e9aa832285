namespace AirColumn.Workshop.Sheets;

/// <summary>What a build sheet is written on: blocks from top to bottom.</summary>
internal abstract class SheetPage
{
    /// <summary>A heading.</summary>
    public abstract void Heading(string text);

    /// <summary>A paragraph: plain, a note, or something to mind.</summary>
    public abstract void Paragraph(string text, ParagraphStyle style = ParagraphStyle.Plain);

    /// <summary>A list, numbered or not.</summary>
    public abstract void List(IEnumerable<string> items, bool isOrdered);

    /// <summary>A table.</summary>
    public abstract void Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows);

    /// <summary>A drawing, as wide as the page.</summary>
    public abstract void Draw(Drawing drawing);
}

/// <summary>How a paragraph stands out.</summary>
internal enum ParagraphStyle
{
    /// <summary>Not at all.</summary>
    Plain,

    /// <summary>Small, beside what it is about.</summary>
    Note,

    /// <summary>Marked, to be minded.</summary>
    Mind,
}
