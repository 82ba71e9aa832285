namespace AirColumn.Workshop.Sheets;

/// <summary>Lines, outlines, circles and texts in a box, y downwards; each of a named style that the page knows.</summary>
/// <param name="width">Of the box; one unit is a pixel of a narrow phone, so that text of twelve units can be read there.</param>
/// <param name="height">Of the box.</param>
/// <param name="label">What it shows, in a few words.</param>
/// <param name="description">What it shows, with its data, for those who cannot see it.</param>
internal sealed class Drawing(double width, double height, string label, string description)
{
    private readonly List<Shape> shapes = [];

    public double Width => width;

    public double Height => height;

    public string Label => label;

    public string Description => description;

    public IReadOnlyList<Shape> Shapes => shapes;

    /// <summary>The part of a tube that what is added from now on shows; null where it shows none.</summary>
    public int? Part { get; set; }

    public void Line(string style, double x1, double y1, double x2, double y2) =>
        Add(new Outline(style, [(x1, y1), (x2, y2)], false));

    public void Outline(string style, IReadOnlyList<(double X, double Y)> points, bool isClosed) =>
        Add(new Outline(style, points, isClosed));

    public void Box(string style, double x1, double y1, double x2, double y2) =>
        Outline(style, [(x1, y1), (x2, y1), (x2, y2), (x1, y2)], true);

    public void Circle(string style, double x, double y, double radius) =>
        Add(new Circle(style, x, y, radius));

    public void Text(string style, double x, double y, string text) => Add(new Label(style, x, y, text));

    private void Add(Shape shape) => shapes.Add(shape with { Part = Part });
}

/// <summary>Something in a drawing.</summary>
internal abstract record Shape(string Style)
{
    /// <summary>Which part of a tube it shows; null for none.</summary>
    public int? Part { get; init; }
}

/// <summary>Straight lines from point to point.</summary>
internal sealed record Outline(string Style, IReadOnlyList<(double X, double Y)> Points, bool IsClosed)
    : Shape(Style);

/// <summary>A circle.</summary>
internal sealed record Circle(string Style, double X, double Y, double Radius) : Shape(Style);

/// <summary>A text; where it is anchored its style says.</summary>
internal sealed record Label(string Style, double X, double Y, string Text) : Shape(Style);
