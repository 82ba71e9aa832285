using System.CommandLine;

namespace Shared;

/// <summary>Writes what was asked for.</summary>
internal static class Answer
{
    /// <summary>Writes all of it to the output, which may be closed or on a full disk.</summary>
    /// <exception cref="FailureException">It cannot be written.</exception>
    public static void Write(ParseResult parsed, Action<TextWriter> write)
    {
        var output = parsed.InvocationConfiguration.Output;
        try
        {
            write(output);
            output.Flush();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new FailureException($"The output cannot be written: {problem.Message}");
        }
    }
}
