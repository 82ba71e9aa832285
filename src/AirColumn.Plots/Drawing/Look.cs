namespace AirColumn.Plots.Drawing;

/// <summary>Everything that follows from the size of text: one look, on paper and on a screen. CSS pixels.</summary>
internal sealed class Look(PictureSize size)
{
    /// <summary>Text of axes and labels.</summary>
    public float Text { get; } = (float)size.TextSize;

    public float Small => 0.88f * Text;

    public float Heading => 1.25f * Text;

    /// <summary>A line of text with the space to the next.</summary>
    public float LineHeight => 1.35f * Text;

    /// <summary>Curves.</summary>
    public float Stroke => Text / 7;

    /// <summary>Axes, notes, leads.</summary>
    public float Thin => Text / 13;

    public float Marker => 0.62f * Text;

    /// <summary>Free space around the picture.</summary>
    public float Margin => Text;

    /// <summary>Height of heading and the line below it, from the top.</summary>
    public float Top => Margin + 1.3f * Heading + LineHeight + 0.5f * Text;
}
