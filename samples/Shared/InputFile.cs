namespace Shared;

/// <summary>A file named on the command line, or the standard input for '-'.</summary>
internal static class InputFile
{
    /// <summary>Reads it with <paramref name="read"/>; a file that cannot be read is bad input.</summary>
    public static T Read<T>(string path, Func<Stream, T> read)
    {
        if (path.Length == 0)
        {
            throw new BadInputException("The name of the file is empty.");
        }

        if (path == "-")
        {
            if (StandardInput.IsClosed)
            {
                throw new BadInputException(StandardInput.SaysClosed);
            }

            using var input = StandardInput.Open();
            return read(input);
        }

        try
        {
            using var file = File.OpenRead(path);
            return read(file);
        }
        catch (Exception problem) when (problem is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new BadInputException($"There is no file '{path}'.");
        }
        catch (UnauthorizedAccessException)
        {
            throw new BadInputException(
                Directory.Exists(path) ? $"'{path}' is a folder, not a file." : $"'{path}' may not be read."
            );
        }
        catch (IOException problem)
        {
            throw new BadInputException($"'{path}' cannot be read: {problem.Message}");
        }
    }
}
