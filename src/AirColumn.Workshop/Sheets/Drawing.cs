namespace AirColumn.Workshop.Sheets;

/// <summary>Lines, outlines, circles and texts in a box, y downwards; each of a named style that the page knows.</summary>
internal sealed class Drawing(double width, double height, string label)
{
    private readonly List<Shape> shapes = [];

    public double Width => width;

    public double Height => height;

    /// <summary>What it shows, for those who cannot see it.</summary>
    public string Label => label;

    public IReadOnlyList<Shape> Shapes => shapes;

    public void Line(string style, double x1, double y1, double x2, double y2) =>
        shapes.Add(new Outline(style, [(x1, y1), (x2, y2)], false));

    public void Outline(string style, IReadOnlyList<(double X, double Y)> points, bool isClosed) =>
        shapes.Add(new Outline(style, points, isClosed));

    public void Circle(string style, double x, double y, double radius) =>
        shapes.Add(new Circle(style, x, y, radius));

    public void Text(string style, double x, double y, string text) =>
        shapes.Add(new Label(style, x, y, text));
}

/// <summary>Something in a drawing.</summary>
internal abstract record Shape(string Style);

/// <summary>Straight lines from point to point.</summary>
internal sealed record Outline(string Style, IReadOnlyList<(double X, double Y)> Points, bool IsClosed)
    : Shape(Style);

/// <summary>A circle.</summary>
internal sealed record Circle(string Style, double X, double Y, double Radius) : Shape(Style);

/// <summary>A text; where it is anchored its style says.</summary>
internal sealed record Label(string Style, double X, double Y, string Text) : Shape(Style);
