namespace AirColumn.Plots.Notebooks;

#pragma warning disable CA1822 // called by name
/// <summary>A picture where there are only words.</summary>
internal sealed class PictureAsText
{
    public string MimeType => "text/plain";

    public bool Format(object instance, TextWriter writer)
    {
        if (instance is not Picture picture)
        {
            return false;
        }

        writer.Write(picture.Description);
        return true;
    }
}
