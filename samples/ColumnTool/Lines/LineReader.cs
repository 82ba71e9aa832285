namespace ColumnTool.Lines;

/// <summary>Lines of bytes from a stream, each as soon as it is there.</summary>
internal sealed class LineReader(Stream input, int longest)
{
    private byte[] buffer = new byte[1 << 16];
    private int start;
    private int end;

    /// <summary>The next line without its line break; empty memory for one that is longer than allowed; null at the end.</summary>
    public byte[]? Next(out bool isTooLong)
    {
        isTooLong = false;
        var searched = start;
        while (true)
        {
            var found = Array.IndexOf(buffer, (byte)'\n', searched, end - searched);
            if (found >= 0)
            {
                var line = isTooLong ? [] : buffer[start..found];
                start = found + 1;
                return line;
            }

            if (end - start > longest)
            {
                // Let go of what there is of it, and go on to its end.
                isTooLong = true;
                start = end = 0;
            }

            MakeRoom();
            searched = end;
            var count = input.Read(buffer, end, buffer.Length - end);
            if (count == 0)
            {
                var rest = isTooLong ? [] : buffer[start..end];
                var isEnd = rest.Length == 0 && !isTooLong;
                start = end = 0;
                return isEnd ? null : rest;
            }

            end += count;
        }
    }

    private void MakeRoom()
    {
        if (start > 0)
        {
            buffer.AsSpan(start, end - start).CopyTo(buffer);
            (start, end) = (0, end - start);
        }

        if (end == buffer.Length)
        {
            Array.Resize(ref buffer, 2 * buffer.Length);
        }
    }
}
