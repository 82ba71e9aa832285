using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace AirColumn.Documents;

/// <summary>What is wrong with text that is not JSON, and in which line: in our words, not the parser's.</summary>
internal static class JsonErrorText
{
    private static ReadOnlySpan<byte> Blank => " \t\r\n"u8;

    /// <summary>One line about the first thing that is wrong.</summary>
    /// <param name="utf8">Text that is not JSON, or is nested too deep.</param>
    /// <param name="deepest">How deep it may be nested.</param>
    /// <param name="whole">What the text is.</param>
    public static string Of(ReadOnlySpan<byte> utf8, int deepest, string whole = "The document")
    {
        // Valid as UTF-8, as is all UTF-16 text in Latin letters, but in no text that people write.
        var zero = utf8.IndexOf((byte)0);
        if (zero >= 0)
        {
            return NotJson(
                utf8,
                whole,
                zero,
                "there is a zero byte. It looks like UTF-16; save it as UTF-8."
            );
        }

        var state = new JsonReaderState(new JsonReaderOptions { MaxDepth = int.MaxValue });
        var reader = new Utf8JsonReader(utf8, isFinalBlock: false, state);
        try
        {
            while (reader.Read())
            {
                if (
                    reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray
                    && reader.CurrentDepth >= deepest
                )
                {
                    return $"{whole} is nested more than {Require.Show(deepest, "")} deep; "
                        + $"{Place(utf8, (int)reader.TokenStartIndex)}. That is the limit.";
                }
            }
        }
        catch (JsonException problem)
        {
            var start = StartOf((int)(problem.LineNumber ?? 0), utf8);
            var offset = Math.Min(start + (int)(problem.BytePositionInLine ?? 0), utf8.Length);
            return NotJson(utf8, whole, offset, Detail(utf8, offset));
        }

        // More text could make it whole.
        return $"{whole} is not complete JSON; {Place(utf8, utf8.TrimEnd(Blank).Length)}: it ends too early; "
            + "a quotation mark, a brace or a bracket is not closed.";
    }

    private static string NotJson(ReadOnlySpan<byte> utf8, string whole, int offset, string detail) =>
        $"{whole} is not JSON; {Place(utf8, offset)}: {detail}";

    private static string Place(ReadOnlySpan<byte> utf8, int offset)
    {
        var before = utf8[..offset];
        // In characters, as an editor counts them.
        var position = Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"line {before.Count((byte)'\n') + 1}, position {position}"
        );
    }

    private static int StartOf(int line, ReadOnlySpan<byte> utf8)
    {
        var start = 0;
        for (var i = 0; i < line; i++)
        {
            start += utf8[start..].IndexOf((byte)'\n') + 1;
        }

        return start;
    }

    private static string Detail(ReadOnlySpan<byte> utf8, int offset)
    {
        // A message shows no character of two halves, such as an emoji.
        if (Rune.DecodeFromUtf8(utf8[offset..], out var rune, out _) != OperationStatus.Done || !rune.IsBmp)
        {
            return "this cannot stand here.";
        }

        var shown = Quote.Of(rune.ToString());
        var before = utf8[..offset].TrimEnd(Blank);
        return (char)rune.Value switch
        {
            '}' or ']' when before.EndsWith(","u8) => $"there is a comma before {shown}; remove the comma.",
            '/' or '#' => "comments are not allowed; remove this one.",
            '\u201C' or '\u201D' or '\u201E' or '\u2018' or '\u2019' =>
                $"{shown} is a curly quotation mark; write straight ones, \".",
            '\n' or '\r' when before.TrimEnd(",}]"u8).EndsWith("\u201D"u8) =>
                "the text before it ends in a curly quotation mark; write a straight one, \".",
            '\n' or '\r' or '\t' => "a line break or a tab within quotation marks; write it as \\n or \\t.",
            '\'' => "write texts in double quotation marks.",
            '"' or '{' or '[' =>
                $"{shown} cannot stand here; perhaps a comma or a colon before it is missing.",
            _ => $"{shown} cannot stand here.",
        };
    }
}
