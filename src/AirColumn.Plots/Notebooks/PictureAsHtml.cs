namespace AirColumn.Plots.Notebooks;

#pragma warning disable CA1822 // called by name
/// <summary>A picture in a page.</summary>
internal sealed class PictureAsHtml
{
    public string MimeType => "text/html";

    public bool Format(object instance, TextWriter writer)
    {
        if (instance is not Picture picture)
        {
            return false;
        }

        writer.Write(RichView.Of(picture));
        return true;
    }
}
