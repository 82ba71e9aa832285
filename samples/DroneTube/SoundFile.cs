using AirColumn.Recordings;
using Shared;

namespace DroneTube;

/// <summary>WAV files named on the command line.</summary>
internal static class SoundFile
{
    /// <summary>Reads a recording and asks something of it; a file that is no sound is bad input.</summary>
    public static T Read<T>(string path, Func<Recording, T> ask)
    {
        if (path == "-")
        {
            throw new BadInputException(
                "A recording is read from a file, not from the standard input; name one."
            );
        }

        return InputFile.Read(
            path,
            stream =>
            {
                try
                {
                    using var recording = Recording.Open(stream);
                    return ask(recording);
                }
                catch (RecordingException problem)
                {
                    throw new BadInputException($"{path}: {problem.Message}");
                }
            }
        );
    }

    /// <summary>Writes sound beside the final name first, so that a failure leaves nothing half written.</summary>
    public static void Write(string path, Action<Stream> write)
    {
        var draft = $"{path}.new";
        try
        {
            using (var stream = new FileStream(draft, FileMode.Create, FileAccess.ReadWrite))
            {
                write(stream);
            }

            File.Move(draft, path, true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new FailureException($"'{path}' cannot be written: {problem.Message}");
        }
    }
}
