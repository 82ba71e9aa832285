using System.Globalization;

namespace Shared;

/// <summary>Messages as one line of bounded length, whatever a user's text brought into them.</summary>
internal static class OneLine
{
    private const int Longest = 500;

    /// <summary>The message of an exception, without the parameter name and value that .NET appends.</summary>
    public static string Of(Exception problem)
    {
        var message = problem.Message;
        if (problem is ArgumentException { ParamName: { } name })
        {
            var appended = message.IndexOf($" (Parameter '{name}')", StringComparison.Ordinal);
            message = appended < 0 ? message : message[..appended];
        }

        return Of(message);
    }

    /// <summary>The same, where the message speaks of a parameter that the user knows by another name.</summary>
    public static string Of(ArgumentException problem, string name)
    {
        var message = Of(problem);
        return
            problem.ParamName is { } parameter
            && message.StartsWith($"{parameter} ", StringComparison.Ordinal)
            ? $"{name}{message[parameter.Length..]}"
            : $"{name}: {message}";
    }

    /// <summary>The text without line breaks and other control characters, cut if it is very long.</summary>
    public static string Of(string text)
    {
        var line = string.Concat(text.Select(c => IsPlain(c) ? c : ' ')).Trim();
        return line.Length <= Longest ? line : $"{line[..Longest]}…";
    }

    private static bool IsPlain(char c) =>
        char.GetUnicodeCategory(c)
            is not (
                UnicodeCategory.Control
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator
            );
}
