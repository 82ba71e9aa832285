using ScottPlot;
using SkiaSharp;

namespace AirColumn.Plots.Drawing;

/// <summary>Where in a text its given point is.</summary>
internal enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>A page to draw on: texts, lines and shapes in CSS pixels, y downwards.</summary>
internal sealed class Page(
    SKCanvas canvas,
    Look look,
    float width,
    float height,
    CancellationToken cancellationToken
)
{
    public SKCanvas Canvas => canvas;

    public Look Look => look;

    public float Width => width;

    public float Height => height;

    /// <summary>Throws where the drawing has been cancelled: before each thing that is drawn.</summary>
    public void GoOn() => cancellationToken.ThrowIfCancellationRequested();

    /// <summary>The heading, the line below it, and a white page behind all.</summary>
    public void Begin(string heading, string below)
    {
        GoOn();
        using var white = new SKPaint { Color = SKColors.White };
        canvas.DrawRect(0, 0, width, height, white);
        var room = width - 2 * look.Margin;
        Text(
            look.Margin,
            look.Margin + look.Heading,
            heading,
            Anchor.Start,
            Palette.Ink,
            look.Heading,
            true,
            room
        );
        Text(
            look.Margin,
            look.Margin + 1.05f * look.Heading + look.LineHeight,
            below,
            Anchor.Start,
            Palette.Quiet,
            look.Text,
            false,
            room
        );
    }

    /// <summary>One line of text; where it is wider than its room it is set smaller, and then cut short.</summary>
    public void Text(
        float x,
        float baseline,
        string text,
        Anchor anchor,
        Color color,
        float size,
        bool bold = false,
        float room = float.PositiveInfinity
    )
    {
        GoOn();
        var needed = TextWidth(text, size, bold);
        if (needed > room)
        {
            size = Math.Max(size * room / needed, 0.72f * size);
            text = Shortened(text, size, bold, room);
            needed = TextWidth(text, size, bold);
        }

        using var font = Font(size, bold);
        using var paint = new SKPaint { Color = color.ToSKColor(), IsAntialias = true };
        var left = anchor switch
        {
            Anchor.Start => x,
            Anchor.Middle => x - needed / 2,
            _ => x - needed,
        };
        canvas.DrawText(text, left, baseline, font, paint);
    }

    public static float TextWidth(string text, float size, bool bold = false)
    {
        using var font = Font(size, bold);
        return font.MeasureText(text);
    }

    public void Line(
        float x1,
        float y1,
        float x2,
        float y2,
        Color color,
        float stroke,
        bool dashed = false
    ) => Line(x1, y1, x2, y2, color, stroke, dashed ? [3, 3] : []);

    /// <summary>A line with dashes and gaps in turn, in widths of the line; without a gap if there are none.</summary>
    public void Line(float x1, float y1, float x2, float y2, Color color, float stroke, float[] dashes)
    {
        GoOn();
        using var dash =
            dashes.Length > 0 ? SKPathEffect.CreateDash([.. dashes.Select(d => d * stroke)], 0) : null;
        using var paint = new SKPaint
        {
            Color = color.ToSKColor(),
            StrokeWidth = stroke,
            IsStroke = true,
            IsAntialias = true,
            PathEffect = dash,
        };
        canvas.DrawLine(x1, y1, x2, y2, paint);
    }

    /// <summary>Thins what lies below a text, so that it can be read.</summary>
    public void Clear(float left, float top, float right, float bottom)
    {
        using var veil = new SKPaint { Color = SKColors.White.WithAlpha(215) };
        canvas.DrawRect(new SKRect(left, top, right, bottom), veil);
    }

    public void Shape(
        IReadOnlyList<(float X, float Y)> points,
        Color fill,
        Color? line = null,
        float stroke = 0
    )
    {
        GoOn();
        using var path = new SKPath();
        path.AddPoly([.. points.Select(p => new SKPoint(p.X, p.Y))], true);
        using var inside = new SKPaint { Color = fill.ToSKColor(), IsAntialias = true };
        canvas.DrawPath(path, inside);
        if (line is { } color)
        {
            using var outline = new SKPaint
            {
                Color = color.ToSKColor(),
                StrokeWidth = stroke,
                IsStroke = true,
                IsAntialias = true,
                StrokeJoin = SKStrokeJoin.Miter,
            };
            canvas.DrawPath(path, outline);
        }
    }

    /// <summary>Draws in a box only.</summary>
    public void Inside(Bounds box, Action draw)
    {
        canvas.Save();
        canvas.ClipRect(new SKRect(box.Left, box.Top, box.Right, box.Bottom));
        draw();
        canvas.Restore();
    }

    private static string Shortened(string text, float size, bool bold, float room)
    {
        var length = text.Length;
        while (length > 1 && TextWidth(Cut(length), size, bold) > room)
        {
            length--;
        }

        return Cut(length);

        string Cut(int to) => to == text.Length ? text : text[..to].TrimEnd() + "…";
    }

    // No hinting: the same shapes on every machine.
    private static SKFont Font(float size, bool bold) =>
        new(OpenFont.Typeface(bold), size)
        {
            Edging = SKFontEdging.Antialias,
            Hinting = SKFontHinting.None,
            Subpixel = true,
        };
}
