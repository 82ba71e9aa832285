using AirColumn.Plots.Drawing;
using AirColumn.Plots.Notebooks;
using SkiaSharp;

namespace AirColumn.Plots;

/// <summary>
/// A picture of an air column, available as SVG or PNG at any size. Immutable, safe to share between threads; the same values
/// give the same picture in every culture.
/// </summary>
/// <remarks>
/// Text is in a font that comes with the package (Atkinson Hyperlegible), so a PNG is complete on a machine without fonts. An SVG names
/// that font and keeps its text as text. A viewer that does not have the font takes another without serifs.
/// </remarks>
[TypeFormatterSource(typeof(PictureFormatterSource))]
public sealed class Picture
{
    private readonly Scene scene;

    internal Picture(Scene scene, PictureSize? size = null)
    {
        this.scene = scene;
        Size = size ?? PictureSize.Screen;
    }

    /// <summary>The content of the picture in a sentence or two, for those who cannot see it.</summary>
    public string Description => scene.Description;

    /// <summary>The size of the picture; <see cref="PictureSize.Screen"/> at first.</summary>
    public PictureSize Size { get; }

    /// <summary>Its width, CSS pixels.</summary>
    public double Width => Size.Width;

    /// <summary>Its height, CSS pixels: as given, or as suits this kind of picture.</summary>
    public double Height => Size.Height ?? Math.Round(scene.NaturalHeight(new Look(Size)));

    /// <summary>Width of the PNG, pixels.</summary>
    public int PixelWidth => (int)Math.Round(Width * Size.Scale);

    /// <summary>Height of the PNG, pixels.</summary>
    public int PixelHeight => (int)Math.Round(Height * Size.Scale);

    /// <summary>The same picture at another size.</summary>
    /// <param name="size">The size.</param>
    /// <returns>The picture at that size.</returns>
    public Picture At(PictureSize size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return new Picture(scene, size);
    }

    /// <summary>The picture as an SVG document.</summary>
    /// <param name="cancellationToken">Ends the drawing early, between two things that are drawn, with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The text of the SVG document.</returns>
    public string Svg(CancellationToken cancellationToken = default)
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(SKRect.Create((float)Width, (float)Height), stream))
        {
            Draw(canvas, cancellationToken);
        }

        return SvgText.Finished(stream.ToArray(), Width, Height, Description);
    }

    /// <summary>The picture as a PNG file of <see cref="PixelWidth"/> × <see cref="PixelHeight"/> pixels.</summary>
    /// <param name="cancellationToken">Ends the drawing early, between two things that are drawn, with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The bytes of the PNG file.</returns>
    public byte[] Png(CancellationToken cancellationToken = default)
    {
        using var bitmap = new SKBitmap(PixelWidth, PixelHeight, SKColorType.Rgba8888, SKAlphaType.Opaque);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale((float)(PixelWidth / Width), (float)(PixelHeight / Height));
            Draw(canvas, cancellationToken);
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    /// <summary>Writes the picture to a file; an existing file is replaced.</summary>
    /// <param name="path">A path that ends in .svg or .png.</param>
    /// <param name="cancellationToken">Cancels the call with an <see cref="OperationCanceledException"/>, before anything is written.</param>
    /// <exception cref="ArgumentException">The path ends in neither .svg nor .png.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Save(string path, CancellationToken cancellationToken = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        switch (Path.GetExtension(path).ToUpperInvariant())
        {
            case ".SVG":
                File.WriteAllText(path, Svg(cancellationToken));
                break;
            case ".PNG":
                File.WriteAllBytes(path, Png(cancellationToken));
                break;
            default:
                throw new ArgumentException($"path is {path}; it must end in .svg or .png.", nameof(path));
        }
    }

    /// <summary>Its description.</summary>
    /// <returns>The description.</returns>
    public override string ToString() => Description;

    private void Draw(SKCanvas canvas, CancellationToken cancellationToken)
    {
        scene.Draw(new Page(canvas, new Look(Size), (float)Width, (float)Height, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();
    }
}
