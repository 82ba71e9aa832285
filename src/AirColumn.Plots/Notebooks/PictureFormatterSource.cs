namespace AirColumn.Plots.Notebooks;

/// <summary>How a picture shows itself in a notebook.</summary>
internal sealed class PictureFormatterSource
{
    // Called by name.
#pragma warning disable CA1822
    public IEnumerable<object> CreateTypeFormatters() => [new PictureAsHtml(), new PictureAsText()];
#pragma warning restore CA1822
}
