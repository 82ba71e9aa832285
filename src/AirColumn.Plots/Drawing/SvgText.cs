using System.Globalization;
using System.Security;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace AirColumn.Plots.Drawing;

/// <summary>What the canvas writes, made into a document that scales, has words for its content, and a second font to fall back on.</summary>
internal static partial class SvgText
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
        return $"{head}\n{Renumbered(body)}\n";
    }

    // The canvas counts on from one document to the next. Ours begin anew, and differ between pictures that stand in one page.
    private static string Renumbered(string body)
    {
        var numbers = new Dictionary<string, string>();
        var text = Id().Replace(body, "#");
        var mark = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..8];
        return Id()
            .Replace(
                body,
                found =>
                {
                    if (!numbers.TryGetValue(found.Value, out var number))
                    {
                        number = string.Create(CultureInfo.InvariantCulture, $"c{mark}-{numbers.Count + 1}");
                        numbers.Add(found.Value, number);
                    }

                    return number;
                }
            );
    }

    [GeneratedRegex(@"\bcl_[0-9a-f]+\b")]
    private static partial Regex Id();
}
