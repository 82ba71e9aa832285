namespace AirColumn.Studies;

/// <summary>The message of an exception as one line for a row.</summary>
internal static class OneLine
{
    private const int Longest = 400;

    /// <summary>The message without the parameter's name and value that .NET appends.</summary>
    public static string Of(Exception problem)
    {
        var message = problem.Message;
        if (problem is ArgumentException { ParamName: { } name })
        {
            var appended = message.IndexOf($" (Parameter '{name}')", StringComparison.Ordinal);
            message = appended < 0 ? message : message[..appended];
        }

        return Of(message, Longest);
    }

    /// <summary>A text on one line.</summary>
    public static string Of(string text, int longest)
    {
        var line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= longest ? line : $"{line[..longest]}…";
    }
}
