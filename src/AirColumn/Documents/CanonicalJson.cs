using System.Globalization;
using System.Text;
using System.Text.Json;

namespace AirColumn.Documents;

/// <summary>
/// JSON in the one form that RFC 8785 gives it: members in the order of their keys, no spaces, texts and numbers in one way. So
/// any language can make the same bytes of the same document.
/// </summary>
internal static class CanonicalJson
{
    /// <summary>The canonical form of a value, UTF-8.</summary>
    public static ReadOnlyMemory<byte> Of(JsonElement json)
    {
        var text = new StringBuilder();
        Write(text, json);
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void Write(StringBuilder text, JsonElement json)
    {
        switch (json.ValueKind)
        {
            case JsonValueKind.Object:
                var members = json.EnumerateObject().OrderBy(member => member.Name, StringComparer.Ordinal);
                WriteList(
                    text,
                    '{',
                    members,
                    member =>
                    {
                        WriteText(text, member.Name);
                        text.Append(':');
                        Write(text, member.Value);
                    },
                    '}'
                );
                break;
            case JsonValueKind.Array:
                WriteList(text, '[', json.EnumerateArray(), item => Write(text, item), ']');
                break;
            case JsonValueKind.String:
                WriteText(text, json.GetString()!);
                break;
            case JsonValueKind.Number:
                text.Append(Number(json.GetDouble()));
                break;
            default:
                text.Append(json.GetRawText());
                break;
        }
    }

    private static void WriteList<T>(
        StringBuilder text,
        char open,
        IEnumerable<T> items,
        Action<T> write,
        char close
    )
    {
        text.Append(open);
        var separator = "";
        foreach (var item in items)
        {
            text.Append(separator);
            write(item);
            separator = ",";
        }

        text.Append(close);
    }

    private static void WriteText(StringBuilder text, string value)
    {
        text.Append('"');
        foreach (var c in value)
        {
            _ = c switch
            {
                '"' => text.Append("\\\""),
                '\\' => text.Append("\\\\"),
                '\b' => text.Append("\\b"),
                '\t' => text.Append("\\t"),
                '\n' => text.Append("\\n"),
                '\f' => text.Append("\\f"),
                '\r' => text.Append("\\r"),
                < ' ' => text.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                _ => text.Append(c),
            };
        }

        text.Append('"');
    }

    /// <summary>A number as ECMAScript writes it: the shortest digits, with an exponent below 1e-6 and from 1e21 on.</summary>
    internal static string Number(double value)
    {
        if (value == 0)
        {
            return "0";
        }

        var shortest = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture);
        var digits = string.Concat(shortest.Split('E')[0].Where(char.IsAsciiDigit)).Trim('0');
        // Where the decimal point stands, counted from before the first digit.
        var point = Exponent(shortest) + 1;
        var sign = value < 0 ? "-" : "";
        var exponent = point - 1;
        return sign
            + point switch
            {
                > 0 and <= 21 when point >= digits.Length => digits.PadRight(point, '0'),
                > 0 and <= 21 => $"{digits[..point]}.{digits[point..]}",
                > -6 and <= 0 => $"0.{new string('0', -point)}{digits}",
                _ => digits[..1]
                    + (digits.Length > 1 ? $".{digits[1..]}" : "")
                    + string.Create(
                        CultureInfo.InvariantCulture,
                        $"e{(exponent < 0 ? "-" : "+")}{Math.Abs(exponent)}"
                    ),
            };
    }

    private static int Exponent(string shortest)
    {
        var parts = shortest.Split('E');
        if (parts.Length == 2)
        {
            return int.Parse(parts[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        }

        var whole = parts[0].Split('.')[0].TrimStart('0');
        return whole.Length > 0
            ? whole.Length - 1
            : -1 - parts[0].Split('.')[1].TakeWhile(c => c == '0').Count();
    }
}
