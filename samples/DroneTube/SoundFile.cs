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
                if (!stream.CanSeek)
                {
                    throw new BadInputException(
                        $"'{path}' is not a file on a disk (perhaps it is a pipe); save the recording to a file first."
                    );
                }

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
}
