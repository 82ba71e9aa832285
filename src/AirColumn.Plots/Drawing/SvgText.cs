using System.Globalization;
using System.Security;
using System.Text;

namespace AirColumn.Plots.Drawing;

/// <summary>What the canvas writes, made into a document that scales, has words for its content, and a second font to fall back on.</summary>
internal static class SvgText
{
    public static string Finished(byte[] written, double width, double height, string description)
    {
        var text = Encoding.UTF8.GetString(written);
        var start = text.IndexOf("<svg", StringComparison.Ordinal);
        var end = text.IndexOf('>', start);
        var number = CultureInfo.InvariantCulture;
        var head = string.Create(
            number,
            $"""
            <svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="{width:0.##}" height="{height:0.##}" viewBox="0 0 {width:0.##} {height:0.##}" role="img">
            <title>{SecurityElement.Escape(description)}</title>
            """
        );
        var body = text[(end + 1)..]
            .Trim()
            .Replace(
                $"font-family=\"{OpenFont.Family}\"",
                $"font-family=\"'{OpenFont.Family}', Verdana, Arial, sans-serif\"",
                StringComparison.Ordinal
            );
        return $"{head}\n{body}\n";
    }
}
