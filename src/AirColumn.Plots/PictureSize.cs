using UnitsNet;

namespace AirColumn.Plots;

/// <summary>
/// The size of a picture and of its text, for a page or for a screen. Immutable, equal by value.
/// </summary>
/// <remarks>
/// Lengths are in CSS pixels, 96 to the inch, the unit of an SVG. A PNG has <see cref="Scale"/> times as many pixels
/// across. If no height is given, each kind of picture takes the height that suits it.
/// </remarks>
public sealed record PictureSize
{
    private const double PerInch = 96;
    private const double PerPoint = PerInch / 72;
    private const double Smallest = 200;
    private const double SmallestHeight = 120;
    private const double Largest = 2400;

    private PictureSize(double width, double? height, double textSize, double scale)
    {
        Width = width;
        Height = height;
        TextSize = textSize;
        Scale = scale;
    }

    /// <summary>For a page: 120 mm wide, text of 8 pt, a PNG of 300 pixels to the inch.</summary>
    public static PictureSize Paper { get; } = OnPaper(Length.FromMillimeters(120));

    /// <summary>For a screen: 880 pixels wide, text of 14 pixels.</summary>
    public static PictureSize Screen { get; } = OnScreen(880);

    /// <summary>Width, CSS pixels.</summary>
    public double Width { get; }

    /// <summary>Height, CSS pixels; null to let each kind of picture choose.</summary>
    public double? Height { get; }

    /// <summary>Size of ordinary text, CSS pixels.</summary>
    public double TextSize { get; }

    /// <summary>Pixels of a PNG for each CSS pixel.</summary>
    public double Scale { get; }

    /// <summary>A size on paper, with text of 8 pt and 300 pixels to the inch.</summary>
    /// <param name="width">Width: 53 to 635 mm.</param>
    /// <param name="height">Height: 32 to 635 mm; null to let each kind of picture choose.</param>
    /// <returns>The size.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A length is outside its range or not a number.</exception>
    public static PictureSize OnPaper(Length width, Length? height = null)
    {
        const double Millimetres = 25.4 / PerInch;
        Require.InRange(width.Millimeters, 53, Largest * Millimetres, "mm", nameof(width));
        if (height is { } given)
        {
            Require.InRange(given.Millimeters, 32, Largest * Millimetres, "mm", nameof(height));
        }

        return new PictureSize(
            width.Millimeters / Millimetres,
            height?.Millimeters / Millimetres,
            8 * PerPoint,
            300 / PerInch
        );
    }

    /// <summary>A size on a screen, with text of 14 pixels and a PNG that has one pixel for each CSS pixel.</summary>
    /// <param name="width">Width in pixels: 200 to 2400.</param>
    /// <param name="height">Height in pixels: 120 to 2400; null to let each kind of picture choose.</param>
    /// <returns>The size.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static PictureSize OnScreen(int width, int? height = null)
    {
        Require.InRange(width, Smallest, Largest, "pixels", nameof(width));
        if (height is { } given)
        {
            Require.InRange(given, SmallestHeight, Largest, "pixels", nameof(height));
        }

        return new PictureSize(width, height, 14, 1);
    }

    /// <summary>The same size with a finer or coarser PNG.</summary>
    /// <param name="scale">Pixels of a PNG for each CSS pixel: 0.5 to 4.</param>
    /// <returns>The size.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The scale is outside its range or not a number.</exception>
    public PictureSize AtScale(double scale) =>
        new(Width, Height, TextSize, Require.InRange(scale, 0.5, 4, "", nameof(scale)));
}
